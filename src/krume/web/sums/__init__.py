"""Quick sums as small forms."""
