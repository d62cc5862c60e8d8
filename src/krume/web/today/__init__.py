"""Today: the first page, and what a studio begins with."""
