"""Spanish: the sentences of the core, and those of the pages."""
