"""Which line of a formula a person's words mean: by name, by the pantry, by the words in it."""

import re
from collections.abc import Callable
from dataclasses import dataclass

from krume.base import UNITS
from krume.design.formula import Formula, Line
from krume.design.varying.parts_of import maybe
from krume.pantry import find

_AMOUNT = re.compile(
    r"^\s*(?P<number>\d+(?:[.,]\d+)?)\s*(?P<unit>g|kg|%)\s*(?:of\s+)?(?P<name>\S.*)$", re.IGNORECASE
)
_AMOUNT_BEHIND = re.compile(
    r"^\s*(?P<name>\S.*?)\s*[-:]?\s*(?P<number>\d+(?:[.,]\d+)?)\s*(?P<unit>g|kg|%)\s*$",
    re.IGNORECASE,
)
_WORD = re.compile(r"[^\W\d_]+")
_SMALL = frozenset("of the a an and in with ground fine".split())


@dataclass(frozen=True, slots=True)
class Said:
    """Words for a line, with grams or a percent where the person gave one."""

    name: str
    mass_g: float | None = None
    share_pct: float | None = None


def said_of(words: str) -> Said:
    """Split an amount off the words for a line, in front of the name or behind it.

    >>> said_of("10 g rice flour"), said_of("sugar 20 %").share_pct, said_of("sugar -25 g").mass_g
    (Said(name='rice flour', mass_g=10.0, share_pct=None), 20.0, 25.0)
    """
    match = _AMOUNT.match(words) or _AMOUNT_BEHIND.match(words)
    if match is None:
        return Said(" ".join(words.split()))
    number = float(match["number"].replace(",", "."))
    name = " ".join(match["name"].split())
    if match["unit"] == "%":
        return Said(name, share_pct=number)
    return Said(name, mass_g=number * (UNITS[match["unit"].casefold()].size or 1.0))


def lines_named(formula: Formula, name: str) -> tuple[int, ...]:
    r"""Places of the lines a name means; the closest way of meaning one decides.

    >>> from krume.design.reader import read
    >>> text = "Sponge\n\n40 g ground hazelnuts\n12 g white rice flour\n9 g sweet rice flour\n"
    >>> formula = read(text).value
    >>> [lines_named(formula, name) for name in ("hazelnut", "rice flour", "rye")]
    [(0,), (1, 2), ()]
    """
    plain = name.casefold().strip()
    ways = (_by_name(formula, plain), _by_key(formula, name), _by_words(formula, plain),
            _by_role(formula, plain))  # fmt: skip
    return next((found for found in ways if found), ())


def _by_name(formula: Formula, plain: str) -> tuple[int, ...]:
    return _places(
        formula, lambda line: plain in (line.name.casefold(), line.read.strip().casefold())
    )


def _by_key(formula: Formula, name: str) -> tuple[int, ...]:
    key = find(name).key
    return () if key is None else _places(formula, lambda line: line.ingredient == key)


def _by_words(formula: Formula, plain: str) -> tuple[int, ...]:
    wanted = _stems(plain)
    if not wanted:
        return ()
    return _places(formula, lambda line: wanted <= _stems(line.name.casefold()))


def _by_role(formula: Formula, plain: str) -> tuple[int, ...]:
    role = plain.removesuffix("s")
    return _places(formula, lambda line: role_of(line) == role)


def _places(formula: Formula, fits: Callable[[Line], bool]) -> tuple[int, ...]:
    return tuple(at for at, line in enumerate(formula.lines) if fits(line))


def _stems(text: str) -> frozenset[str]:
    words = (word for word in _WORD.findall(text) if word not in _SMALL)
    return frozenset(word[:-1] if len(word) > 3 and word.endswith("s") else word for word in words)


def role_of(line: Line) -> str:
    """What a line does in a balance; empty where nobody knows it."""
    if line.basis == "egg" or line.part in ("yolk", "white", "whole"):
        return "egg"
    found = maybe(line.ingredient)
    return "" if found is None else found.role
