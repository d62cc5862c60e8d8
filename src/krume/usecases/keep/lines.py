"""Keeping in one line each, for printed sheets: how long cold, and whether it takes freezing."""

from collections.abc import Mapping

from krume.base import as_text
from krume.design import Formula
from krume.keep import Keeping, assess, hardest_to_freeze, takes_freezing
from krume.usecases.sold.product import SoldRead, families_of

_TAKES = {
    "well": "takes it",
    "some-loss": "takes it with some loss",
    "no": "does not take it",
    "unknown": "is not known to take it",
}


def keep_lines(
    formulas: Mapping[str, Formula], families: Mapping[str, str | None]
) -> tuple[str, ...]:
    """How long the formulas of a torte keep together, and whether it takes freezing."""
    keeping = assess(formulas, families)
    return (_cold(keeping), f"Freezing: {_frozen('it', keeping, families)} (common practice).")


def freezing_line(read: SoldRead) -> str:
    """Whether each thing of an order takes freezing; nothing where nothing is ordered."""
    told = []
    for sold in read.sold:
        kinds = families_of(sold)
        keeping = assess(sold.formulas, kinds)
        told.append(_frozen(sold.name, keeping, kinds))
    return f"Freezing (common practice): {'; '.join(dict.fromkeys(told))}." if told else ""


def _cold(keeping: Keeping) -> str:
    hours = keeping.cold_h
    if hours is None:
        unknown = ", ".join(part.name for part in keeping.components if part.rule is None)
        return f"How long it keeps cold is not known: {unknown}."
    low, high = as_text(hours.low / 24, 1), as_text(hours.high / 24, 1)
    by = ", ".join(r.of for r in keeping.reasons if r.of and r.text.endswith(f"({r.status})."))
    of = f", by {by}" if by else ""
    return f"Keeps {low} to {high} days at 5 °C or below; count on {low}{of} (common practice)."


def _frozen(name: str, keeping: Keeping, families: Mapping[str, str | None]) -> str:
    """The word of the hardest component, and which they are."""
    words = {
        part.name: takes_freezing(families.get(part.name), part.traits).takes
        for part in keeping.components
    }
    hardest = hardest_to_freeze(words.values())
    by = [part for part, word in words.items() if word == hardest]
    of = "" if hardest == "well" else f" ({', '.join(by)})"
    return f"{name} {_TAKES[hardest]}{of}"
