"""The pantry: what stops an order, lots and their records, prices, packs, ingredients."""
