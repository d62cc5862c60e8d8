"""A line's twin: the line with its figures blanked, read once for all lines it stands for.

It stands for a line only where the figure cannot change what the words were taken for.
"""

import re
from functools import lru_cache

from krume.design.reader.blanks import blanked
from krume.design.reader.entry import Entry
from krume.design.reader.headings import facts_of
from krume.design.reader.linereading import LineReading, read_ingredients, tokens_of
from krume.design.reader.scoring import ingredient_score
from krume.design.reader.settings import Settings

_WEIGHED = re.compile(r"\D*(\d{1,4}(?:\.\d{1,2})?) ?g\b\D*", re.ASCII)
_WEIGHED_FORMS = frozenset(("measured", "named"))


def twin_of(source: str, settings: Settings) -> str:
    """The line to read in place of a line: its twin, or itself."""
    blank = blanked(source)
    if blank == source or not _stands_in(blank, settings):
        return source
    figure = _WEIGHED.fullmatch(source)
    return source if figure is not None and not float(figure[1]) else blank


@lru_cache(maxsize=8192)
def _stands_in(blank: str, settings: Settings) -> bool:
    facts = facts_of(blank)
    if facts.key is not None or facts.heading is not None or facts.is_note:
        return False
    return ingredient_score(blank, settings) == 0 or _is_one_weighed(blank, settings)


def _is_one_weighed(blank: str, settings: Settings) -> bool:
    """Whether a line is one ingredient with one figure of grams and nothing to ask or note."""
    figure = _WEIGHED.fullmatch(blank)
    if figure is None or sum(token.kind in "NA" for token in tokens_of(blank)) != 1:
        return False
    found = read_ingredients(blank, settings)
    if found.problems or found.notices or len(found.entries) != 1:
        return False
    entry, value = found.entries[0], float(figure[1])
    says = (entry.amount, entry.unit, entry.mass_g, entry.basis, entry.mass_interval_g)
    is_plain = says == (value, "g", value, "weighed", None) and found.forms[0] in _WEIGHED_FORMS
    return is_plain and figure[1] not in f"{entry.name} {entry.note}"


def reading_as(twin: LineReading, source: str) -> LineReading:
    """What a twin was read as, with the grams of the line itself."""
    figure = _WEIGHED.fullmatch(source)
    if figure is None:
        return twin
    mass_g = float(figure[1])
    weighed = Entry(mass_g, "g", mass_g, *twin.entries[0][3:])
    return LineReading((weighed,), twin.forms, (), ())
