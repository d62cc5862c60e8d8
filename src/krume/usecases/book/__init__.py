"""The care of the book: its texts and tables, their versions, and what the studio is set to."""
