"""What the steps of the build raise when they fail."""


class TroubleError(Exception):
    """A step failed; the message says which, for the person at the terminal."""
