"""Water between the layers of a torte over three days, in grams, hours and sentences."""

from krume.base import Infeasible, Interval, as_text
from krume.build import Layer, Torte, working
from krume.design import Formula
from krume.keep import (
    Holding,
    HoursUntil,
    Migration,
    SoftBase,
    holding_of,
    migration,
    moisture_figure,
)
from krume.label import product_of_formula
from krume.publish import WaterCourse, WaterLine, moisture_drawing
from krume.usecases.torte.build import TorteMade, parts_of
from krume.usecases.torte.moisture_result import (
    MoistureBase,
    MoisturePart,
    MoistureResult,
    MoistureUntil,
)

_NOT_TESTED = (
    "Worked out and never tested on a torte. Rates are those of wheat sponge, sides are left out, "
    "and sugar is taken to stay where it is: take the grams as upper ones."
)
_STILL = "So little moves between its layers that nothing follows from it."
_DAY, _END = 24.0, 72.0


def moisture_of(made: TorteMade) -> MoistureResult | None:
    """Water of a torte that was built; None where it cannot be built."""
    torte = made.torte
    if isinstance(torte, Infeasible):
        return None
    if torte.tiers:
        names = ", ".join(tier.name for tier in torte.tiers)
        return _unknown(f"it is of tiers; ask it of each: {names}")
    missing = [each for each in _all_held(made).values() if isinstance(each, str)]
    if missing or not torte.layers:
        return _unknown(missing[0] if missing else "nothing stands in it yet")
    holds, families = holdings_of(made)
    cold = (made.plan.keep or "").casefold().startswith("cold")
    temp = moisture_figure("cold-c" if cold else "room-c")
    moved = migration(torte, holds, families, temp_c=temp)
    if moved is None:
        return _unknown("a height, a mass or a formula in it is not known")
    return _result(torte, moved, _set_h(families))


def holdings_of(made: TorteMade) -> tuple[dict[str, Holding], dict[str, str | None]]:
    """What each formula of a torte holds, as far as it is known, and its family."""
    holds = {name: each for name, each in _all_held(made).items() if isinstance(each, Holding)}
    return holds, {name: part.family for name, part in parts_of(made.formulas).items()}


def _all_held(made: TorteMade) -> dict[str, Holding | str]:
    return {name: _held(name, read.formula) for name, read in made.formulas.items()}


def _held(name: str, formula: Formula) -> Holding | str:
    product = product_of_formula(name, formula)
    if formula.baked is None:
        return holding_of(formula)
    mixed, finished = product.mixed_g, product.finished_g
    lost = None if mixed is None or finished is None or mixed <= 0 else 1 - finished / mixed
    return holding_of(formula, lost_share=lost)


def _unknown(why: str) -> MoistureResult:
    line = f"What water moves is not known: {why}."
    return MoistureResult(
        None, None, (), (), None, None, None, None, (line,), why, _NOT_TESTED, None, None
    )


def _set_h(families: dict[str, str | None]) -> float | None:
    hours = [working(family).set_h for family in families.values()]
    return max((each for each in hours if each is not None), default=None)


def _result(torte: Torte, moved: Migration, set_h: float | None) -> MoistureResult:
    parts = _parts(torte, moved)
    base = None if moved.base is None else _base(torte, moved.base)
    course = _course(parts, moved)
    until = None if base is None else base.planned_h
    lines = (
        *_told(parts, moved.temp_c),
        *(_best(moved.half_h, set_h, base) if _moves(parts) else [_STILL]),
        *(() if base is None else _base_lines(base)),
    )
    return MoistureResult(
        temp_c=moved.temp_c,
        area_cm2=moved.area_cm2,
        hours=moved.hours,
        parts=parts,
        set_h=set_h,
        best_from_h=moved.half_h if _moves(parts) else None,
        best_until_h=until,
        base=base,
        lines=lines,
        why_not=None,
        caution=_NOT_TESTED,
        svg=moisture_drawing(course, ident="water"),
        svg_narrow=moisture_drawing(course, ident="water-phone", narrow=True),
    )


def _moves(parts: tuple[MoisturePart, ...]) -> bool:
    return any(each.verdict != "stays" for each in parts)


def _course(parts: tuple[MoisturePart, ...], moved: Migration) -> WaterCourse:
    words = [each.word for each in parts]
    named = [
        each.word if words.count(each.word) == 1 else f"{each.word} {each.of}" for each in parts
    ]
    return WaterCourse(
        hours=moved.hours,
        lines=tuple(
            WaterLine(word, each.change_g, each.day_3_g)
            for word, each in zip(named, parts, strict=True)
        ),
        best_from_h=moved.half_h if moved.base is None and _moves(parts) else None,
    )


def _parts(torte: Torte, moved: Migration) -> tuple[MoisturePart, ...]:
    """Layers of one formula in one role together, in the order of the torte."""
    groups: dict[tuple[str, str], list[int]] = {}
    for at, each in enumerate(moved.layers):
        layer = torte.layers[each.index]
        groups.setdefault((layer.of, layer.role), []).append(at)
    return tuple(_part(torte, moved, group) for group in groups.values())


