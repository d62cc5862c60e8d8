"""The fewest eggs to buy and crack."""
