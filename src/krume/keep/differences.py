"""Where public sources and this program differ: both are shown, each with its papers."""

from dataclasses import dataclass
from functools import cache

from krume.evidence import column, load, optional

DIFFERENCE_COLUMNS = (
    column("key", "key"),
    column("subject"),
    column("of", "one of", "sponge", "custard", "gelatine"),
    column("says"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)


@dataclass(frozen=True, slots=True)
class Saying:
    """What one source says of a subject."""

    says: str
    status: str
    source: str
    note: str


@dataclass(frozen=True, slots=True)
class Difference:
    """A subject on which sources differ; the first saying is what this program goes by."""

    subject: str
    of: str
    sayings: tuple[Saying, ...]


@cache
def differences() -> tuple[Difference, ...]:
    """All subjects, each with at least two sayings.

    >>> [each.of for each in differences()]
    ['sponge', 'custard', 'gelatine']
    """
    found: dict[tuple[str, str], list[Saying]] = {}
    for row in load("differences.csv", DIFFERENCE_COLUMNS):
        said = Saying(*(row.text(name) for name in ("says", "status", "source", "note")))
        found.setdefault((row.text("subject"), row.text("of")), []).append(said)
    return tuple(Difference(*key, tuple(sayings)) for key, sayings in found.items())
