"""Custard as a page: which depth is predicted to cool in time, and what its log must show."""
