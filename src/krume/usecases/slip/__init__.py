"""A slip at the scale: every way out, in words, on new cards."""
