"""Firm enough, borderline, too soft or not known: each cream of a torte, cold and in the warm."""

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace

from krume.build.standing.bearing import above_g, bearing_area_cm2, pressure_pa
from krume.build.standing.crushing import Crush, crush
from krume.build.standing.figures import value
from krume.build.standing.firmness import Firmness, firmness
from krume.build.standing.squeezing import disc_carries_pa, edge_needs_pa, strip_carries_pa
from krume.build.torte import ComponentFormula, Layer, Torte

VERDICTS = ("firm enough", "borderline", "too soft", "not known")
"""From the best to the worst; what is not known is not firm."""

Parts = Mapping[str, ComponentFormula]


@dataclass(frozen=True, slots=True)
class StandingCheck:
    """One thing that a cream must hold, as the yield stress it needs for it [Pa].

    `code` is weight (what lies on it), slice (the same once it is cut), edge (its own free side)
    or hang (what clings to the side).
    """

    code: str
    need_pa: float


@dataclass(frozen=True, slots=True)
class StandingLayer:
    """One cream or jelly: what it must hold and what it is known to hold.

    `decides` is the check that needs most; `low_pa` to `high_pa` its yield stress cold, `warm_…`
    in a warm room. None is not known.
    """

    line: int
    name: str
    of: str
    verdict: str
    warm_verdict: str
    above_g: float | None
    load_pa: float | None
    decides: str | None
    need_pa: float | None
    low_pa: float | None
    high_pa: float | None
    warm_low_pa: float | None
    warm_high_pa: float | None
    status: str
    source: str
    why_not: str
    checks: tuple[StandingCheck, ...]


@dataclass(frozen=True, slots=True)
class Standing:
    """How a torte stands; `verdict` is that of its weakest layer, None where nothing is soft."""

    verdict: str | None
    warm_verdict: str | None
    layers: tuple[StandingLayer, ...]
    crush: Crush | None
    warm_c: float
    margin_factor: float


def standing(torte: Torte, parts: Parts) -> Standing:
    """Judge each cream, jelly and coat of a torte; `parts` are its formulas by the plan's words.

    Tiers are judged one by one, as standing on supports and boards of their own.
    """
    soft = _soft(torte, parts)
    return Standing(
        verdict=_worst([each.verdict for each in soft]),
        warm_verdict=_worst([each.warm_verdict for each in soft]),
        layers=tuple(soft),
        crush=crush(torte.tiers[0].torte if torte.tiers else torte),
        warm_c=value("warm-c"),
        margin_factor=value("margin"),
    )


def _soft(torte: Torte, parts: Parts) -> list[StandingLayer]:
    """Each soft layer; of tiers each torte by itself, for supports and boards carry the others."""
    if torte.tiers:
        return [
            replace(each, name=f"Tier {tier.number}: {each.name}")
            for tier in torte.tiers
            for each in _soft(tier.torte, parts)
        ]
    return [
        _layer(torte, at, parts.get(layer.of))
        for at, layer in enumerate(torte.layers)
        if layer.role in ("filling", "top", "coat") and layer.material != "syrup"
    ]


def _worst(verdicts: list[str]) -> str | None:
    return max(verdicts, key=VERDICTS.index) if verdicts else None


def _layer(torte: Torte, at: int, part: ComponentFormula | None) -> StandingLayer:
    layer = torte.layers[at]
    firm = None if part is None else firmness(part.family, gelatine_g_kg=part.gelatine_g_kg)
    over = _over_g(torte, at)
    area = bearing_area_cm2(torte, at)
    load = None if over is None or not area else pressure_pa(over, _bears_cm2(torte, area))
    checks = _checks(torte, at, load, None if part is None else part.density_g_ml)
    hardest = max(checks, key=lambda each: each.need_pa, default=None)
    need = None if hardest is None else hardest.need_pa
    return StandingLayer(
        line=layer.line,
        name=layer.name,
        of=layer.of,
        verdict=_verdict(need, None if firm is None else (firm.cold_low_pa, firm.cold_high_pa)),
        warm_verdict=_verdict(
            need, None if firm is None else (firm.warm_low_pa, firm.warm_high_pa)
        ),
        above_g=over,
        load_pa=load,
        decides=None if hardest is None else hardest.code,
        need_pa=need,
        low_pa=None if firm is None else firm.cold_low_pa,
        high_pa=None if firm is None else firm.cold_high_pa,
        warm_low_pa=None if firm is None else firm.warm_low_pa,
        warm_high_pa=None if firm is None else firm.warm_high_pa,
        status="unknown" if firm is None else firm.status,
        source="" if firm is None else firm.source,
        why_not=_why_not(layer, part, firm, need),
        checks=checks,
    )


def _over_g(torte: Torte, at: int) -> float | None:
    """Grams on a layer; on the lowest turn of a roll lies the whole roll, on a coat nothing."""
    if torte.layers[at].role == "coat":
        return 0.0
    return torte.mass_g if torte.kind == "roll" else above_g(torte, at)


