"""What the jobs on this phone tell of the next housing of the same kind."""
