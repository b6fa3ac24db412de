"""Jobs as files and readings as CSV, opened whole or refused."""
