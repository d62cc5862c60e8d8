"""What an oven is off its dial, from looks at a thermometer: level, slope and doubt."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from itertools import pairwise

from krume.base import as_text
from krume.learn.own_oven.apart import put_aside
from krume.learn.own_oven.records import Flag, Prior, Reading, figure

_OWN = 2
"""The assumed scatter counts as much as so many readings of one's own."""


@dataclass(frozen=True, slots=True)
class OffsetLearnt:
    """True less dial, near the dial settings that were read, and what is not sure about it.

    `offset_c` is at `at_dial_c`; `slope_k_per_k` is its change per degree of dial. `swing_c` is
    half of what the looks wander over a cycle, None from single looks. `readings` count looks.
    `drift_c` is by how much it moved from the first day to the last, None where it stood still or
    the days are too few to say.
    """

    offset_c: float
    at_dial_c: float
    slope_k_per_k: float
    readings: int
    swing_c: float | None
    level_sd_c: float
    slope_sd_k_per_k: float
    thermometer_sd_c: float
    dials_c: tuple[float, ...]
    place_sd_c: float = 0.0
    drift_c: float | None = None

    def at(self, dial_c: float) -> float:
        """Offset at a dial setting [K]."""
        return self.offset_c + self.slope_k_per_k * (dial_c - self.at_dial_c)

    def sd_c(self, dial_c: float) -> float:
        """Doubt about the offset at a dial setting, cycling and thermometer in it."""
        far = dial_c - self.at_dial_c
        return math.hypot(
            self.level_sd_c, far * self.slope_sd_k_per_k, self.thermometer_sd_c, self.place_sd_c
        )

    def dial_for(self, true_c: float) -> float:
        """Dial setting for a true temperature: dial + offset(dial) = true."""
        return (true_c - self.offset_c + self.slope_k_per_k * self.at_dial_c) / (
            1 + self.slope_k_per_k
        )

    @property
    def differs(self) -> bool:
        """Whether the settings that were read differ by more than their doubt."""
        return abs(self.slope_k_per_k) > 2 * self.slope_sd_k_per_k > 0


def offset_said(
    offset_c: float, *, at_dial_c: float, readings: int, spread_c: float, prior: Prior
) -> OffsetLearnt:
    """Offset of somebody who only has its mean and what the readings wander, half of it."""
    one = spread_c / math.sqrt(3)
    level = math.hypot(one / math.sqrt(max(readings, 1)), figure("between-days"))
    return OffsetLearnt(
        offset_c, at_dial_c, 0.0, readings, spread_c, level, figure("offset-slope"),
        prior.thermometer_sd_c, (at_dial_c,),
    )  # fmt: skip


def learn_offset(
    readings: Sequence[Reading], prior: Prior
) -> tuple[OffsetLearnt | None, tuple[Flag, ...]]:
    """Offset from readings of one fan setting and shelf, and the readings that do not count."""
    cold = {r.key: r for r in readings if not r.is_sure and _warming(r)}
    warm = [r for r in readings if r.key not in cold]
    left, odd = put_aside(
        len(warm),
        lambda at: _residuals([warm[k] for k in at], prior),
        limit=figure("reading-odd"),
        sure={k for k, r in enumerate(warm) if r.is_sure},
    )
    flags = [Flag(r.key, "warming-up", _warming(r)) for r in cold.values()]
    flags += [_odd(warm[k], off, alone=not left) for k, off in odd.items()]
    return (_fit([warm[k] for k in left], prior) if left else None), tuple(flags)


def _warming(reading: Reading) -> str:
    """Why a reading is of an oven that was still warming up; nothing where it is not."""
    if reading.after_min is not None and reading.after_min < figure("warm-up"):
        least = as_text(figure("warm-up"), 0)
        return (
            f"read {as_text(reading.after_min, 0)} min after switching on: still warming up. "
            f"Look again after {least} min; it does not count."
        )
    temps = reading.temps_c
    climbs = len(temps) > 2 and all(b > a for a, b in pairwise(temps))
    if reading.after_min is None and climbs and reading.rise_c >= figure("warm-rise"):
        rise = as_text(reading.rise_c, 0)
        return (
            f"the looks only rise, by {rise} °C: the oven was still warming up. "
            "Look again when it goes up and down; it does not count."
        )
    return ""


