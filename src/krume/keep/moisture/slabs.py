"""A torte as flat slabs one over the other: what each holds of a square metre, bottom first."""

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import cache

from krume.build import Layer, Torte
from krume.evidence import column, load
from krume.keep.moisture.holding import Holding

_KIND_COLUMNS = (
    column("key", "key"),
    column("rate", "one of", "sponge", "tart", "cream", "jelly", "fat"),
    column("status", "status"),
    column("source", "source"),
)
_MM_PER_CM, _MM_PER_M = 10.0, 1e3
_KG_M2_PER_G_CM2 = 10.0
_RATES = {"sponge": "sponge", "nut-sponge": "sponge", "tart": "tart", "jelly": "jelly"}
_ROLES = frozenset({"piece", "filling", "syrup", "top", "coat"})
_MOST_TURNS = 6


@dataclass(frozen=True, slots=True)
class Slab:
    """A flat part of a torte. Masses are of one square metre [kg]; `index` is its layer's.

    `film_mm` is the thickness of chocolate or fat that lies under it, 0 where none does.
    """

    index: int
    rate: str
    thick_m: float
    water: float
    sugar: float
    starch: float
    fat: float
    film_mm: float = 0.0

    @property
    def mass(self) -> float:
        """All of it [kg/m2]."""
        return self.water + self.sugar + self.starch + self.fat

    def part(self, share: float) -> "Slab":
        """So much of the slab's thickness."""
        return replace(
            self,
            thick_m=self.thick_m * share,
            water=self.water * share,
            sugar=self.sugar * share,
            starch=self.starch * share,
            fat=self.fat * share,
        )

    def with_more(self, held: Holding, areal: float) -> "Slab":
        """The slab with so much of something soaked in."""
        return replace(
            self,
            water=self.water + areal * held.water,
            sugar=self.sugar + areal * held.sugar,
            starch=self.starch + areal * held.starch_share,
            fat=self.fat + areal * held.fat,
        )


@dataclass(frozen=True, slots=True)
class Column:
    """Slabs from the bottom up, and the area they stand for [cm2]."""

    slabs: tuple[Slab, ...]
    area_cm2: float


def column_of(
    torte: Torte,
    holds: Mapping[str, Holding],
    families: Mapping[str, str | None],
    *,
    soak_mm: float,
) -> Column | None:
    """The column of a torte; None where a height, a mass or what a layer holds is not known."""
    if torte.kind == "roll":
        return _rolled(torte, holds, families, soak_mm)
    slabs: list[Slab] = []
    film_mm = 0.0
    for index, layer in enumerate(torte.layers):
        if layer.role not in _ROLES:
            continue
        held = holds.get(layer.of)
        areal = _areal_kg_m2(torte, layer)
        high = _high_mm(torte, layer)
        if held is None or areal is None or high is None:
            return None
        if areal <= 0:
            continue
        if layer.role == "syrup":
            slabs = _soaked(slabs, held, areal, soak_mm)
        elif held.is_barrier:
            film_mm += high
        else:
            rate = rate_of(layer, families.get(layer.of))
            slabs.append(_slab(index, rate, held, areal, high, film_mm))
            film_mm = 0.0
    area = _area_cm2(torte)
    return None if area is None or not slabs else Column(tuple(slabs), area)


def rate_of(layer: Layer, family: str | None) -> str:
    """Which rate goes for a layer: by its family, else by what it is drawn as."""
    known = None if family is None else _kinds().get(family)
    return known or _RATES.get(layer.material, "cream")


@cache
def _kinds() -> dict[str, str]:
    rows = load("moisture_kinds.csv", _KIND_COLUMNS)
    return {row.text("key"): row.text("rate") for row in rows}


def _slab(
    index: int, rate: str, held: Holding, areal: float, high_mm: float, film_mm: float = 0.0
) -> Slab:
    return Slab(
        index=index,
        rate=rate,
        thick_m=high_mm / _MM_PER_M,
        water=areal * held.water,
        sugar=areal * held.sugar,
        starch=areal * held.starch_share,
        fat=areal * held.fat,
        film_mm=film_mm,
    )


def _areal_kg_m2(torte: Torte, layer: Layer) -> float | None:
    """Mass over an area, where the layer lies in the column; 0 where it does not."""
    if layer.mass_g is None:
        return None
    if layer.role == "coat" and not layer.adds_mm:
        return 0.0
    if torte.kind == "tart" and layer.role == "piece":
        area = _shell_cm2(layer)
    elif layer.volume_ml and layer.height_mm is not None and layer.role != "syrup":
        return layer.mass_g / layer.volume_ml * layer.height_mm
    else:
        area = None if layer.outline is None else layer.outline.area_cm2
    return None if not area else layer.mass_g / area * _KG_M2_PER_G_CM2


def _shell_cm2(layer: Layer) -> float | None:
    """Floor and wall of a shell."""
    if layer.outline is None or layer.outline.diameter_cm is None or layer.height_mm is None:
        return None
    wall = math.pi * layer.outline.diameter_cm * layer.height_mm / _MM_PER_CM
    return layer.outline.area_cm2 + wall


def _high_mm(torte: Torte, layer: Layer) -> float | None:
    is_shell = torte.kind == "tart" and layer.role == "piece"
    return torte.wall_mm if is_shell else layer.height_mm


def _area_cm2(torte: Torte) -> float | None:
    """Area of the narrowest solid layer: what lies over one another everywhere."""
    solid = [x for x in torte.layers if x.role in ("piece", "filling", "top")]
    areas = [layer.outline.area_cm2 for layer in solid if layer.outline is not None]
    return min(areas) if areas and len(areas) == len(solid) else None


def _soaked(slabs: list[Slab], held: Holding, areal: float, soak_mm: float) -> list[Slab]:
    """Slabs with a syrup in the upper part of the last one."""
    if not slabs:
        return slabs
    below = slabs[-1]
    share = min(1.0, soak_mm / _MM_PER_M / below.thick_m)
    wet = below.part(share).with_more(held, areal)
    if share == 1.0:
        return [*slabs[:-1], wet]
    return [*slabs[:-1], below.part(1 - share), replace(wet, film_mm=0.0)]


def _rolled(
    torte: Torte, holds: Mapping[str, Holding], families: Mapping[str, str | None], soak_mm: float
) -> Column | None:
    """Turns of a roll as a pile: sheet and cream, as often as it goes round."""
    lying = _ROLES - {"coat"}
    inside = [(i, x) for i, x in enumerate(torte.layers) if x.role in lying]
    slabs: list[Slab] = []
    for index, layer in inside:
        held = holds.get(layer.of)
        areal = _areal_kg_m2(torte, layer)
        if held is None or areal is None or layer.height_mm is None:
            return None
        if layer.role == "syrup":
            slabs = _soaked(slabs, held, areal, soak_mm)
        elif areal > 0:
            rate = rate_of(layer, families.get(layer.of))
            slabs.append(_slab(index, rate, held, areal, layer.height_mm))
    area = _area_cm2(torte)
    if area is None or torte.turns is None or not slabs:
        return None
    turns = min(max(1, round(torte.turns)), _MOST_TURNS)
    return Column(tuple(slabs) * turns, area / turns)
