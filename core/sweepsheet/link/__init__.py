"""A job on its way to the one who pays."""
