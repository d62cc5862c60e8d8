"""A table of the book from a file, and what is asked of its rows."""
