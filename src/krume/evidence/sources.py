"""Where numbers come from: the list of sources, each with its licence and its attribution."""

from dataclasses import dataclass
from functools import cache

from krume.base import Figure, NotFoundError
from krume.evidence.columns import column, optional
from krume.evidence.tables import load, source_rows

_FIGURE_COLUMNS = (
    column("key", "key"),
    column("quantity"),
    column("value", "printed"),
    column("unit", "unit"),
    optional("basis"),
    optional("half_width", "number"),
    column("status", "status"),
    column("source", "source"),
    optional("page"),
)


@dataclass(frozen=True, slots=True)
class Source:
    """A place where numbers come from; `attribution` is what must be printed with them."""

    key: str
    title: str
    publisher: str
    year: str
    licence: str
    attribution: str
    url: str
    note: str


@cache
def _by_key() -> dict[str, Source]:
    names = ("key", "title", "publisher", "year", "licence", "attribution", "url", "note")
    return {r.text("key"): Source(*(r.text(n) for n in names)) for r in source_rows()}


def sources() -> tuple[Source, ...]:
    """All sources, in the order of the table."""
    return tuple(_by_key().values())


def source(key: str) -> Source:
    """Source of a key; NotFoundError when the table has none."""
    found = _by_key().get(key)
    if found is None:
        message = f"no source is called '{key}'. The keys stand in sources.csv."
        raise NotFoundError(message, field="source", got=key, want="a key of sources.csv")
    return found


@cache
def figures(file: str) -> dict[str, Figure]:
    """Figures of a packed table with the columns key, quantity, value … source, page."""
    return {
        row.text("key"): Figure(
            value=row.number_of("value"),
            unit=row.text("unit"),
            basis=row.text("basis"),
            status=row.text("status"),
            source=row.text("source"),
            half_width=row.maybe("half_width"),
        )
        for row in load(file, _FIGURE_COLUMNS)
    }
