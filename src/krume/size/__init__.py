"""How big: tins by their dimensions or by water, factors, depth and fill, whole eggs, rolls."""

from krume.size.eggs import Eggs, nearest_eggs, whole_factors
from krume.size.factor import Factors, tin_factor
from krume.size.fitting import fit, scaled_lines
from krume.size.geometry import (
    area_cm2,
    common_depth_cm,
    depth_cm,
    fill,
    rim_cm,
    volume_at_ml,
    volume_ml,
)
from krume.size.reading import assumed_height_cm, read_tin
from krume.size.request import (
    Fit,
    SizedEggs,
    SizedLine,
    SizeLine,
    SizeOption,
    SizeRequest,
)
from krume.size.rolling import Roll, roll, spiral_length_cm
from krume.size.rounding import Rounded, round_masses, worst_line_error
from krume.size.tin import MATERIALS, SHAPES, Tin
from krume.size.writing import tin_text

__all__ = [
    "MATERIALS",
    "SHAPES",
    "Eggs",
    "Factors",
    "Fit",
    "Roll",
    "Rounded",
    "SizeLine",
    "SizeOption",
    "SizeRequest",
    "SizedEggs",
    "SizedLine",
    "Tin",
    "area_cm2",
    "assumed_height_cm",
    "common_depth_cm",
    "depth_cm",
    "fill",
    "fit",
    "nearest_eggs",
    "read_tin",
    "rim_cm",
    "roll",
    "round_masses",
    "scaled_lines",
    "spiral_length_cm",
    "tin_factor",
    "tin_text",
    "volume_at_ml",
    "volume_ml",
    "whole_factors",
    "worst_line_error",
]
