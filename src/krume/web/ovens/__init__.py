"""Tins by size and by water; the oven with its offset and the dial to set."""
