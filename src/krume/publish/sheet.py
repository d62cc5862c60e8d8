"""A card as plain data: what a JSON answer holds, and the words paper prints."""

from dataclasses import asdict

from krume.design import BOWLS
from krume.publish.card import BenchCard, CardRow
from krume.publish.signs import printable


def card_dict(card: BenchCard) -> dict[str, object]:
    """A bench card as the JSON of an answer: numbers stay numbers."""
    data: dict[str, object] = asdict(card)
    data["rows"] = [
        {key: value for key, value in asdict(row).items() if key not in ("add", "display")}
        for row in card.rows
    ]
    return data


def printed(card: BenchCard) -> dict[str, object]:
    """Words of a card for paper; every sign in them is in the packed fonts."""
    said = {
        "title": card.name,
        "keywords": ["bench card", "weighing order"],
        "facts": [_fact(fact) for fact in card.facts],
        "rows": [_row(row) for row in card.rows],
        "clocks": [_fact(fact) for fact in card.clocks],
        "sum": card.sum_text,
        "hints": list(card.hints),
        "origin": card.origin,
        "cooling": card.cooling,
        "caution": " ".join(card.cautions),
        "hold": None if card.hold is None else asdict(card.hold),
        "notes": list(card.imprint.notes),
        "unbaked": any("not baked" in note for note in card.imprint.notes[:1]),
        "made-by": made_by(card),
        "dated": ", ".join(t for t in (card.imprint.version, card.imprint.date) if t),
    }
    clean = _printable(said)
    if not isinstance(clean, dict):
        raise TypeError("a card's words are a table of names")
    return clean


def made_by(card: BenchCard) -> str:
    """Versions of the program and its data."""
    return f"krume {card.imprint.program}, data {card.imprint.data}"


def _fact(fact: object) -> dict[str, str]:
    return {name: str(getattr(fact, name)) for name in ("label", "figure", "unit", "doubt")}


def _row(row: CardRow) -> dict[str, str]:
    return {
        "kind": row.kind,
        "take": row.take,
        "add": row.add,
        "display": row.display,
        "mark": row.mark,
        "number": "" if row.number is None else str(row.number),
        "goes-on": _goes_on(row),
    }


def _goes_on(row: CardRow) -> str:
    where = BOWLS[row.bowl]
    if row.kind == "add":
        return f"{where} goes on: the display shows {row.display}"
    return f"{where} goes on"


def _printable(value: object) -> object:
    if isinstance(value, str):
        return printable(value).text
    if isinstance(value, list):
        return [_printable(item) for item in value]
    if isinstance(value, dict):
        return {key: _printable(item) for key, item in value.items()}
    return value
