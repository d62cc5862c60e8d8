"""A card as plain data: what a JSON answer holds, and the words paper prints."""

from dataclasses import asdict

from krume.design import BOWLS
from krume.publish.card import BenchCard, CardRow, Imprint
from krume.publish.signs import printable

# Layout: longer names would push the numbers off the card. Page and JSON keep them whole.
_TITLE_SIGNS = 120
_NAME_SIGNS = 160


def card_dict(card: BenchCard) -> dict[str, object]:
    """A bench card as the JSON of an answer: numbers stay numbers."""
    data: dict[str, object] = asdict(card)
    del data["strip"], data["cooling_own"]
    data["rows"] = [
        {key: value for key, value in asdict(row).items() if key not in ("add", "display")}
        for row in card.rows
    ]
    return data


def printed(card: BenchCard) -> dict[str, object]:
    """Words of a card for paper; every sign in them is in the packed fonts."""
    said = {
        "title": _short(card.name, _TITLE_SIGNS),
        "keywords": ["bench card", "weighing order"],
        "facts": [_fact(fact) for fact in card.facts],
        "rows": [_row(row) for row in card.rows],
        "clocks": [_fact(fact) for fact in card.clocks],
        "sum": card.sum_text,
        "weigh-twice": card.weigh_twice,
        "hints": list(card.hints),
        "origin": card.origin,
        "bake": card.bake,
        "strip": printable(card.strip).text,
        "cooling": card.cooling,
        "cooling-own": card.cooling_own,
        "caution": " ".join(card.cautions),
        "hold": None if card.hold is None else asdict(card.hold),
        "notes": list(card.imprint.notes),
        "unbaked": is_unbaked(card.imprint),
        "made-by": made_by(card.imprint),
        "dated": dated(card.imprint),
    }
    clean = _printable(said)
    if not isinstance(clean, dict):
        raise TypeError("a card's words are a table of names")
    return clean


def _short(text: str, most: int) -> str:
    return text if len(text) <= most else f"{text[: most - 1].rstrip()}…"


def made_by(imprint: Imprint) -> str:
    """Versions of the program and its data."""
    return f"krume {imprint.program}, data {imprint.data}"


def dated(imprint: Imprint) -> str:
    """Version of what is printed, and its day."""
    return ", ".join(text for text in (imprint.version, imprint.date) if text)


def is_unbaked(imprint: Imprint) -> bool:
    """Whether the first note says that it has not been baked: it gets the sign for that."""
    return any("not baked" in note for note in imprint.notes[:1])


def _fact(fact: object) -> dict[str, str]:
    return {name: str(getattr(fact, name)) for name in ("label", "figure", "unit", "doubt")}


def _row(row: CardRow) -> dict[str, str]:
    return {
        "kind": row.kind,
        "take": _short(row.take, _NAME_SIGNS),
        "add": row.add,
        "display": row.display,
        "mark": _short(row.mark, _NAME_SIGNS),
        "again": row.again,
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
