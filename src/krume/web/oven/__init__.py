"""The oven at the counter: loads on one line of time."""
