"""What it costs, and what to ask for it."""
