"""Every sentence, in every language, and what is wrong with a field."""
