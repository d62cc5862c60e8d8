"""What really happened: tasting tests, the range of one's own formulas, one's own oven."""

from typing import TYPE_CHECKING, Any

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

_HEAVY = frozenset(
    "Again CakeLearnt HeatLearnt OvenLearnt learn_oven same_cake true_c why_not".split()
)


def __getattr__(name: str) -> Any:
    """What is learnt by the bake's solver, imported on first use."""
    if name not in _HEAVY:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    from krume.learn import own_oven

    return getattr(own_oven, name)


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
