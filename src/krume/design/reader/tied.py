"""Lines tied to another line: `the same weight of butter`, `the weight of the eggs in sugar`."""

import re
from functools import lru_cache

from krume.design.reader.entry import Entry, ingredient_role
from krume.design.reader.naming import named
from krume.pantry import Ingredient

_TIED = re.compile(
    r"^\W*(?:(?:the |their )?weight of (?:the )?eggs? (?:in|of)\s+(?P<in>.+)"
    r"|(?:the )?same (?:weight|amount|quantity)(?: each)? of\s+(?P<same>.+)"
    r"|(?:their|its) weight in\s+(?P<their>.+)"
    r"|as much\s+(?P<much>(?:(?! as ).)+)(?:\s+as (?:the |they |it |your )?(?:eggs?|weigh).*)?"
    r"|equal weights? of\s+(?P<equal>.+)"
    r"|and (?:the same )?of\s+(?P<also>.+))$",
    re.IGNORECASE,
)
_SPLIT = re.compile(r"\s*,\s*(?:and\s+)?|\s+(?:and|und|&)\s+", re.IGNORECASE)


@lru_cache(maxsize=4096)
def tied_names(text: str) -> tuple[str, ...]:
    """Names of a line that is tied to another line's weight; none for an ordinary line.

    >>> tied_names("the same weight of butter and sugar"), tied_names("90 g sugar")
    (('butter', 'sugar'), ())
    """
    if any(sign.isdigit() for sign in text):
        return ()
    match = _TIED.match(" ".join(text.split()).strip(" .;,"))
    if match is None:
        return ()
    names = next(group for group in match.groups() if group)
    return tuple(name for name in _SPLIT.split(names) if name)


def tied_entry(name: str, own: tuple[Ingredient, ...]) -> Entry:
    """Entry of a tied name; its mass is filled in from the line it is tied to."""
    found = named(name, own).found
    key = found.key if found.kind == "known" else None
    return Entry(
        1.0, "ratio", None, "ratio", name, key, None, "as much as the eggs weigh", None, "declared",
        "", None, ingredient_role(key) if key else None, found.kind,
    )  # fmt: skip
