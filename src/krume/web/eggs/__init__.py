"""Eggs over the open orders: what to buy, what to crack, which bowl takes what, and the rest."""
