"""Texts of every kind as pages: pasted, answered by a tap, edited, each version kept."""
