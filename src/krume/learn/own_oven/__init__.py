"""The person's own oven: its offset from a thermometer, its heat from finished bakes."""

from typing import TYPE_CHECKING

from krume.base import on_first_use
from krume.learn.own_oven.offset import OffsetLearnt, learn_offset, offset_said
from krume.learn.own_oven.records import SHELVES, TESTS, FinishedBake, Flag, Prior, Reading
from krume.learn.own_oven.records import figure as oven_figure

if TYPE_CHECKING:
    from krume.learn.own_oven.again import Again, same_cake
    from krume.learn.own_oven.heat import CakeLearnt, HeatLearnt
    from krume.learn.own_oven.judging import true_c, why_not
    from krume.learn.own_oven.learnt import OvenLearnt, learn_oven

# What needs numpy and scipy is imported when it is first asked for.
_HEAVY = {
    "Again": "again", "same_cake": "again",
    "CakeLearnt": "heat", "HeatLearnt": "heat", "true_c": "judging",
    "why_not": "judging", "OvenLearnt": "learnt", "learn_oven": "learnt",
}  # fmt: skip


__getattr__ = on_first_use(__name__, _HEAVY)

__all__ = [
    "SHELVES",
    "TESTS",
    "Again",
    "CakeLearnt",
    "FinishedBake",
    "Flag",
    "HeatLearnt",
    "OffsetLearnt",
    "OvenLearnt",
    "Prior",
    "Reading",
    "learn_offset",
    "learn_oven",
    "offset_said",
    "oven_figure",
    "same_cake",
    "true_c",
    "why_not",
]
