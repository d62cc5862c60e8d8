"""The ovens, what stands in them, and what is touched next."""
