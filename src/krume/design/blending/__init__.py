"""The nearest blend of the flours at hand, exactly, in whole steps of the scale."""

from importlib import import_module
from typing import TYPE_CHECKING, Any

from krume.design.blending.task import (
    BlendFit,
    BlendLimit,
    BlendTask,
    ClashingLimit,
    PropertyLimit,
)

if TYPE_CHECKING:
    from krume.design.blending.clashing import clashing_limits
    from krume.design.blending.solving import next_blends, solve_blend

# What needs numpy and scipy is imported when it is first asked for.
_HEAVY = {"clashing_limits": "clashing", "next_blends": "solving", "solve_blend": "solving"}


def __getattr__(name: str) -> Any:
    """A name of the solver, imported on first use."""
    if name not in _HEAVY:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    found = getattr(import_module(f"{__name__}.{_HEAVY[name]}"), name)
    globals()[name] = found
    return found


__all__ = [
    "BlendFit",
    "BlendLimit",
    "BlendTask",
    "ClashingLimit",
    "PropertyLimit",
    "clashing_limits",
    "next_blends",
    "solve_blend",
]
