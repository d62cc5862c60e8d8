"""How far the lowest crumb gives under what stands on it."""

from dataclasses import dataclass

from krume.build.standing.bearing import above_g, pressure_pa
from krume.build.standing.figures import value
from krume.build.torte import Torte

_PA_PER_KPA = 1e3
_STIFF = frozenset({"sponge", "nut-sponge"})


@dataclass(frozen=True, slots=True)
class Crush:
    """The lowest sponge under its load, by the published stiffness of wheat sponges.

    `least_mm` and `most_mm` are how much lower it gets, from the stiffest to the softest.
    """

    name: str
    height_mm: float
    load_pa: float
    least_mm: float
    most_mm: float
    status: str
    source: str


def crush(torte: Torte) -> Crush | None:
    """The lowest layer of sponge of a torte that stands on it; None where it has none."""
    if torte.kind in ("roll", "tart"):
        return None
    spongy = [
        at
        for at, layer in enumerate(torte.layers)
        if layer.role == "piece" and layer.material in _STIFF
    ]
    if not spongy:
        return None
    layer = torte.layers[spongy[0]]
    over = above_g(torte, spongy[0])
    known = layer.outline is not None and layer.height_mm and layer.mass_g is not None
    if over is None or not known or layer.outline is None:
        return None
    high = layer.height_mm or 0.0
    load = pressure_pa(over + (layer.mass_g or 0.0) / 2, layer.outline.area_cm2)
    soft, stiff = value("crumb-least") * _PA_PER_KPA, value("crumb-most") * _PA_PER_KPA
    return Crush(
        name=layer.name,
        height_mm=high,
        load_pa=load,
        least_mm=high * min(1.0, load / stiff),
        most_mm=high * min(1.0, load / soft),
        status="published",
        source="jhej-38-1063",
    )
