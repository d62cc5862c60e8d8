"""How much of its alcohol a cream, a syrup or a cake keeps: a published table, as a range."""

from dataclasses import dataclass
from functools import cache

from krume.base import Interval, NotFoundError
from krume.design import Formula, family
from krume.evidence import Row, column, load, optional
from krume.keep.traits import is_cooked
from krume.pantry import ingredient

ALCOHOL_COLUMNS = (
    column("key", "key"),
    column("way", "one of", "cold", "boiled", "heated"),
    optional("minutes", "number"),
    column("kept_pct", "number"),
    column("words"),
    column("status", "status"),
    column("source", "source"),
    optional("page"),
)
_SPIRIT = "spirit"


@dataclass(frozen=True, slots=True)
class AlcoholKept:
    """Alcohol that went in and what is kept of it, each [g] and None where a row has no figure."""

    in_g: float | None
    kept_pct: Interval
    kept_g: Interval | None
    words: str
    status: str
    source: str


@cache
def _rows() -> tuple[Row, ...]:
    return load("keep_alcohol.csv", ALCOHOL_COLUMNS)


def alcohol_kept(formula: Formula, kind: str | None) -> AlcoholKept | None:
    """Alcohol a formula keeps; None where no spirit is in it.

    Heated: the table's two rows round the minutes of the oven; a cream that is boiled may have it
    put in before or after, so its range is wide. Not heated: from a night in the fridge to all.
    """
    grams = _alcohol_g(formula)
    if not grams:
        return None
    low, high, words = _kept(formula, kind)
    source = _rows()[0]
    span = Interval(low, (low + high) / 2, high)
    known = [each for each in grams if each is not None]
    total = sum(known) if len(known) == len(grams) else None
    kept = None if total is None else span.times(total / 100)
    return AlcoholKept(total, span, kept, words, source.text("status"), source.text("source"))


def _alcohol_g(formula: Formula) -> list[float | None]:
    """Grams of alcohol of every spirit; None where its row or its grams are not known."""
    found: list[float | None] = []
    for line in formula.lines:
        try:
            goods = None if line.ingredient is None else ingredient(line.ingredient)
        except NotFoundError:
            continue
        if goods is None or goods.role != _SPIRIT:
            continue
        share = goods.composition.alcohol_g
        known = share is not None and line.mass_g is not None
        found.append((share or 0.0) * (line.mass_g or 0.0) / 100 if known else None)
    return found


def _kept(formula: Formula, kind: str | None) -> tuple[float, float, str]:
    pct = {row.text("key"): row.number_of("kept_pct") for row in _rows()}
    if kind is not None and family(kind).kind == "batter":
        return _baked(None if formula.bake_min is None else formula.bake_min)
    if is_cooked(formula):
        words = "heated; whether it went in before the heat or after is not known"
        return pct["stirred-15"], pct["now"], words
    return pct["overnight"], pct["now"], "not heated"


def _baked(minutes: Interval | None) -> tuple[float, float, str]:
    """Kept in the oven, by the rows round its minutes; not known is as for the shortest."""
    stirred = [row for row in _rows() if row.text("way") == "heated"]
    boiling = next(row for row in _rows() if row.text("way") == "boiled")
    ladder = [(row.number_of("minutes"), row.number_of("kept_pct")) for row in (boiling, *stirred)]
    if minutes is None:
        return ladder[1][1], ladder[0][1], "baked; for how long is not said"
    low = next((pct for at, pct in ladder if at >= minutes.high), ladder[-1][1])
    high = [pct for at, pct in ladder if at <= minutes.low][-1]
    return low, high, f"stirred in and baked {minutes.low:g} to {minutes.high:g} minutes"
