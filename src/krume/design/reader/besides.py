"""The same amount said twice: `3 oz (85 g)`, `flour 1 cup (140 g)`, `5 eggs (250 g)`."""

import re

from krume.base import UNITS, Interval, as_text
from krume.design.reader.amounts import Amount
from krume.design.reader.asking import Asking, grams
from krume.design.reader.items import Item
from krume.design.reader.settings import limit

_BESIDE = re.compile(
    r"[(,=/|\t]\s*(?:[^\W\d]+\.?\s+|[~=]\s*){0,3}?"
    r"(?P<amount>(?P<value>\d+(?:[.,]\d+)?)(?:\s*[-–]\s*(?P<high>\d+(?:[.,]\d+)?))?"
    r"\s*(?P<unit>kg|g|gr|grams?|gramm|oz|ounces?)\b\.?)(?P<each>\s*(?:each|jeweils|pro stück))?"
    r"(?!\s*(?:for|für|of|into|in|to|von|zum)\b)",
    re.IGNORECASE,
)


def grams_beside(item: Item, asking: Asking) -> Amount | None:
    """A mass written beside an amount of another kind, or beside the same in another unit."""
    for second in item.seconds:
        if second.grams is not None:
            return second
    text = asking.source
    start = item.amount.end if item.form in ("counted", "of_some") else item.name_start
    match = _BESIDE.search(text, max(start, item.amount.end), item.end)
    if match is None or item.pack is not None:
        return None
    return _amount(match, item)


def _amount(match: re.Match[str], item: Item) -> Amount:
    low = float(match["value"].replace(",", "."))
    value: float | Interval = low
    if match["high"]:
        high = float(match["high"].replace(",", "."))
        value = Interval(low, (low + high) / 2, high) if high > low else low
    if match["each"] and item.amount.best is not None:
        count = item.amount.best
        value = value.times(count) if isinstance(value, Interval) else value * count
    word = match["unit"].casefold()
    unit = UNITS["kg" if word == "kg" else "oz" if word.startswith("o") else "g"]
    return Amount(value, unit, match.start("amount"), match.end("amount"))


def two_amounts(item: Item, asking: Asking) -> Amount | None:
    """The second statement of an amount, asked about where two masses differ too much."""
    second, first = grams_beside(item, asking), item.amount
    if second is None or first.grams is None or second.grams is None:
        return second
    apart = abs(first.grams - second.grams) / max(first.grams, second.grams, 1e-9) * 100
    if apart > limit("amounts-agree"):
        _ask(first, second, apart, asking)
    return second


def _ask(first: Amount, second: Amount, apart: float, asking: Asking) -> None:
    source = asking.source
    texts = [source[a.start : a.end] for a in (first, second)]
    options = [(texts[0], _alone(first, second, source)), (texts[1], _alone(second, first, source))]
    asking.ask(
        "two-amounts",
        f"{texts[0]} is {grams(first.grams or 0.0)}, not {texts[1]}: "
        f"they are {as_text(apart, 1)} % apart. Which is right?",
        *options,
    )


def _alone(kept: Amount, dropped: Amount, source: str) -> str:
    """The line with one of two amounts, standing where the first of them stood."""
    first, later = sorted((kept, dropped), key=lambda amount: amount.start)
    before, after = source[: later.start], source[later.end :]
    if before.rstrip().endswith("(") and after.lstrip().startswith(")"):
        before, after = before.rstrip()[:-1].rstrip(), after.lstrip()[1:]
    elif before.rstrip().endswith(("/", "=", ",")):
        before = before.rstrip()[:-1].rstrip()
    return before[: first.start] + source[kept.start : kept.end] + before[first.end :] + after
