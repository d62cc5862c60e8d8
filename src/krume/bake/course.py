"""The oven's air while the cake is in it: warming, the door, or a given course."""

from dataclasses import dataclass, replace

import numpy as np

from krume.bake.around import around_value
from krume.bake.batter import AirCourse, Oven
from krume.bake.grid import Array
from krume.bake.parameters import value
from krume.properties import constant


@dataclass(frozen=True, slots=True)
class Course:
    """Oven air of every draw at any moment; `shift` is how far a draw's oven is off, (draws,)."""

    set_k: Array
    shift: Array
    given: AirCourse | None
    from_k: float | None
    doors_s: tuple[float, ...]
    dip_k: float
    recovery_s: float

    def only(self, which: np.ndarray[tuple[int, ...], np.dtype[np.bool_]]) -> "Course":
        """The same for some of the draws."""
        return replace(self, set_k=self.set_k[which], shift=self.shift[which])

    def temp_k(self, time_s: Array) -> Array:
        """Air [K] of each draw at its own moment, (draws,)."""
        if self.given is not None:
            minutes = np.asarray(self.given.time_min, dtype=np.float64)
            air = np.interp(time_s / 60, minutes, self.given.temp_c)
            moved: Array = air + constant("celsius-zero") + self.shift
            return moved
        found = self.set_k - self._short(time_s)
        for door in self.doors_s:
            since = np.maximum(time_s - door, 0.0)
            fall = around_value("door-dip-on-the-way") * np.exp(since * (-1 / self.recovery_s))
            found = found - np.where(time_s >= door, fall, 0.0)
        return found

    def _short(self, time_s: Array) -> Array:
        """How far the air stands below the setting for how the bake began."""
        if self.from_k is None:
            dip: Array = self.dip_k * np.exp(time_s * (-1 / self.recovery_s))
            return dip
        cold: Array = (self.set_k - self.from_k) * np.exp(-time_s / around_value("warming"))
        return cold

    def until_door_s(self, time_s: Array) -> Array | None:
        """Seconds to the next opening of the door, (draws,); None where it is never opened."""
        if not self.doors_s or self.given is not None:
            return None
        doors = np.array([*sorted(self.doors_s), np.inf])
        wait: Array = doors[np.searchsorted(doors, time_s, side="right")] - time_s
        return wait


def course_of(oven: Oven, oven_k: Array) -> Course:
    """The air of an oven for draws that stand at `oven_k` when it is hot."""
    zero, around = constant("celsius-zero"), oven.around
    cold = around.warming_from_c
    return Course(
        set_k=oven_k,
        shift=oven_k - (oven.temp_c + zero),
        given=around.course,
        from_k=None if cold is None else cold + zero,
        doors_s=tuple(60.0 * minute for minute in around.door_min),
        dip_k=value("door-dip"),
        recovery_s=value("door-recovery"),
    )
