"""A premix for many cakes: grams to weigh, in which order to mix them, and the bowl it needs."""

from collections.abc import Sequence
from dataclasses import dataclass
from math import isfinite

from krume.base import OutOfRangeError
from krume.evidence import figures
from krume.size import round_masses

TABLE = "blend.csv"
_MOST_CAKES = 1000


@dataclass(frozen=True, slots=True)
class PremixPart:
    """One part of a blend for one cake; `density_g_ml` is poured loosely, None is not known."""

    name: str
    mass_g: float
    density_g_ml: float | None = None


@dataclass(frozen=True, slots=True)
class MixStep:
    """One addition while mixing: of what, how much, and what is in the bowl then."""

    name: str
    add_g: float
    in_bowl_g: float


@dataclass(frozen=True, slots=True)
class Premix:
    """Grams for so many cakes, each with its part of the dust; `too_fine` asks a finer scale.

    `portion_g` is one cake's; `order` begins with the smallest part.
    """

    cakes: int
    masses_g: tuple[float, ...]
    too_fine: tuple[bool, ...]
    total_g: float
    portion_g: float
    dust_pct: float
    sieve_passes: int
    bowl_ml: float
    order: tuple[MixStep, ...]


def blend_figure(key: str) -> float:
    """A figure of the table of blends.

    >>> blend_figure("sieve-passes")
    3.0
    """
    return figures(TABLE)[key].value


def premix(parts: Sequence[PremixPart], cakes: int, *, step_g: float = 1.0) -> Premix:
    """Grams of each part for so many cakes, dust counted in, as the scale shows them.

    >>> found = premix([PremixPart("rice", 46), PremixPart("millet", 4)], 10)
    >>> found.masses_g, found.portion_g, [step.name for step in found.order][:2]
    ((469.0, 41.0), 50, ['millet', 'rice'])
    """
    if not 1 <= cakes <= _MOST_CAKES:
        message = f"A premix for {cakes} cakes is not made. Type a number from 1 to {_MOST_CAKES}."
        want = f"1 to {_MOST_CAKES}"
        raise OutOfRangeError(message, field="cakes", got=str(cakes), want=want)
    rows = figures(TABLE)
    more = cakes * (1 + rows["dust"].value / 100)
    rounded = round_masses([part.mass_g * more for part in parts], step_g=step_g)
    weighed = [
        PremixPart(part.name, mass, part.density_g_ml)
        for part, mass in zip(parts, rounded.masses_g, strict=True)
    ]
    return Premix(
        cakes=cakes,
        masses_g=rounded.masses_g,
        too_fine=rounded.too_fine,
        total_g=sum(rounded.masses_g),
        portion_g=sum(part.mass_g for part in parts),
        dust_pct=rows["dust"].value,
        sieve_passes=round(rows["sieve-passes"].value),
        bowl_ml=_bowl_ml(weighed),
        order=mixing_order(weighed),
    )


def _bowl_ml(parts: Sequence[PremixPart]) -> float:
    rows = figures(TABLE)
    loose = rows["bulk-density"].value
    poured = sum(part.mass_g / (part.density_g_ml or loose) for part in parts)
    return poured * rows["bowl-room"].value


def mixing_order(parts: Sequence[PremixPart]) -> tuple[MixStep, ...]:
    """Smallest part first; each addition is about as much as is in the bowl, so none hides.

    >>> steps = mixing_order([PremixPart("rice", 40.0), PremixPart("gum", 5.0)])
    >>> [(step.name, step.add_g) for step in steps]
    [('gum', 5.0), ('rice', 5.0), ('rice', 10.0), ('rice', 25.0)]
    """
    most = figures(TABLE)["like-mass"].value
    steps: list[MixStep] = []
    bowl_g = 0.0
    for part in sorted(parts, key=lambda each: (each.mass_g, each.name)):
        left_g = part.mass_g
        while left_g > 0 and isfinite(left_g):
            add_g = bowl_g if 0 < bowl_g * most < left_g else left_g
            left_g = round(left_g - add_g, 9)
            bowl_g += add_g
            steps.append(MixStep(part.name, add_g, bowl_g))
    return tuple(steps)
