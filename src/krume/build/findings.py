"""What is unusual in how a torte is built, in words; unusual, never wrong."""

from collections.abc import Mapping

from krume.base import as_text
from krume.build.figures import figure
from krume.build.materials import working
from krume.build.torte import BuildFinding, ComponentFormula, Layer, Torte
from krume.design import bands
from krume.properties import bloom_swap

_SLACK = 1e-9
_USUAL_BLOOM = 200.0
"""Strength the usual grams a kilogram are written for."""
Parts = Mapping[str, ComponentFormula]


def findings(torte: Torte, parts: Parts, syrups: Mapping[int, float]) -> tuple[BuildFinding, ...]:
    """Findings of a torte; `syrups` are the grams per cm2 by the number of their line."""
    found = [
        *_layers(torte),
        *(one for layer in _creams(torte) for one in _thick(layer, parts[layer.of])),
        *_syrups(syrups),
        *_ring(torte),
        *_bend(torte),
    ]
    return tuple(dict.fromkeys(found))


def _layers(torte: Torte) -> list[BuildFinding]:
    """Layers outside the usual height; a shell is none."""
    if torte.kind == "tart":
        return []
    least, most = figure("layer-least"), figure("layer-most")
    found = []
    for layer in torte.layers:
        if layer.role != "piece" or layer.height_mm is None:
            continue
        side = _side(layer.height_mm, least.value, most.value)
        if side:
            usual = f"usual is {as_text(least.value)} to {as_text(most.value)} mm"
            text = f"Layers of {layer.of} are {as_text(layer.height_mm, 1)} mm; {usual}."
            found.append(
                BuildFinding(
                    f"layer-{side}", f"line {layer.line}", layer.height_mm,
                    least.value, most.value, "mm", least.status, text,
                )
            )  # fmt: skip
    return found


def _side(value: float, low: float, high: float) -> str:
    if value < low - _SLACK:
        return "low"
    return "high" if value > high + _SLACK else ""


def _creams(torte: Torte) -> list[Layer]:
    soft = ("cream", "set-cream")
    on_or_in = [x for x in torte.layers if x.role in ("filling", "top") and x.material in soft]
    return [x for x in on_or_in if not x.dome_mm]


def _thick(layer: Layer, part: ComponentFormula) -> list[BuildFinding]:
    usual = figure("cream-usual")
    limit = usual.value + (usual.half_width or 0.0)
    if layer.height_mm is None or layer.height_mm <= limit + _SLACK:
        return []
    height = as_text(layer.height_mm, 1)
    text = f"Layers of {part.title} are {height} mm, thicker than the usual {as_text(usual.value)}"
    return [
        BuildFinding(
            "cream-high", f"line {layer.line}", layer.height_mm, None, limit, "mm", usual.status,
            f"{text}{_stands(part)}.",
        )
    ]  # fmt: skip


def _stands(part: ComponentFormula) -> str:
    if not working(part.family).gels:
        return ""
    least, most = figure("gelatine-thick-least").value, figure("gelatine-thick-most").value
    wants = f": so thick it wants gelatine of {as_text(least)} to {as_text(most)} g/kg"
    if part.gelatine_g_kg is None:
        return f"{wants}, and how much it has is not known"
    has = f"{wants}, and has {as_text(part.gelatine_g_kg, 1)}"
    bloom = None if part.gel is None else part.gel.strength_bloom
    if bloom is None or bloom == _USUAL_BLOOM:
        return has
    same = bloom_swap(part.gelatine_g_kg, from_bloom=bloom, to_bloom=_USUAL_BLOOM)
    root, ratio = as_text(same.by_root_g, 1), as_text(same.by_ratio_g, 1)
    return f"{has} of {as_text(bloom)} bloom: as {root} by the root rule, {ratio} by the ratio rule"


def _syrups(syrups: Mapping[int, float]) -> list[BuildFinding]:
    band = next((b for b in bands("syrup") if b.quantity == "syrup_g_cm2"), None)
    if band is None:
        return []
    found = []
    for line, amount in syrups.items():
        side = _side(amount, band.low, band.high)
        if side:
            usual = f"usual is {band.low:.2f} to {band.high:.2f}"
            text = f"Syrup is {as_text(amount, 3)} g/cm2; {usual}."
            found.append(
                BuildFinding(
                    f"syrup-{side}", f"line {line}", amount, band.low, band.high, "g/cm2",
                    band.status, text,
                )
            )  # fmt: skip
    return found


def _ring(torte: Torte) -> list[BuildFinding]:
    if torte.ring_spare_mm is None or torte.ring_height_mm is None:
        return []
    if torte.ring_spare_mm > _SLACK:
        return []
    high = as_text(torte.ring_height_mm, 1)
    text = f"The ring is full: {high} of {high} mm, 0 mm to spare."
    return [BuildFinding("ring-full", "ring", 0.0, None, None, "mm", "derived", text)]


def _bend(torte: Torte) -> list[BuildFinding]:
    """How far the outer face of a roll is stretched, at the start and one turn further out."""
    if torte.bend_strain_pct is None or torte.kind != "roll":
        return []
    sheet = torte.layers[0].height_mm
    inside = [x.height_mm for x in torte.layers[1:] if x.role == "filling"]
    if sheet is None or None in inside:
        return []
    pitch = sheet + sum(x for x in inside if x is not None)
    later = 100 * (sheet / 2) / (pitch + sheet / 2)
    found = [_turns(torte, later)]
    start = figure("roll-start-radius").value
    usual, cracks = figure("roll-usual-most").value, figure("roll-cracks-from").value
    strain, limit = _strain_pct(sheet, start), _strain_pct(usual, start)
    if sheet <= usual + _SLACK:
        return found
    how = "expect cracks" if sheet > cracks + _SLACK else "it is borderline"
    text = (
        f"Begun about {as_text(start)} mm wide, the outer face of {as_text(sheet, 1)} mm stretches "
        f"by {as_text(strain, 0)} %; a usual sheet of {as_text(usual)} mm by {as_text(limit, 0)} "
        f"%: {how}. Nearest: {as_text(usual)} mm, or begin it around something thicker."
    )
    found.append(
        BuildFinding(
            "roll-crack", f"line {torte.layers[0].line}", strain, None, limit, "%",
            figure("roll-usual-most").status, text,
        )
    )  # fmt: skip
    return found


def _strain_pct(sheet_mm: float, radius_mm: float) -> float:
    """Stretch of the outer face of a sheet bent around a radius; its middle keeps its length."""
    return 100 * (sheet_mm / 2) / (radius_mm + sheet_mm / 2)


def _turns(torte: Torte, later: float) -> BuildFinding:
    text = (
        f"The outer face of the sheet stretches by {as_text(later, 0)} % one turn from the middle "
        f"and by {as_text(torte.bend_strain_pct or 0.0, 0)} % at the very start, where it folds "
        "rather than bends. Upper estimates: crumb gives. Roll it while it is warm."
    )
    return BuildFinding(
        "roll-bend", f"line {torte.layers[0].line}", later, None, None, "%", "derived", text
    )
