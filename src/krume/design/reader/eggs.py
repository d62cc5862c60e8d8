"""Egg lines: the size the words say, the region that settles it, and what is still to be asked."""

import re
from functools import lru_cache
from typing import NamedTuple

from krume.base import Interval, as_text
from krume.design.reader.asking import Asking, grams
from krume.design.reader.settings import Settings, limit
from krume.pantry import EggSize, egg_size, egg_size_named

_SIZE = re.compile(
    r"(?:\b(?P<region>EU|US|UK|USA|AU|NZ|CA|European|American|British|German)\b[\s,-]*)?"
    r"(?:\b(?:size|grade|class|gr\.?|größe|groesse|grösse|klasse)\s*[:.]?\s*)?"
    r"(?P<size>\b(?:extra[ -]large|x-?large|very large|jumbo|king[ -]size|king|large|medium|"
    r"med\b\.?|mittelgro(?:ß|ss)e?|"
    r"mittel|gro(?:ß|ss)e?|small|kleine?)(?!\w)|\b(?-i:XXL|XL|L|M|S)\b(?!\.\w))"
    r"(?:[\s,]+(?P<after>EU|US|UK)\b)?",
    re.IGNORECASE,
)
_GERMAN_SIZE = re.compile(
    r"(?i:\b(?:gr\b|gr\.|größe|groesse|grösse|klasse|mittel|gro(?:ß|ss)|klein))|^\W*(?:XXL|XL|[SML])\W*$"
)
_REGION = re.compile(r"\b(EU|US|USA|UK)\b")
_SHELLED = re.compile(
    r"\b(?:shelled|without shells?|out of the shell|weighed|ohne schale|gewogen)\b", re.IGNORECASE
)
_WORDS = {
    "med": "medium", "med.": "medium", "mittelgroße": "medium", "mittelgrosse": "medium",
    "mittelgroß": "medium", "mittel": "medium", "große": "large", "grosse": "large",
    "groß": "large", "gross": "large", "kleine": "small", "klein": "small",
    "kleiner": "small",
}  # fmt: skip
_OFFERED = ("eu-m", "eu-l", "us-large")
_ASKED_REGIONS = {
    "medium": ("eu-m", "us-medium"),
    "large": ("eu-l", "us-large"),
    "small": ("eu-s", "us-small"),
}


_TIMES = re.compile(r"^\s*[x×]\s+", re.IGNORECASE)


class Said(NamedTuple):
    """The words about size on an egg line, and where they stand in the source."""

    words: str
    start: int
    end: int


@lru_cache(maxsize=8192)
def said_size(text: str, offset: int) -> Said | None:
    """The first words about egg size in a piece of a line that starts at `offset`."""
    match = _SIZE.search(text)
    if match is None:
        return None
    size = match["size"].casefold()
    elsewhere = _REGION.search(text)
    region = (
        match["region"]
        or match["after"]
        or (elsewhere[1] if elsewhere else "")
        or ("EU" if _GERMAN_SIZE.search(match[0]) else "")
    )
    words = f"{region} {_WORDS.get(size, match['size'])}".strip()
    return Said(words, offset + match.start(), offset + match.end())


def without_size(text: str) -> str:
    """An egg line's name without the words about size, or the sign of times before them."""
    return _TIMES.sub("", _SIZE.sub(" ", text))


def says_shelled(text: str) -> bool:
    """Whether a line says that its grams are without the shell."""
    return bool(_SHELLED.search(text))


class Eggs(NamedTuple):
    """An egg line: how many, of what part, where the number ends and what size is written."""

    how_many: float | Interval
    part: str | None
    after_count: int
    said: Said | None
    end: int


def sized(eggs: Eggs, settings: Settings, asking: Asking) -> EggSize | None:
    """The size of an egg line, or None with the question asked."""
    if eggs.said is None:
        return _unsaid(eggs, settings, asking)
    sizes = egg_size_named(eggs.said.words, settings.region)
    if len(sizes) == 1:
        return _of_book(eggs, sizes[0], settings, asking)
    if not sizes and settings.region:
        sizes = egg_size_named(eggs.said.words)
    if not sizes:
        return _unsaid(eggs, settings, asking)
    if not _is_asked(asking):
        _ask_region(eggs, sizes, asking)
    return None


_CUPS = re.compile(
    r"(?:[\d½¼¾⅓⅔⅛]|\b(?:an?|one|two|three|half))\s+(?:US\s+)?cups?\b", re.IGNORECASE
)
_FAHRENHEIT = re.compile(r"\d{3}\s*(?:°|º|degrees?|deg\.?)?\s*F\b|(?i:\bfahrenheit\b)")


def speaks_american(text: str) -> bool:
    """Whether a text measures in cups or bakes in Fahrenheit.

    >>> speaks_american("1 cup sugar"), speaks_american("Bake at 350 F."), speaks_american("90 g")
    (True, True, False)
    """
    return _CUPS.search(text) is not None or _FAHRENHEIT.search(text) is not None


