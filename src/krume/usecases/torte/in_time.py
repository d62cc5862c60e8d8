"""A torte with what becomes of it: how it stands, and what water moves in it."""

from dataclasses import dataclass, replace

from krume.store import book_at
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.asking.remembering import Remembered
from krume.usecases.asking.sources import source_keys
from krume.usecases.torte.build import TorteMade, build_torte, torte_of
from krume.usecases.torte.moisture_result import MoistureResult
from krume.usecases.torte.result import BuildResult
from krume.usecases.torte.standing import standing_of
from krume.usecases.torte.standing_result import StandingResult

_MOISTURE = (
    *("rice-starch-2014", "norrish-1966", "guillard-2003", "katz-labuza-1981"),
    "biquet-labuza-1988",
)
_WATER: Remembered[MoistureResult | None] = Remembered(64)


@dataclass(frozen=True, slots=True)
class TorteInTime:
    """What becomes of a torte; `moisture` is None where it was not asked for."""

    standing: StandingResult | None
    moisture: MoistureResult | None


def build_in_time(
    name: str, asked: Asked, *, stands: bool = True, moves: bool = False
) -> Answer[BuildResult]:
    """Build a torte, with how it stands and, where it is asked for, what water moves in it."""
    answer = build_torte(name, asked)
    made = torte_of(name, asked)
    held = standing_of(made) if stands else None
    moved = _moved(made) if moves else None
    cited = [each.source for each in held.parts] if held is not None else []
    return replace(
        answer,
        result=replace(answer.result, standing=held, moisture=moved),
        sources=source_keys(answer.sources, cited, _MOISTURE if moved is not None else ()),
    )


def torte_in_time(name: str, asked: Asked, *, moves: bool = False) -> TorteInTime:
    """What becomes of a torte for its page: how it stands, and what water moves where asked."""
    made = torte_of(name, asked)
    book = book_at(asked.book)
    moved = _WATER.of(book, (name, asked), lambda: _moved(torte_of(name, asked))) if moves else None
    return TorteInTime(standing_of(made), moved)


def in_time_lines(made: TorteMade) -> tuple[str, ...]:
    """What becomes of a torte in a few sentences, for paper."""
    held, moved = standing_of(made), _moved(made)
    stands = () if held is None or not held.parts else held.lines
    if moved is None or moved.why_not is not None:
        return stands
    follows = moved.lines[1 + len(moved.parts) :]
    return (*stands, *follows, moved.caution)


def _moved(made: TorteMade) -> MoistureResult | None:
    from krume.usecases.torte.moisture import moisture_of  # numpy and scipy

    return moisture_of(made)
