"""Values with papers: an interval, and a figure that says where it comes from."""

from dataclasses import dataclass

STATUSES = (
    "law",
    "published",
    "derived",
    "calibrated",
    "measured",
    "declared",
    "common practice",
    "from memory",
    "assumed",
    "invented",
)


@dataclass(frozen=True, slots=True)
class Interval:
    """A value that is not settled: low <= best <= high.

    >>> Interval.around(51, 4)
    Interval(low=47, best=51, high=55)
    """

    low: float
    best: float
    high: float

    @classmethod
    def around(cls, best: float, half_width: float) -> "Interval":
        """Interval of a half-width on both sides."""
        return cls(best - half_width, best, best + half_width)

    @property
    def half_width(self) -> float:
        """Larger distance from the best value to an end."""
        return max(self.high - self.best, self.best - self.low)

    def times(self, factor: float) -> "Interval":
        """Interval scaled by a factor of zero or more."""
        return Interval(self.low * factor, self.best * factor, self.high * factor)


@dataclass(frozen=True, slots=True)
class Figure:
    """A number with its papers: value, unit, basis, status, doubt and source key."""

    value: float
    unit: str
    basis: str
    status: str
    source: str = ""
    half_width: float | None = None
