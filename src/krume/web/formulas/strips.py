"""The balance as pages draw it: each band over the middle half of its own ruled line."""

from dataclasses import dataclass

from krume.base import Interval
from krume.usecases import CheckBand, CheckFinding, CheckResult
from krume.web.frame.figures import amount

WIDTH = 240.0
_LOW, _HIGH, _EDGE = 60.0, 180.0, 5.0


@dataclass(frozen=True, slots=True)
class Strip:
    """One band: its words, its value's place on the line, and where that stands."""

    key: str
    label: str
    value: str
    unit: str
    low: str
    high: str
    marks: tuple[float, ...]
    place: str
    own: str


def strips(check: CheckResult) -> tuple[Strip, ...]:
    """All bands of a formula's family."""
    found = {each.code.rpartition("-")[0]: each for each in check.findings}
    near = {each.code.rpartition("-")[0]: each for each in check.near_edge}
    return tuple(_strip(band, found, near) for band in check.bands)


def _strip(band: CheckBand, found: dict[str, CheckFinding], near: dict[str, CheckFinding]) -> Strip:
    digits = 3 if band.unit == "ratio" else 1
    place = "outside" if band.key in found else "near an edge" if band.key in near else "inside"
    return Strip(
        key=band.key,
        label=band.label,
        value=amount(band.value, digits),
        unit="" if band.unit == "ratio" else band.unit,
        low=amount(band.low, digits),
        high=amount(band.high, digits),
        marks=_marks(band),
        place="not known" if band.value is None else place,
        own=band.own.text,
    )


def _marks(band: CheckBand) -> tuple[float, ...]:
    """Places of the value on the line: one, or the ends of what is not settled."""
    value = band.value
    if value is None:
        return ()
    ends = (value.low, value.high) if isinstance(value, Interval) else (value,)
    return tuple(dict.fromkeys(round(_place(end, band), 1) for end in ends))


def _place(value: float, band: CheckBand) -> float:
    width = band.high - band.low
    share = (value - band.low) / width if width else (0.5 if value == band.low else 2.0)
    return min(max(_LOW + share * (_HIGH - _LOW), _EDGE), WIDTH - _EDGE)
