"""Amounts that stand beside the list in lines which were taken for no ingredient."""

import re
from collections.abc import Iterator

from krume.base import Notice
from krume.design.reader.classifying import Kind
from krume.design.reader.headings import LEFT_OUT

_AMOUNT = re.compile(
    r"(?:\d|[½¼¾⅓⅔⅛])\s*(?:g|kg|ml|dl|cl|oz|lbs?|cups?|tbsp|tsp|el|tl|grams?|gramm|ounces?|"
    r"tablespoons?|teaspoons?)\b",
    re.IGNORECASE,
)


def amounts_unread(kinds: list[Kind]) -> Iterator[Notice]:
    """A note beside an ingredient that holds an amount: nothing is lost without a word.

    A line in brackets is left out on purpose.
    """
    filled = [kind for kind in kinds if kind.kind != "blank"]
    for at, kind in enumerate(filled):
        if kind.kind != "note" or kind.reading is not None or kind.key is not None:
            continue
        beside = filled[max(0, at - 1) : at] + filled[at + 1 : at + 2]
        if any(x.kind == "ingredient" for x in beside) and _holds_amount(kind.source):
            yield Notice(
                "amount-unread",
                "an amount stands here, but the line is taken for a note and counts nowhere. "
                "Is it an ingredient: type its amount and its name alone",
                f"line {kind.number}",
            )


def _holds_amount(source: str) -> bool:
    return _AMOUNT.search(source) is not None and LEFT_OUT.match(source) is None