def _part(torte: Torte, moved: Migration, group: list[int]) -> MoisturePart:
    layers = [moved.layers[at] for at in group]
    first = torte.layers[layers[0].index]
    day_3 = _added([each.day_3_g for each in layers])
    count = len(layers)
    return MoisturePart(
        name=_title(first),
        of=first.of,
        word=first.word.rstrip(" 0123456789"),
        count=count,
        verdict=_verdict(day_3.best),
        water_g=sum(each.start_g for each in layers),
        water_pct=sum(each.start_pct for each in layers) / count,
        end_pct=sum(each.end_pct for each in layers) / count,
        activity=sum(each.start_activity for each in layers) / count,
        end_activity=sum(each.end_activity for each in layers) / count,
        change_g=tuple(sum(one) for one in zip(*(e.change_g for e in layers), strict=True)),
        day_1_g=_added([each.day_1_g for each in layers]),
        day_3_g=day_3,
    )


def _title(layer: Layer) -> str:
    return layer.name.partition(",")[0]


def _added(spans: list[Interval]) -> Interval:
    return Interval(
        sum(each.low for each in spans), sum(each.best for each in spans),
        sum(each.high for each in spans),
    )  # fmt: skip


def _verdict(change_g: float) -> str:
    if abs(change_g) < moisture_figure("little-moves"):
        return "stays"
    return "takes" if change_g > 0 else "gives"


def _told(parts: tuple[MoisturePart, ...], temp_c: float) -> list[str]:
    said = []
    for each in parts:
        if each.verdict == "stays":
            said.append(f"{each.name} stays as it is.")
            continue
        day, end = _grams(each.day_1_g), _grams(each.day_3_g)
        said.append(f"{each.name} {each.verdict} {day} of water in a day, {end} in three.")
    return [f"At {as_text(temp_c, 0)} °C, under a cover:", *said]


def _grams(span: Interval) -> str:
    ends = sorted((abs(span.low), abs(span.high)))
    if span.low < 0 < span.high:
        ends = [0.0, max(ends)]
    low, high = (as_text(end, 0) for end in ends)
    return f"{as_text(abs(span.best), 0)} g ({low} to {high})"


def _best(half_h: Interval, set_h: float | None, base: MoistureBase | None) -> list[str]:
    span = f"{as_text(half_h.low, 0)} to {as_text(half_h.high, 0)}"
    half = f"Half of what moves in three days has moved after {as_text(half_h.best, 0)} h ({span})"
    if base is not None:
        return [f"{half}. With a base that should be crisp, best as soon as it has set."]
    wait = "" if set_h is None else f", and not before its creams have set ({as_text(set_h, 0)} h)"
    return [
        f"{half}: best from then on{wait}.",
        "Nothing in the sum ends it within three days: how long it keeps decides.",
    ]


def _base(torte: Torte, base: SoftBase) -> MoistureBase:
    layer = torte.layers[base.index]
    return MoistureBase(
        name=_title(layer),
        activity=base.start_activity,
        water_pct=base.start_pct,
        planned_h=_until(base.planned),
        bite_h=_until(base.bite),
        crisp_h=_until(base.crisp),
        film_h=_until(base.film),
        closed_film_h=_until(base.closed),
        film_mm=base.film_mm,
        has_film=base.has_film,
        crisp_mass_g=None if layer.mass_g is None else layer.mass_g * base.crisp_share,
        looked_h=base.looked_h,
    )


def _until(hours: HoursUntil) -> MoistureUntil:
    return MoistureUntil(hours.low, hours.best, hours.high)


def _base_lines(base: MoistureBase) -> list[str]:
    film = f"{as_text(base.film_mm, 1)} mm"
    return [
        _as_planned(base),
        f"Baked crisp, it begins to lose its bite {_when(base.bite_h, base)} and is soft "
        f"{_when(base.crisp_h, base)}. That is measured on dry snacks, not on a tart.",
        f"Behind {film} of chocolate brushed on it is soft {_when(base.film_h, base)}"
        f"{_times(base)}; behind {film} without a gap {_when(base.closed_film_h, base)}. An order "
        "of magnitude, no more: a gap undoes it.",
    ]


def _as_planned(base: MoistureBase) -> str:
    begins = f"{base.name} begins with {as_text(base.water_pct, 1)} % of water, a water activity "
    begins += f"of {base.activity:.2f}"
    if base.planned_h.best == 0.0:
        mass = base.crisp_mass_g
        weigh = "" if mass is None else f" Crisp, it would weigh about {as_text(mass, 0)} g."
        limit = moisture_figure("crisp-most")
        return f"{begins}: as it is planned it is soft already (from {limit:.2f}).{weigh}"
    film = " behind its chocolate" if base.has_film else ""
    return f"{begins}; as planned{film} it is soft {_when(base.planned_h, base)}."


def _times(base: MoistureBase) -> str:
    """How many times as long, in one figure."""
    bare, behind = base.crisp_h.best, base.film_h.best
    if bare is None or behind is None or bare <= 0:
        return ""
    return f", some {as_text(float(f'{behind / bare:.1g}'), 0)} times as long"


def _when(until: MoistureUntil, base: MoistureBase) -> str:
    """Hours with their doubt, in days where they are many."""
    never = f"{as_text(base.looked_h / _DAY, 0)} days"
    if until.best is None:
        early = "" if until.low is None else f" (at the earliest after {_hours(until.low)})"
        return f"not within {never}{early}"
    late = f"not within {never}" if until.high is None else _hours(until.high)
    low, best = _hours(until.low or 0.0), _hours(until.best)
    if low == best == late:
        return f"after {best}"
    return f"after {best} ({low} at the fastest, {late} at the slowest)"


def _hours(hours: float) -> str:
    if hours >= _END:
        return f"{as_text(hours / _DAY, 0)} days"
    if hours < 1:
        return "less than 1 h"
    return f"{as_text(float(f'{hours:.2g}'), 0)} h"
