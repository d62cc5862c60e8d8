"""A blend chosen on a page: flours at hand, limits as lines, the nearest one and what is beside."""
