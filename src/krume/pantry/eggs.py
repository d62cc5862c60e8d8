"""Egg sizes of five rules: what a class weighs in the shell, and what comes out of it."""

import re
from dataclasses import dataclass
from functools import cache

from krume.base import Interval, NotFoundError
from krume.evidence import column, load, optional

EGG_COLUMNS = (
    column("key", "key"),
    column("label"),
    column("region", "one of", "us", "eu", "uk", "ca", "au", "nz"),
    column("words"),
    optional("shell_low_g", "number"),
    optional("shell_high_g", "number"),
    column("whole_g", "number"),
    column("white_g", "number"),
    column("yolk_g", "number"),
    column("whole_half_g", "number"),
    column("white_half_g", "number"),
    column("yolk_half_g", "number"),
    column("status", "status"),
    column("source", "source"),
    column("class_status", "status"),
    column("class_source", "source"),
    optional("note"),
)
PARTS = ("whole", "white", "yolk")
_REGION_WORDS = {
    "us": ("us", "usa", "american", "u s"),
    "eu": ("eu", "european", "german", "deutsch", "de"),
    "uk": ("uk", "british", "gb"),
    "ca": ("ca", "canadian", "canada"),
    "au": ("au", "australian", "australia", "aus"),
    "nz": ("nz", "new zealand"),
}
_FILLER = re.compile(
    r"\b(?:eggs?|eier|ei|size|sized|sizes|gr|groesse|größe|grösse|class|grade|klasse|a)\b"
)


@dataclass(frozen=True, slots=True)
class EggSize:
    """One class of eggs: limits in the shell, and shelled whole, white and yolk [g]."""

    key: str
    label: str
    region: str
    shell_low_g: float | None
    shell_high_g: float | None
    whole_g: Interval
    white_g: Interval
    yolk_g: Interval
    status: str
    source: str
    note: str = ""
    words: tuple[str, ...] = ()

    def part_g(self, part: str | None) -> Interval:
        """Shelled mass of one egg or of one of its parts: whole, white or yolk."""
        if part is None or part == "whole":
            return self.whole_g
        if part not in PARTS:
            message = f"an egg has no part '{part}'. Type whole, white or yolk."
            raise NotFoundError(message, field="part", got=part, want="whole, white or yolk")
        return self.white_g if part == "white" else self.yolk_g


@cache
def egg_sizes() -> tuple[EggSize, ...]:
    """All egg sizes, in the order of the table."""
    return tuple(
        EggSize(
            key=row.text("key"),
            label=row.text("label"),
            region=row.text("region"),
            shell_low_g=row.maybe("shell_low_g"),
            shell_high_g=row.maybe("shell_high_g"),
            whole_g=Interval.around(row.number_of("whole_g"), row.number_of("whole_half_g")),
            white_g=Interval.around(row.number_of("white_g"), row.number_of("white_half_g")),
            yolk_g=Interval.around(row.number_of("yolk_g"), row.number_of("yolk_half_g")),
            status=row.text("status"),
            source=row.text("source"),
            note=row.text("note"),
            words=tuple(w.strip().casefold() for w in row.text("words").split(";")),
        )
        for row in load("eggs.csv", EGG_COLUMNS)
    )


def egg_size(key: str) -> EggSize:
    """Egg size of a key such as `eu-m`; NotFoundError when there is none."""
    wanted = key.strip().casefold().replace("_", "-").replace(" ", "-")
    for size in egg_sizes():
        if size.key == wanted:
            return size
    known = ", ".join(size.key for size in egg_sizes())
    message = f"no egg size is called '{key}'. Type one of {known}."
    raise NotFoundError(message, field="size", got=key, want="a key of an egg size")


@cache
def egg_size_named(words: str, region: str | None = None) -> tuple[EggSize, ...]:
    """Sizes that words may mean; more than one is a question, none is no egg size.

    >>> [size.key for size in egg_size_named("EU M")]
    ['eu-m']
    >>> [size.key for size in egg_size_named("medium", "us")]
    ['us-medium']
    """
    text = " ".join(re.sub(r"[^\w]+", " ", words.casefold()).split())
    said, text = _region_in(text)
    wanted = said or region_named(region or "")
    word = " ".join(_FILLER.sub(" ", text).split())
    named = tuple(size for size in egg_sizes() if word in size.words)
    if wanted is not None:
        return tuple(size for size in named if size.region == wanted)
    # Without a region the two rules most texts mean are offered; others only where they alone fit.
    usual = tuple(size for size in named if size.region in ("eu", "us"))
    return usual or named


def region_named(words: str) -> str | None:
    """Region in words such as `EU sizes` or `eggs are US`; None when there is none."""
    return _region_in(" ".join(re.sub(r"[^\w]+", " ", words.casefold()).split()))[0]


def _region_in(text: str) -> tuple[str | None, str]:
    padded = f" {text} "
    for region, names in _REGION_WORDS.items():
        for name in names:
            if f" {name} " in padded:
                return region, padded.replace(f" {name} ", " ", 1).strip()
    return None, text
