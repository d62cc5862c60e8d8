"""Freezing, thawing and the road: whether a component takes it, hours, the warmest place."""

from typing import TYPE_CHECKING

from krume.base import on_first_use
from krume.keep.frozen.dew import dew_point_c
from krume.keep.frozen.rows import (
    TakesFreezing,
    frozen_figures,
    frozen_value,
    hardest_to_freeze,
    takes_freezing,
)

if TYPE_CHECKING:
    from krume.keep.frozen.matter import freezing_point_c, matter_of
    from krume.keep.frozen.road import CakeBox, OnTheRoad, Road, cake_boxes, on_the_road
    from krume.keep.frozen.times import ColdBody, FreezeThaw, freeze_and_thaw

# Marching needs numpy: it is imported when it is asked for.
_HEAVY = {
    "freezing_point_c": "matter", "matter_of": "matter", "ColdBody": "times",
    "FreezeThaw": "times", "freeze_and_thaw": "times", "CakeBox": "road", "OnTheRoad": "road",
    "Road": "road", "cake_boxes": "road", "on_the_road": "road",
}  # fmt: skip

__getattr__ = on_first_use(__name__, _HEAVY)

__all__ = [
    "CakeBox",
    "ColdBody",
    "FreezeThaw",
    "OnTheRoad",
    "Road",
    "TakesFreezing",
    "cake_boxes",
    "dew_point_c",
    "freeze_and_thaw",
    "freezing_point_c",
    "frozen_figures",
    "frozen_value",
    "hardest_to_freeze",
    "matter_of",
    "on_the_road",
    "takes_freezing",
]
