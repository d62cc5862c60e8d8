"""The blend card, the paper of a jar: allergens and gluten first, then parts, lots, mixing."""

from dataclasses import dataclass

from krume.base import as_text
from krume.publish.card import Hold, Imprint
from krume.publish.facts import Fact
from krume.publish.leaf import Leaf, LeafPart, LeafTable
from krume.publish.words import grams, listed

CAKES = (1, 2, 10)
"""How many cakes the grams of a blend card are worked out for; the last one fills a jar."""

_UNITS = {"roulade": ("roll", "rolls"), "tart": ("shell", "shells")}
_BLANK = "____________"


@dataclass(frozen=True, slots=True)
class BlendPart:
    """One part of a blend for one cake: its grams, and what the scale has to say about them.

    `is_flour` holds for flours and starches, which the percents are of; what is only sifted with
    them, a binder or a raising agent, is counted beside them.
    """

    name: str
    mass_g: float
    is_flour: bool
    mark: str = ""


@dataclass(frozen=True, slots=True)
class BlendLot:
    """One lot in the jar, how its gluten record stands on the day, and what the record says."""

    lot: str
    goods: str
    state: str
    text: str


@dataclass(frozen=True, slots=True)
class Blend:
    """All that stands on a blend card; `of` is the formula's name in the book.

    `contains` and `may_contain` are allergens in the words of a market; `unknown` are goods whose
    allergens nobody has said; `not_for` says what the jar must not be used for; `jar` what is in it
    where one is kept already.
    """

    of: str
    title: str
    family: str | None
    parts: tuple[BlendPart, ...]
    contains: tuple[str, ...]
    may_contain: tuple[str, ...]
    unknown: tuple[str, ...]
    gluten: str
    lots: tuple[BlendLot, ...]
    not_for: tuple[str, ...]
    cautions: tuple[str, ...]
    is_baked: bool
    jar: tuple[str, ...] = ()

    @property
    def flour_g(self) -> float:
        """Flours and starches of one cake together."""
        return sum(part.mass_g for part in self.parts if part.is_flour)

    @property
    def total_g(self) -> float:
        """All that goes into the jar for one cake."""
        return sum(part.mass_g for part in self.parts)


def doublings(masses_g: tuple[float, ...]) -> tuple[float, ...]:
    """What is added, step by step, so that a small part meets an equal one, then is doubled.

    The first is the smallest part; each later one is as much as is in the bowl, the last one what
    is left.

    >>> doublings((40.0, 6.0, 20.0))
    (6.0, 6.0, 12.0, 24.0, 18.0)
    """
    total = sum(masses_g)
    steps = [min(masses_g)]
    while (held := sum(steps)) < total * (1 - 1e-9):
        steps.append(min(held, total - held))
    return tuple(steps)


def blend_leaf(blend: Blend, imprint: Imprint, hold: Hold | None = None) -> Leaf:
    """The blend card of a blend, as a leaf for paper, page and JSON."""
    return Leaf(
        kind="blend card",
        name=f"{blend.title}: blend",
        facts=(
            Fact("of", blend.of),
            Fact("for 1 " + _unit(blend, 1), grams(blend.total_g), "g"),
            Fact("made on, as planned", imprint.date),
        ),
        parts=(
            LeafPart("Allergens and gluten", _first(blend), boxed=True),
            LeafPart("Not for", blend.not_for),
            LeafPart("Parts", _marks(blend), _table(blend)),
            LeafPart("Lots and their gluten records", _lots(blend)),
            LeafPart("The jar", (*blend.jar, *_jar()), boxed=True),
            LeafPart("Mixing", mixing(blend)),
        ),
        cautions=_cautions(blend, imprint),
        hold=hold,
        imprint=imprint,
    )


def _unit(blend: Blend, count: int) -> str:
    return _UNITS.get(blend.family or "", ("cake", "cakes"))[count != 1]


def _first(blend: Blend) -> tuple[str, ...]:
    told = [f"Contains {listed(blend.contains)}." if blend.contains else ""]
    told.append(f"May contain {listed(blend.may_contain)}." if blend.may_contain else "")
    told.append(f"Ask the supplier about {listed(blend.unknown)}." if blend.unknown else "")
    if not any(told):
        told.append("No declared allergen known in it.")
    return (*(text for text in told if text), blend.gluten)


def _table(blend: Blend) -> LeafTable:
    head = ("part", "%", *(f"{n} {_unit(blend, n)}, g" for n in CAKES))
    rows = [
        (
            part.name,
            ("" if part.is_flour else "+") + as_text(100 * part.mass_g / blend.flour_g, 2),
            *(grams(part.mass_g * n) for n in CAKES),
        )
        for part in blend.parts
    ]
    total = ("together", "", *(grams(blend.total_g * n) for n in CAKES))
    return LeafTable(head, (*rows, total), right=tuple(range(1, len(head))), wide=0)


def _marks(blend: Blend) -> tuple[str, ...]:
    """What a scale does not weigh well for one cake, and what the percents are of."""
    said = [f"{part.name}: {part.mark}" for part in blend.parts if part.mark]
    beside = [part.name for part in blend.parts if not part.is_flour]
    return (
        *((f"For 1 {_unit(blend, 1)}, {'; '.join(said)}.",) if said else ()),
        *((f"{listed(tuple(beside))}: beside the 100 % of flours.",) if beside else ()),
    )


def mixing(blend: Blend) -> tuple[str, ...]:
    """The order of mixing the largest number of cakes: the smallest part first, then doubled."""
    count = CAKES[-1]
    order = sorted(blend.parts, key=lambda part: part.mass_g)
    steps = doublings(tuple(part.mass_g * count for part in order))
    first = f"For {count} {_unit(blend, count)}: {grams(steps[0])} g {order[0].name}"
    if len(steps) == 1:
        return (f"{first}; nothing else goes in.",)
    names = ", ".join(part.name for part in order[1:])
    added = ", ".join(grams(step) for step in steps[1:])
    return (
        f"{first} first. Then each time at most as much as is in the bowl, stirred through: "
        f"{added} g, taken in this order: {names}. Sift it all twice, then tumble the jar.",
    )


def _lots(blend: Blend) -> tuple[str, ...]:
    return tuple(f"{each.lot} {each.goods}: {each.state}; {each.text}." for each in blend.lots)


def _jar() -> tuple[str, ...]:
    return (
        f"Made on {_BLANK}  grams in it {_BLANK}  use by {_BLANK}",
        "The use-by day is not known here, and a gluten record's end is none: write the earliest "
        "one printed on the bags.",
    )


def _cautions(blend: Blend, imprint: Imprint) -> tuple[str, ...]:
    noted = any("not baked" in note for note in imprint.notes)
    unbaked = "" if blend.is_baked or noted else "Balanced on paper, not baked."
    return tuple(text for text in (*blend.cautions, unbaked) if text)
