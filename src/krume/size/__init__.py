"""How big: tins by their dimensions or by water, factors, depth and fill, whole eggs."""

from krume.size.tin import SHAPES, Tin

__all__ = ["SHAPES", "Tin"]
