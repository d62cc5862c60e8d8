"""Whether something spoils in the warm: by measured figures, else by a published chart."""

from dataclasses import dataclass
from functools import cache

from krume.evidence import Row, column, load, optional

OFF_COLUMNS = (
    column("key", "key"),
    column("families"),
    column("verdict", "one of", "keep", "discard"),
    column("words"),
    column("status", "status"),
    column("source", "source"),
    optional("page"),
)
_NEED_NOT = "non-tcs"
_BASIS = {
    "tcs": "its acidity or water activity is not measured, so it is treated as needing the cold",
    "assess": "by acidity and water activity it is kept cold until a study says otherwise",
}


@dataclass(frozen=True, slots=True)
class Spoiling:
    """Whether a component needs the cold when a fridge fails, why, and where that is from."""

    needs_cold: bool
    why: str
    status: str
    source: str


@cache
def _chart() -> tuple[Row, ...]:
    return load("keep_off.csv", OFF_COLUMNS)


def spoiling(family: str | None, verdict: str, traits: frozenset[str] = frozenset()) -> Spoiling:
    """Judge a component by its family, its need of cold, and what is in it.

    `verdict` is that of `needs_cold`. A plain baked cake is kept by the chart, though not measured;
    all else that is not measured needs the cold.

    >>> spoiling("separated", "tcs").needs_cold, spoiling("set-cream", "tcs").needs_cold
    (False, True)
    """
    if verdict == _NEED_NOT:
        why = "by its measured acidity and water activity alone it need not be kept cold"
        return Spoiling(False, why, "law", "fda-food-code-2022")  # noqa: FBT003
    row = next((r for r in _chart() if family in r.text("families").split(";")), None)
    if row is None:
        return Spoiling(True, _BASIS[verdict], "law", "fda-food-code-2022")  # noqa: FBT003
    is_kept = row.text("verdict") == "keep" and not traits & {"fresh-fruit", "whipped-cream"}
    why = f"advice after a power cut keeps {row.text('words')}"
    if not is_kept:
        why = f"{_BASIS[verdict]}; advice after a power cut names {row.text('words')} as spoiling"
    return Spoiling(not is_kept, why, row.text("status"), row.text("source"))
