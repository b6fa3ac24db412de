"""What would put it right: dowels, trim, shims, and what would settle a close call."""
