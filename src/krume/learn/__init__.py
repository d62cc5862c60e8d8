"""What really happened: tasting tests."""

from krume.learn.tasting import Triangle, triangle_test

__all__ = ["Triangle", "triangle_test"]