def _bears_cm2(torte: Torte, area_cm2: float) -> float:
    """Area under the load: in a roll the shadow of the roll, not the sheet laid flat."""
    if torte.kind != "roll" or torte.height_mm is None or torte.roll_width_cm is None:
        return area_cm2
    return torte.height_mm / 10.0 * torte.roll_width_cm


def _verdict(need_pa: float | None, span: tuple[float, float] | None) -> str:
    """A layer is firm enough with the margin, too soft when even the firmest bowl is.

    >>> _verdict(20.0, (30.0, 90.0)), _verdict(25.0, (30.0, 90.0)), _verdict(95.0, (30.0, 90.0))
    ('firm enough', 'borderline', 'too soft')
    """
    if need_pa is None or span is None:
        return "not known"
    low, high = span
    if low >= value("margin") * need_pa:
        return "firm enough"
    return "borderline" if high >= need_pa else "too soft"


def _checks(
    torte: Torte, at: int, load_pa: float | None, density_g_ml: float | None
) -> tuple[StandingCheck, ...]:
    layer = torte.layers[at]
    high = layer.height_mm
    if load_pa is None or density_g_ml is None or not high or torte.outline is None:
        return ()
    if layer.role == "coat":
        return (StandingCheck("hang", _hangs_pa(high, density_g_ml)),)
    found = [StandingCheck("edge", _edge_pa(high, density_g_ml))]
    if load_pa > 0:
        found += _loaded(torte, layer, high, load_pa)
    gap = _gap_mm(torte, at)
    if gap > 0:
        found.append(StandingCheck("hang", _hangs_pa(gap, density_g_ml)))
    return tuple(found)


def _edge_pa(height_mm: float, density_g_ml: float) -> float:
    return edge_needs_pa(height_mm=height_mm, density_g_ml=density_g_ml)


def _hangs_pa(thick_mm: float, density_g_ml: float) -> float:
    """What clings to an upright face pulls with its own weight over the face."""
    return density_g_ml * thick_mm * value("gravity")


def _loaded(torte: Torte, layer: Layer, high_mm: float, load_pa: float) -> list[StandingCheck]:
    """Weight on the whole layer, and on the slice that is cut from it."""
    holds = value("sticking")
    if torte.kind == "roll":
        wide = torte.height_mm or high_mm
        carries = strip_carries_pa(1.0, width_mm=wide, height_mm=high_mm, sticking_share=holds)
        return [StandingCheck("weight", load_pa / carries)]
    if layer.outline is None:
        return []
    wide = _even_width_mm(layer)
    carries = disc_carries_pa(1.0, diameter_mm=wide, height_mm=high_mm, sticking_share=holds)
    found = [StandingCheck("weight", load_pa / carries)]
    narrow = _slice_mm(torte, layer)
    if narrow is not None:
        cut = strip_carries_pa(1.0, width_mm=narrow, height_mm=high_mm, sticking_share=holds)
        found.append(StandingCheck("slice", load_pa / cut))
    return found


def _even_width_mm(layer: Layer) -> float:
    """Width of the circle of the same area."""
    area = 0.0 if layer.outline is None else layer.outline.area_cm2
    return 20.0 * math.sqrt(area / math.pi)


def _slice_mm(torte: Torte, layer: Layer) -> float | None:
    """Mean width of the narrowest slice that is cut: its area over its length."""
    counts = [each.count for each in torte.slices]
    if not counts or layer.outline is None:
        return None
    if layer.outline.diameter_cm is None:
        return 10.0 * math.sqrt(layer.outline.area_cm2 / max(counts))
    radius_mm = 5.0 * layer.outline.diameter_cm
    return 100.0 * layer.outline.area_cm2 / max(counts) / radius_mm


def _gap_mm(torte: Torte, at: int) -> float:
    """Thickness of the cream that fills the gap between a piece and the ring."""
    layer = torte.layers[at]
    if layer.fills_from_mm is None or layer.outline is None or layer.outline.diameter_cm is None:
        return 0.0
    inside = [
        x.outline.diameter_cm
        for x in torte.layers[:at]
        if x.role == "piece" and x.outline is not None and x.outline.diameter_cm is not None
    ]
    return max(0.0, (layer.outline.diameter_cm - min(inside)) * 5.0) if inside else 0.0


def _why_not(
    layer: Layer, part: ComponentFormula | None, firm: Firmness | None, need_pa: float | None
) -> str:
    """What is missing where a layer cannot be judged."""
    if part is None:
        return f"{layer.of} is not in the book"
    if firm is None:
        held_by = firmness(part.family, gelatine_g_kg=1.0) is not None
        if part.family is not None and held_by:
            return f"how much gelatine {part.name} holds is not known"
        return f"nothing is known of how firm {part.name} sets"
    return "" if need_pa is not None else "a height, a mass or a density is not known"