def _odd(reading: Reading, off: float, *, alone: bool) -> Flag:
    side = "above" if off > 0 else "below"
    others = "the other one says, and neither counts" if alone else "the others say"
    reason = (
        f"{as_text(reading.offset_c, 0)} °C off its dial is {as_text(abs(off), 0)} °C {side} what "
        f"{others}. Read it once more, or say that you are sure of it."
    )
    return Flag(reading.key, "reading-odd", reason)


def _residuals(readings: Sequence[Reading], prior: Prior) -> list[float]:
    """Each reading less what the others say; a lone one is not spoken against."""
    found = []
    for k, reading in enumerate(readings):
        others = [*readings[:k], *readings[k + 1 :]]
        there = _fit(others, prior).at(reading.dial_c) if others else reading.offset_c
        found.append(reading.offset_c - there)
    return found


def _fit(readings: Sequence[Reading], prior: Prior) -> OffsetLearnt:
    """Line through the offsets: a free level, a slope held near none by what ovens do.

    y = a + b (d - d0) + e, var e = swing^2/looks + days^2, b ~ N(0, slope^2)
    """
    looks = sum(len(r.temps_c) for r in readings)
    within = sum((t - r.mean_c) ** 2 for r in readings for t in r.temps_c)
    freedom = looks - len(readings)
    swing = (_OWN * figure("swing") ** 2 + within) / (_OWN + freedom)
    weights = [1 / (swing / len(r.temps_c) + figure("between-days") ** 2) for r in readings]
    line = _line(readings, weights)
    excess = _excess(readings, weights, line)
    swings = [(max(r.temps_c) - min(r.temps_c)) / 2 for r in readings if len(r.temps_c) > 1]
    return replace(
        line,
        readings=looks,
        swing_c=max(swings, default=None),
        level_sd_c=line.level_sd_c * excess,
        thermometer_sd_c=prior.thermometer_sd_c,
        drift_c=_drift(readings, weights, line),
    )


def _drift(
    readings: Sequence[Reading], weights: Sequence[float], line: OffsetLearnt
) -> float | None:
    """How far the offset moved from the first day to the last, where it moved past its doubt."""
    dated = [(w, r) for w, r in zip(weights, readings, strict=True) if r.day]
    if len(dated) <= _OWN:
        return None
    days = [date.fromisoformat(r.day).toordinal() for _, r in dated]
    span, total = max(days) - min(days), sum(w for w, _ in dated)
    middle = sum(w * day for (w, _), day in zip(dated, days, strict=True)) / total
    spread = sum(w * (day - middle) ** 2 for (w, _), day in zip(dated, days, strict=True))
    if span < figure("drift-days"):
        return None
    lean = sum(
        w * (day - middle) * (r.offset_c - line.at(r.dial_c))
        for (w, r), day in zip(dated, days, strict=True)
    )
    moved, sd = span * lean / spread, span / math.sqrt(spread)
    return moved if abs(moved) > max(2 * sd, figure("drift-least")) else None


def _line(readings: Sequence[Reading], weights: Sequence[float]) -> OffsetLearnt:
    total = sum(weights)
    middle = sum(w * r.dial_c for w, r in zip(weights, readings, strict=True)) / total
    level = sum(w * r.offset_c for w, r in zip(weights, readings, strict=True)) / total
    steep = sum(w * (r.dial_c - middle) ** 2 for w, r in zip(weights, readings, strict=True))
    lean = sum(w * (r.dial_c - middle) * r.offset_c for w, r in zip(weights, readings, strict=True))
    precision = steep + 1 / figure("offset-slope") ** 2
    dials = tuple(sorted({r.dial_c for r in readings}))
    return OffsetLearnt(
        offset_c=level, at_dial_c=middle, slope_k_per_k=lean / precision, readings=0, swing_c=None,
        level_sd_c=math.sqrt(1 / total), slope_sd_k_per_k=math.sqrt(1 / precision),
        thermometer_sd_c=0.0, dials_c=dials,
    )  # fmt: skip


def _excess(readings: Sequence[Reading], weights: Sequence[float], line: OffsetLearnt) -> float:
    """How much wider than assumed the readings lie about their line; never less than 1."""
    if len(readings) <= _OWN:
        return 1.0
    parts = zip(readings, weights, strict=True)
    chi = sum(w * (r.offset_c - line.at(r.dial_c)) ** 2 for r, w in parts)
    return math.sqrt(max(1.0, chi / (len(readings) - _OWN)))
