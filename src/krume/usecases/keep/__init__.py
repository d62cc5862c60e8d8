"""How long it keeps, and how it gets cold."""
