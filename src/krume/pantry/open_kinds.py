"""Names that leave the kind open: a balance reads oil as one oil, and a label may not."""

from functools import cache

from krume.evidence import column, load
from krume.pantry.names import spellings

OPEN_COLUMNS = (
    column("key", "key"),
    column("words"),
    column("wanted"),
    column("status", "status"),
    column("source", "source"),
)


@cache
def _wanted() -> dict[str, str]:
    return {
        spelling: row.text("wanted")
        for row in load("open_kinds.csv", OPEN_COLUMNS)
        for name in row.text("words").split(";")
        for spelling in spellings(name)
    }


def kind_wanted(name: str) -> str:
    """What a name of the pantry leaves open of its goods; an empty text where it names them.

    >>> kind_wanted("vegetable oil"), kind_wanted("sunflower oil")
    ('which oil it is', '')
    """
    return next((_wanted()[each] for each in spellings(name) if each in _wanted()), "")
