"""A variation on a page: allergens first, grams second, what is not known; and the children."""
