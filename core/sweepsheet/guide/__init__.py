"""Words and pictures that lead through a sweep."""
