"""The contract asked from outside."""
