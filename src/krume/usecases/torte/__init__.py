"""A torte as it stands."""
