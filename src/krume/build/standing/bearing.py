"""What lies on each layer of a torte: grams, and the pressure of them."""

from krume.build.standing.figures import value
from krume.build.torte import Layer, Torte

_SOLID = ("piece", "filling", "top", "decoration")
_CM2_PER_M2 = 1e4
_G_PER_KG = 1e3


def above_g(torte: Torte, index: int) -> float | None:
    """Grams that lie on a layer: all that stands higher, and a coat's share on the top.

    In a tart nothing lies on a filling but what comes after it; None where a mass is not known.
    """
    total = 0.0
    for at, layer in enumerate(torte.layers):
        share = _share(layer, index, at)
        if share == 0.0:
            continue
        if layer.mass_g is None:
            return None
        total += share * layer.mass_g
    return total


def _share(layer: Layer, index: int, at: int) -> float:
    """How much of a layer lies on the one of that index."""
    if layer.role == "coat":
        return _lid_share(layer)
    is_higher = at > index and layer.role in (*_SOLID, "syrup")
    return 1.0 if is_higher else 0.0


def _lid_share(coat: Layer) -> float:
    """What of a coat lies on the top: its area times its thickness over its volume."""
    if not coat.adds_mm or coat.outline is None or not coat.volume_ml:
        return 0.0
    return min(1.0, coat.outline.area_cm2 * coat.adds_mm / 10.0 / coat.volume_ml)


def pressure_pa(mass_g: float, area_cm2: float) -> float:
    """Pressure of a mass on an area [Pa].

    >>> round(pressure_pa(500.0, 300.0), 1)
    163.4
    """
    return mass_g / _G_PER_KG * value("gravity") / (area_cm2 / _CM2_PER_M2)


def bearing_area_cm2(torte: Torte, index: int) -> float | None:
    """Area through which a layer carries: the smaller of its own and that of what lies on it."""
    own = torte.layers[index].outline
    if own is None:
        return None
    pieces = [x for x in torte.layers[index + 1 :] if x.role == "piece" and x.outline is not None]
    on_it = pieces[0].outline if pieces else None
    return own.area_cm2 if on_it is None else min(own.area_cm2, on_it.area_cm2)
