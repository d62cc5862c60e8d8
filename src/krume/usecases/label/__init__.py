"""What the buyer must be told."""
