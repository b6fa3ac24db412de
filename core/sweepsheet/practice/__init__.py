"""A housing with a hidden error to practise on."""
