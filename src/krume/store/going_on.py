"""Weighings that still go on at the bench, whatever they are of."""

from krume.store.book import Book
from krume.store.edits import looking
from krume.store.weighings import KeptWeighing

_OPEN = (
    "SELECT key, place, place_revision, started_at, scale_step_g, state FROM weighing "
    "WHERE state = 'open' ORDER BY id DESC"
)


def open_weighings(book: Book) -> tuple[KeptWeighing, ...]:
    """All weighings that go on, the one begun last first."""
    with looking(book) as found:
        rows = () if found is None else found.execute(_OPEN).fetchall()
        return tuple(KeptWeighing(**dict(row)) for row in rows)
