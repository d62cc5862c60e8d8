"""How big: tins by their dimensions or by water, factors, depth and fill, whole eggs."""

from krume.size.geometry import area_cm2, common_depth_cm, depth_cm, fill, rim_cm, volume_at_ml, volume_ml
from krume.size.reading import assumed_height_cm, read_tin
from krume.size.roll import Roll, roll
from krume.size.tin import MATERIALS, SHAPES, Tin
from krume.size.writing import tin_text

__all__ = [
    "MATERIALS",
    "SHAPES",
    "Roll",
    "Tin",
    "area_cm2",
    "assumed_height_cm",
    "common_depth_cm",
    "depth_cm",
    "fill",
    "read_tin",
    "rim_cm",
    "roll",
    "tin_text",
    "volume_at_ml",
    "volume_ml",
]
