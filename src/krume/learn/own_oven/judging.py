"""Finished bakes one by one: which count, for how long, and the words for those that do not."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from krume.bake import Around, Oven, depth_cm, discrepancy_of
from krume.bake import figures as bake_figures
from krume.base import as_text
from krume.learn.own_oven.model_times import Case, Timed, ln_minutes
from krume.learn.own_oven.offset import OffsetLearnt
from krume.learn.own_oven.records import FinishedBake, Flag, Prior, figure
from krume.properties import boiling_point_c, pressure_at_altitude_pa

_COOLEST_C, _HOTTEST_C = 100.0, 300.0


@dataclass(frozen=True, slots=True)
class _Judged:
    """A bake with its oven and the span in which it was done; a core too near boiling is capped."""

    bake: FinishedBake
    oven_c: float
    least_min: float
    most_min: float


def timed_bakes(
    bakes: Sequence[FinishedBake], offset: OffsetLearnt | None, prior: Prior
) -> tuple[tuple[Timed, ...], tuple[Flag, ...]]:
    """Bakes that can count with the model's minutes, and flags of those that cannot."""
    once, twice = _once(bakes)
    judged = [(bake, true_c(bake, offset)) for bake in once]
    refused = [(bake, oven_c, why_not(bake, oven_c)) for bake, oven_c in judged]
    flags = [Flag(b.key, code, said) for b, _, found in refused if found for code, said in (found,)]
    spans = [_span(bake, oven_c) for bake, oven_c, found in refused if not found]
    ln = ln_minutes([_case(each) for each in spans], prior.ln_heat)
    timed = (
        Timed(each.bake, each.oven_c, each.least_min, each.most_min, row, _cake_sd(each))
        for each, row in zip(spans, ln, strict=True)
    )
    return tuple(timed), (*twice, *flags)


def true_c(bake: FinishedBake, offset: OffsetLearnt | None) -> float:
    """Temperature the bake had: as read, else its dial corrected by what the oven is off."""
    if bake.oven_c is not None or bake.dial_c is None:
        return bake.oven_c or 0.0
    return bake.dial_c + (0.0 if offset is None else offset.at(bake.dial_c))


def _once(bakes: Sequence[FinishedBake]) -> tuple[list[FinishedBake], list[Flag]]:
    """Each bake once; the same one written down again is named."""
    first: dict[FinishedBake, FinishedBake] = {}
    twice = []
    for bake in bakes:
        plain = replace(bake, key="", status="", is_sure=False, tin=replace(bake.tin, read=""))
        there = first.setdefault(plain, bake)
        if there is not bake:
            said = f"the same bake as {there.key}, written down twice: it counts once"
            twice.append(Flag(bake.key, "bake-twice", said))
    return list(first.values()), twice


def why_not(bake: FinishedBake, oven_c: float) -> tuple[str, str] | None:
    """Code and reason why a bake cannot count; None where it can."""
    for is_so, code, said in _checks(bake, oven_c):
        if is_so:
            return code, said
    return None


def _checks(bake: FinishedBake, oven_c: float) -> tuple[tuple[bool, str, str], ...]:
    height = bake.tin.height_cm
    boils, depth = _boiling_c(bake), depth_cm(bake.batter, bake.tin)
    done, core = as_text(bake.done_min, 1), bake.core_c
    read = "" if core is None else f"a core of {as_text(core, 0)} °C"
    rim = "" if height is None else as_text(height, 1)
    low, high = as_text(figure("bake-least"), 0), as_text(figure("bake-most"), 0)
    return (
        (not figure("bake-least") <= bake.done_min <= figure("bake-most"), "bake-minutes",
         f"{done} min is no bake; {low} to {high} min can be. Correct the minutes"),
        (bake.not_done_min is not None and bake.not_done_min >= bake.done_min, "bake-order",
         f"it was done at {done} min and not done later: turn the two round"),
        (not _COOLEST_C <= oven_c <= _HOTTEST_C, "bake-oven",
         f"an oven of {as_text(oven_c, 0)} °C is outside 100 to 300 °C, where the model ends. "
         "Correct the dial"),
        (height is not None and depth > height, "bake-rim",
         f"{as_text(bake.batter.mass_g, 0)} g stands {as_text(depth, 1)} cm deep in a tin of "
         f"{rim} cm. Correct the grams or the tin"),
        (core is not None and core > boils + bake_figures()["spread-core"].value, "bake-core",
         f"{read} is above the {as_text(boils, 0)} °C at which this "
         "batter boils. Look where the probe stood"),
        (core is not None and core < figure("core-least"), "bake-core",
         f"{read} at the end is no cake yet. Correct the core"),
        (bake.test == "colour" and core is None, "bake-colour",
         "its colour decided, not its middle: it does not count for the heat. "
         "Probe the middle when you take it out"),
    )  # fmt: skip


def _boiling_c(bake: FinishedBake) -> float:
    pressure = pressure_at_altitude_pa(bake.altitude_m)
    return boiling_point_c(pressure, sugar_pct=100 * bake.batter.sugar_share)


def _span(bake: FinishedBake, oven_c: float) -> _Judged:
    """Minutes between which it was done: a probe knows one moment, a skewer two looks."""
    highest = _boiling_c(bake) - bake_figures()["core-margin-least"].value
    if bake.core_c is None:
        least = bake.not_done_min
        if least is None:
            least = max(bake.done_min - figure("check-gap"), 0.0)
        return _Judged(bake, oven_c, least, bake.done_min)
    if bake.core_c >= highest:
        return _Judged(replace(bake, core_c=highest), oven_c, 0.0, bake.done_min)
    return _Judged(bake, oven_c, bake.done_min, bake.done_min)


def _oven(each: _Judged) -> Oven:
    """The oven of a bake; what its shelf does is the model's, so that heat is the oven's alone."""
    around = Around(rack=each.bake.shelf)
    return Oven(each.oven_c, fan=each.bake.fan, altitude_m=each.bake.altitude_m, around=around)


def _cake_sd(each: _Judged) -> float:
    """How far ln minutes of such a cake lie from the model: its miss, and the batter's doubt."""
    miss = discrepancy_of(each.bake.batter, each.bake.tin, _oven(each))
    if each.bake.tin.shape == "tube":
        # Towards later the miss of a tube tin is another: one figure stands for both sides.
        miss = math.sqrt((miss**2 + bake_figures()["discrepancy-tube-late"].value ** 2) / 2)
    return math.hypot(miss, figure("cake-parameters"))


def _case(each: _Judged) -> Case:
    bake, oven = each.bake, _oven(each)
    batter = bake.batter if bake.core_c is None else replace(bake.batter, core_c=bake.core_c)
    return Case(batter, bake.tin, oven)
