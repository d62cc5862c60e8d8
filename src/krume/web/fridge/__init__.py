"""The fridge was off, as a page: what is kept, what stops, what is made anew."""
