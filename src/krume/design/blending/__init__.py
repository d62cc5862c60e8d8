"""The nearest blend of the flours at hand, exactly, in whole steps of the scale."""

from krume.design.blending.task import (
    BlendFit,
    BlendLimit,
    BlendTask,
    ClashingLimit,
    PropertyLimit,
)

__all__ = [
    "BlendFit",
    "BlendLimit",
    "BlendTask",
    "ClashingLimit",
    "PropertyLimit",
]
