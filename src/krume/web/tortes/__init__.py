"""Tortes: the section to scale, the sums that add, what to make, how it keeps, every version."""
