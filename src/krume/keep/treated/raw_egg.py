"""Egg that is not heated: its grams, and the pasteurised egg that can take its place."""

from dataclasses import dataclass

from krume.base import NotFoundError
from krume.design import Formula, Line
from krume.pantry import ingredient

_PARTS = {"white": "white", "yolk": "yolk"}


@dataclass(frozen=True, slots=True)
class RawEgg:
    """Grams of egg that no step heats, by part; None is not known.

    The same grams of pasteurised egg take its place; what it lacks in whipping is said.
    """

    part: str
    mass_g: float | None

    @property
    def instead(self) -> str:
        """What to take in its place."""
        grams = "the same grams" if self.mass_g is None else f"{self.mass_g:.0f} g"
        return f"{grams} of pasteurised egg {self.part}"


def raw_egg(formula: Formula) -> tuple[RawEgg, ...]:
    r"""Egg of a formula by part, as if none of it were heated.

    >>> from krume.design import read
    >>> [egg.instead for egg in raw_egg(read("Mousse\n\n70 g egg yolk\n100 g sugar").value)]
    ['70 g of pasteurised egg yolk']
    """
    grams: dict[str, list[float | None]] = {}
    for line in formula.lines:
        if _is_egg(line):
            grams.setdefault(_PARTS.get(line.part or "", "whole"), []).append(line.mass_g)
    return tuple(RawEgg(part, _sum(masses)) for part, masses in grams.items())


def _is_egg(line: Line) -> bool:
    if line.basis == "egg":
        return True
    try:
        return line.ingredient is not None and ingredient(line.ingredient).role == "egg"
    except NotFoundError:
        return False


def _sum(values: list[float | None]) -> float | None:
    known = [value for value in values if value is not None]
    return sum(known) if len(known) == len(values) else None
