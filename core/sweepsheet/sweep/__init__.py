"""One kind of sweep: corrected, fitted, examined, and what it is worth."""
