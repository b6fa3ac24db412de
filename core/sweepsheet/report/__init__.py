"""A solution in words and as data: the sheet, the paper, the result."""
