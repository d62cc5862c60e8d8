"""What every sheet carries of its making."""

from krume import __version__
from krume.evidence import data_version
from krume.publish import Imprint
from krume.store import Studio
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.clock import now


def imprint_of(studio: Studio, asked: Asked, *, is_of_book: bool) -> Imprint:
    """Day, versions, market, and what the studio says on the sheets of its own texts."""
    notes = (studio.sheet_note, studio.invented_note) if is_of_book else ()
    return Imprint(
        date=now(studio, on=asked.on).date().isoformat(),
        program=__version__,
        data=data_version(),
        market=studio.market or "eu",
        notes=tuple(note for note in notes if note),
        units=studio.units or "c",
    )
