"""Rows of tables as pages: a form for each, conflicts side by side, a whole table by file."""
