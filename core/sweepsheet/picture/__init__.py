"""The reading of a dial indicator from a photo of its face."""
