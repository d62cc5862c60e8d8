"""How long it keeps, as a page: reasons, freezing, the road, rules of other places."""
