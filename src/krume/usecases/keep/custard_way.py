"""How a torte's custard cools in time: which depth, in what, and what its log must show."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

from krume.base import Interval, as_text
from krume.design import Formula
from krume.properties import constants

if TYPE_CHECKING:
    from krume.keep import CustardCooling, CustardVessel

_CUSTARDS = ("custard", "custard-lightened", "custard-buttercream")
_NEVER = (
    "A prediction is no evidence. Without these readings the verdict stays: not shown. Your local "
    "law decides."
)


@dataclass(frozen=True, slots=True)
class KeepDepth:
    """One depth: hours of both stages (None is later than the model looks), and its word.

    `verdict` of the prediction: within, may, over.
    """

    depth_cm: float
    first_h: Interval | None
    total_h: Interval | None
    verdict: str


@dataclass(frozen=True, slots=True)
class KeepVessel:
    """One vessel: deepest with room to spare, shallowest that does not make it, all depths."""

    key: str
    words: str
    note: str
    within_cm: float | None
    over_cm: float | None
    depths: tuple[KeepDepth, ...]


@dataclass(frozen=True, slots=True)
class KeepCooling:
    """The predicted way of a custard out of the warm, and the log that alone shows it.

    `verdict` is that of the batch: always not-shown, whatever is predicted. `lines` and `log` say
    it in a baker's words.
    """

    of: tuple[str, ...]
    verdict: str
    room_c: float
    fridge_c: float
    stand_min: float
    start_c: float
    vessels: tuple[KeepVessel, ...]
    lines: tuple[str, ...]
    log: tuple[str, ...]


def custard_way(
    formulas: Mapping[str, Formula],
    families: Mapping[str, str | None],
    *,
    fridge_c: float | None = None,
    room_c: float | None = None,
) -> KeepCooling | None:
    """The way of the custards among some formulas; None where there is no custard."""
    of = tuple(name for name in custards_among(families) if name in formulas)
    if not of:
        return None
    # The prediction needs numpy and scipy; what only keeps must not wait for them.
    from krume.keep import custard_cooling

    found = custard_cooling(fridge_c=fridge_c, room_c=room_c)
    return KeepCooling(
        of=of,
        verdict="not-shown",
        room_c=found.room_c,
        fridge_c=found.fridge_c,
        stand_min=found.stand_min,
        start_c=found.start_c,
        vessels=tuple(_vessel(each) for each in found.vessels),
        lines=(
            _places(found),
            *(_says(each) for each in found.vessels),
            *(said for name in of for said in _spread(name, formulas[name])),
        ),
        log=log_lines(),
    )


def custards_among(families: Mapping[str, str | None]) -> tuple[str, ...]:
    """Names of the custards among formulas, by their families."""
    return tuple(name for name, kind in families.items() if kind in _CUSTARDS)


def _vessel(found: "CustardVessel") -> KeepVessel:
    depths = tuple(
        KeepDepth(d.depth_cm, _rounded(d.first_h), _rounded(d.total_h), d.verdict)
        for d in found.depths
    )
    return KeepVessel(found.key, found.words, found.note, found.within_cm, found.over_cm, depths)


def _rounded(hours: Interval | None) -> Interval | None:
    if hours is None:
        return None
    return Interval(round(hours.low, 1), round(hours.best, 1), round(hours.high, 1))


def _places(found: "CustardCooling") -> str:
    return (
        f"Poured at {as_text(found.start_c, 0)} °C, covered on the surface, "
        f"{as_text(found.stand_min, 0)} min in a room of {as_text(found.room_c, 1)} °C, then a "
        f"fridge of {as_text(found.fridge_c, 1)} °C (assumed where you do not say):"
    )


def _says(found: "CustardVessel") -> str:
    within, over = found.within_cm, found.over_cm
    deep = max(d.depth_cm for d in found.depths)
    begin = f"{found.words[:1].upper()}{found.words[1:]}: "
    if within is None:
        yes = "no depth of the table has room to spare"
    else:
        yes = f"up to {as_text(within, 1)} cm deep with room to spare"
    if over is None:
        no = "" if within == deep else f", deeper may take too long (to {as_text(deep, 1)} cm)"
    else:
        no = f", from {as_text(over, 1)} cm it does not make it"
    return f"{begin}{yes}{no}."


def short_way(way: KeepCooling) -> str:
    """The depths with room to spare in one sentence, for a sheet; "" where there are none."""
    told = [
        f"{each.words} up to {as_text(each.within_cm, 1)} cm"
        for each in way.vessels
        if each.within_cm is not None
    ]
    if not told:
        return ""
    return (
        f"{', '.join(way.of)}, predicted to cool in time with room to spare, no evidence: "
        f"{'; '.join(told)} (fridge "
        f"{as_text(way.fridge_c, 1)} °C, room {as_text(way.room_c, 1)} °C)."
    )


def _spread(name: str, formula: Formula) -> list[str]:
    """How deep all of a custard lies in one tray; nothing where a line has no mass."""
    from krume.bake import cooling_value

    masses = [line.mass_g for line in formula.lines if line.mass_g is not None]
    if len(masses) < len(formula.lines) or not masses:
        return []
    long, wide = cooling_value("tray-long"), cooling_value("tray-wide")
    depth = 1000 * sum(masses) / cooling_value("custard-density") / (long * wide)
    return [
        f"All {sum(masses):.0f} g of {name} in one tray of {long:.0f} × {wide:.0f} cm lie "
        f"{as_text(depth, 1)} cm deep."
    ]


def log_lines() -> tuple[str, ...]:
    """What is probed and written, and when, by the two stages of the law."""
    limit = constants("keeping.csv")
    start, middle, end = (as_text(limit[f"cooling-{key}"], 1) for key in ("start", "middle", "end"))
    first, total = (as_text(limit[f"cooling-{key}-h"], 1) for key in ("first", "total"))
    return (
        f"Write the time when its warmest place passes {start} °C: the clock starts there.",
        "Probe the middle, half-way down, at least every hour.",
        f"By {first} h it must be at {middle} °C or below, by {total} h in all at {end} °C or "
        "below. Write each reading with its time.",
        _NEVER,
    )
