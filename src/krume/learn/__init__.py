"""What really happened: tasting tests, the range of one's own formulas, one's own oven."""

from typing import TYPE_CHECKING

from krume.base import on_first_use
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
from krume.learn.own_oven import (
    SHELVES,
    TESTS,
    FinishedBake,
    Flag,
    OffsetLearnt,
    Prior,
    Reading,
    learn_offset,
    offset_said,
    oven_figure,
)
from krume.learn.tasting import Triangle, triangle_test
from krume.learn.trial_words import is_good

if TYPE_CHECKING:
    from krume.learn.own_oven import (
        Again,
        CakeLearnt,
        HeatLearnt,
        OvenLearnt,
        learn_oven,
        same_cake,
        true_c,
        why_not,
    )

_HEAVY = dict.fromkeys(
    "Again CakeLearnt HeatLearnt OvenLearnt learn_oven same_cake true_c why_not".split(),
    "own_oven",
)


__getattr__ = on_first_use(__name__, _HEAVY)

__all__ = [
    "FEWEST",
    "SHELVES",
    "TESTS",
    "Again",
    "CakeLearnt",
    "FinishedBake",
    "Flag",
    "HeatLearnt",
    "OffsetLearnt",
    "OvenLearnt",
    "OwnBand",
    "OwnFormula",
    "Prior",
    "Reading",
    "Triangle",
    "confidence_of",
    "expected_coverage",
    "independent",
    "is_good",
    "learn_offset",
    "learn_oven",
    "least_share",
    "offset_said",
    "oven_figure",
    "own_band",
    "roots",
    "same_cake",
    "triangle_test",
    "true_c",
    "why_not",
]
