"""What is in the house, and the orders it stops."""