def _of_book(eggs: Eggs, size: EggSize, settings: Settings, asking: Asking) -> EggSize | None:
    """A size that only the book's region settles: noted, or asked where the text is American."""
    words = eggs.said.words if eggs.said is not None else ""
    others = [s for s in egg_size_named(words) if s.key in _ASKED_REGIONS.get(words.casefold(), ())]
    if not settings.by_book or len(others) < 2:
        return size
    if settings.speaks_american and settings.region == "eu":
        if not _is_asked(asking):
            _ask_region(eggs, egg_size_named(words), asking)
        return None
    other = next(s for s in others if s.region != size.region)
    mass, otherwise = (as_text(s.part_g(eggs.part).best, 1) for s in (size, other))
    what = "shelled" if eggs.part is None else f"the {eggs.part}"
    text = (
        f"'{words}' is read as {size.label}, {mass} g {what}, by your book's region; "
        f"{other.label} is {otherwise} g"
    )
    if all(notice.text != text for notice in asking.notices):
        asking.note("egg-region-taken", text)
    return size


def _unsaid(eggs: Eggs, settings: Settings, asking: Asking) -> EggSize | None:
    if settings.egg_size is not None:
        return egg_size(settings.egg_size)
    if _is_asked(asking):
        return None
    sizes = [egg_size(key) for key in _offered(settings.region)]
    options = [(size.label, _with_size(eggs, size, asking)) for size in sizes]
    asking.ask(
        "egg-size-missing",
        "Which size are the eggs? " + _masses(sizes, eggs.part),
        *options,
        *_weighed(eggs, sizes[0], asking),
    )
    return None


def _is_asked(asking: Asking) -> bool:
    """Whether the line's eggs are asked about already; one answer settles them all."""
    return any(problem.code.startswith("egg-size") for problem in asking.problems)


def _offered(region: str | None) -> tuple[str, ...]:
    if region in (None, "eu", "us"):
        return _OFFERED
    keys = [size.key for size in egg_size_named("medium", region) + egg_size_named("large", region)]
    return tuple(dict.fromkeys(keys)) or _OFFERED


def _masses(sizes: list[EggSize], part: str | None) -> str:
    shown = "; ".join(f"{s.label} {as_text(s.part_g(part).best, 1)} g" for s in sizes)
    return f"Shelled{'' if part is None else f', the {part}'}: {shown}."


def _with_size(eggs: Eggs, size: EggSize, asking: Asking) -> str:
    if eggs.said is not None:
        return asking.edit(eggs.said.start, eggs.said.end, size.label)
    return asking.edit(eggs.end, eggs.end, f", {size.label}")


def _weighed(eggs: Eggs, size: EggSize, asking: Asking) -> list[tuple[str, str]]:
    """The way out for who weighs: a line with grams, to be overwritten with one's own."""
    count = eggs.how_many.best if isinstance(eggs.how_many, Interval) else eggs.how_many
    mass = as_text(count * size.part_g(eggs.part).best, 1)
    line = asking.edit(eggs.end, eggs.end, f", {mass} g shelled")
    return [(f"weighed: your own grams in place of {mass}", line)]


def _ask_region(eggs: Eggs, sizes: tuple[EggSize, ...], asking: Asking) -> None:
    word = eggs.said.words if eggs.said is not None else ""
    keys = _ASKED_REGIONS.get(word.casefold(), tuple(size.key for size in sizes[:3]))
    offered = [egg_size(key) for key in keys]
    first, last = offered[0].part_g(eggs.part).best, offered[-1].part_g(eggs.part).best
    apart = as_text(abs(first - last) / max(first, last) * 100, 0)
    asking.ask(
        "egg-size-region",
        f"'{word}' eggs differ from place to place: {_masses(offered, eggs.part)} "
        f"They are {apart} % apart. Which are they?",
        *((size.label, _with_size(eggs, size, asking)) for size in offered),
    )


def mass_of(eggs: Eggs, size: EggSize) -> Interval:
    """Grams of an egg line: count times the shelled mass of one, with the spread of the size."""
    one = size.part_g(eggs.part)
    if isinstance(eggs.how_many, Interval):
        return Interval(
            eggs.how_many.low * one.low,
            eggs.how_many.best * one.best,
            eggs.how_many.high * one.high,
        )
    return one.times(eggs.how_many)


def ask_mass_basis(eggs: Eggs, mass_g: float, at: tuple[int, int], asking: Asking) -> None:
    """Ask what the grams beside a count are: shelled, or with the shell."""
    count = eggs.how_many.best if isinstance(eggs.how_many, Interval) else eggs.how_many
    each = as_text(mass_g / count, 1) if count else "?"
    shelled = asking.edit(at[0], at[1], f"{asking.source[at[0] : at[1]]} shelled")
    in_shell = asking.edit(*at, "EU S") if eggs.part is None else ""
    options = [(f"{as_text(mass_g, 1)} g shelled", shelled)]
    options += [
        (f"{egg_size(k).label}, not weighed", asking.edit(*at, egg_size(k).label))
        for k in ("eu-m", "us-large")
    ]
    if in_shell:
        options.append(("in the shell: EU S", in_shell))
    asking.ask(
        "egg-mass-basis",
        f"{each} g each: is that shelled (US Large or EU M), or in the shell (EU S)?",
        *options[:4],
    )


def size_agrees(eggs: Eggs, size: EggSize, mass_g: float) -> bool:
    """Whether grams beside a count fit the named size, within its spread."""
    planned = mass_of(eggs, size)
    slack = 1 + limit("amounts-agree") / 100
    return planned.low / slack <= mass_g <= planned.high * slack


def shown(interval: Interval) -> str:
    """An interval in grams, as a question quotes it."""
    return f"{grams(interval.low)} to {grams(interval.high)}"
