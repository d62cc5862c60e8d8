"""Rules of eggs across orders, each a row: tolerance, hours cold, liquids, cautions, takers."""

from dataclasses import dataclass
from functools import cache

from krume.base import Figure
from krume.evidence import Row, column, figures, load, optional

GOOD_COLUMNS = (
    column("key", "key"),
    column("part", "one of", "whole", "yolk", "white"),
    column("form", "one of", "shell", "pasteurised", "sugared"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)
SWAP_COLUMNS = (
    column("key", "key"),
    column("part", "one of", "whole", "yolk", "white"),
    column("family", "key"),
    column("allowed", "flag"),
    column("status", "status"),
    column("source", "source"),
    column("words"),
)
SPARE_COLUMNS = (
    column("key", "key"),
    column("part", "one of", "whole", "white", "yolk"),
    column("family", "key"),
    optional("heat_c", "number"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)
CAUTION_COLUMNS = (
    column("key", "key"),
    column("text"),
    column("status", "status"),
    column("source", "source"),
)
DAY_H = 24


@dataclass(frozen=True, slots=True)
class SpareUse:
    """What a family does with spare parts: how hot they are made, and in which words."""

    heat_c: float | None
    words: str
    status: str

    @property
    def treated(self) -> str:
        """How the part is treated there."""
        return self.words if self.heat_c is None else f"heated to {self.heat_c:g} °C"


def rule(key: str) -> Figure:
    """Figure of egg_rules.csv."""
    return figures("egg_rules.csv")[key]


def cold_days(part: str) -> int:
    """Days that a loose part of an egg keeps cold.

    >>> cold_days("yolk"), cold_days("white")
    (2, 4)
    """
    return int(rule(f"{part}-cold-h").value // DAY_H)


def near_enough_fraction() -> float:
    """How far whole eggs of other sizes may weigh from what a bowl wants."""
    return rule("near-enough").value


@cache
def _goods() -> dict[str, Row]:
    return {row.text("key"): row for row in load("egg_goods.csv", GOOD_COLUMNS)}


def egg_good(ingredient: str | None) -> tuple[str, str] | None:
    """Part and form (shell, pasteurised, sugared) of an ingredient; None where it is no egg.

    >>> egg_good("egg-white-frozen-pasteurized")
    ('white', 'pasteurised')
    """
    row = _goods().get(ingredient or "")
    return None if row is None else (row.text("part"), row.text("form"))


@cache
def _swaps() -> dict[tuple[str, str], Row]:
    rows = load("egg_swaps.csv", SWAP_COLUMNS)
    return {(r.text("part"), r.text("family")): r for r in rows if r.flag("allowed")}


def liquid_words(part: str, family: str | None) -> str | None:
    """Why a pack's egg does for a part of a family; None where that is not known."""
    row = _swaps().get((part, family or ""))
    return None if row is None else row.text("words")


@cache
def _uses() -> dict[tuple[str, str], Row]:
    return {(r.text("part"), r.text("family")): r for r in load("spares.csv", SPARE_COLUMNS)}


def spare_use(part: str, family: str | None) -> SpareUse | None:
    """How a family takes a spare part of an egg; None where it does not."""
    row = _uses().get((part, family or ""))
    if row is None:
        return None
    return SpareUse(row.maybe("heat_c"), row.text("note"), row.text("status"))


@cache
def egg_cautions() -> dict[str, str]:
    """Sentences about loose, frozen, raw and pasteurised egg, by name."""
    return {row.text("key"): row.text("text") for row in load("egg_cautions.csv", CAUTION_COLUMNS)}
