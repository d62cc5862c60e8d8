"""What really happened: tasting tests, and the range of one's own formulas."""

from krume.learn.own_bands import (
    FEWEST,
    OwnBand,
    OwnFormula,
    confidence_of,
    expected_coverage,
    independent,
    least_share,
    own_band,
    roots,
)
from krume.learn.tasting import Triangle, triangle_test
from krume.learn.trial_words import is_good

__all__ = [
    "FEWEST",
    "OwnBand",
    "OwnFormula",
    "Triangle",
    "confidence_of",
    "expected_coverage",
    "independent",
    "is_good",
    "least_share",
    "own_band",
    "roots",
    "triangle_test",
]
