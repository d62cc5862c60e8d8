"""What is sold: the things of an order, the papers of what is in them, and how it stands."""
