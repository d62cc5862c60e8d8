"""The plan of a day as a page."""
