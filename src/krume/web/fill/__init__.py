"""How much of a cream fills a ring, as a page."""
