"""One load of the oven as the book keeps it: a row beside its clock."""

from dataclasses import dataclass, fields
from typing import get_type_hints

from krume.base import Interval

LOADS = "loads.csv"


@dataclass(frozen=True, slots=True)
class Load:
    """One load: its clock, and what is known of it. Times are UTC; None is not known.

    `check_min`, `likely_min` and `latest_min` count from the door, `left_*` from `core_at`; those
    of `alone_*` are what it would take as the only tin. `oven` is the oven it stands in as typed,
    empty where it is the formula's own. `why` says what the others take from it.
    """

    client_id: str
    number: int
    formula: str
    tin: str
    in_at: str
    out_at: str | None
    oven_c: float | None = None
    dial_c: float | None = None
    check_min: float | None = None
    likely_min: float | None = None
    latest_min: float | None = None
    core_c: float | None = None
    core_at: str = ""
    left_low_min: float | None = None
    left_best_min: float | None = None
    left_high_min: float | None = None
    said: str = ""
    tins: int = 1
    oven: str = ""
    alone_check_min: float | None = None
    alone_likely_min: float | None = None
    alone_latest_min: float | None = None
    why: str = ""

    @property
    def alone(self) -> Interval | None:
        """Minutes as the only tin in the oven."""
        low, best, high = self.alone_check_min, self.alone_likely_min, self.alone_latest_min
        if low is None or best is None or high is None:
            return None
        return Interval(low, best, high)

    @property
    def is_moved(self) -> bool:
        """Whether the others moved its first check or its latest out."""
        moved = (self.check_min, self.latest_min) != (self.alone_check_min, self.alone_latest_min)
        return moved and self.alone is not None


# Whatever a clock keeps itself is not kept a second time; a column that is new comes last.
_OF_THE_CLOCK = ("number", "in_at", "out_at")
_KEPT = tuple(f.name for f in fields(Load) if f.name not in _OF_THE_CLOCK)
HEAD = tuple("id" if name == "client_id" else name for name in _KEPT)


def cells_of(load: Load) -> tuple[str, ...]:
    """A load as the cells of its row."""
    return tuple(_cell(getattr(load, name)) for name in _KEPT)


def _cell(value: object) -> str:
    if value is None:
        return ""
    return value if isinstance(value, str) else f"{value:g}"


def load_of(cells: dict[str, str]) -> Load:
    """A load from the cells of its row; what is no number there is not known."""
    known = {name: cells.get(column, "") for name, column in zip(_KEPT, HEAD, strict=True)}
    hints = get_type_hints(Load)
    given: dict[str, object] = {
        name: text if hints[name] is str else _number(text) for name, text in known.items()
    }
    given["tins"] = int(_number(known["tins"]) or 1)
    return Load(number=0, in_at="", out_at=None, **given)  # type: ignore[arg-type]


def _number(text: str) -> float | None:
    try:
        return float(text) if text else None
    except ValueError:
        return None
