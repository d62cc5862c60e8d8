"""A reading or a finished bake as it is said in one line, taken apart into cells of its table."""

import re

from krume.base import as_text
from krume.evidence import figures
from krume.size import read_tin
from krume.usecases.own_oven.cells import (
    BAKES_HEAD,
    READINGS_HEAD,
    Fault,
    figure_of,
    looks_of,
    to_c,
)

_FIGURE = r"([\d.,]+)"
_DEGREES = rf"{_FIGURE}\s*(°?\s*[cCfF])?"
_PIECES: tuple[tuple[str, str], ...] = (
    ("dial_c", rf"dial(?:\s+at)?\s+({_DEGREES})"),
    ("oven_c", rf"(?:true|oven)(?:\s+at)?\s+({_DEGREES})"),
    ("core_c", rf"core(?:\s+at)?\s+({_DEGREES})"),
    ("not_done_min", rf"not\s+(?:yet\s+)?(?:done|ready)(?:\s+at|\s+after)?\s+({_FIGURE})\s*min\.?"),
    ("after_min", rf"(?:on\s+for|after)\s+({_FIGURE})\s*min\.?"),
    ("density_g_ml", rf"(?:batter\s+|density\s+)?({_FIGURE})\s*g/ml"),
    ("batter_g", rf"({_FIGURE})\s*g(?:\s+(?:of\s+)?batter)?"),
    ("day", r"(\d{4}-\d{2}-\d{2})"),
    ("shelf", r"(low|lower|bottom|middle|centre|high|upper|top)\s+(?:shelf|rack)"),
    ("test", r"(?:by\s+|with\s+)?(probe|thermometer|skewer|toothpick|spring|touch|colou?r)"),
    ("sure", r"(sure)"),
)
_SPAN = re.compile(rf"{_FIGURE}\s*(?:-|–|to)\s*{_FIGURE}\s*min\.?", re.IGNORECASE)
_DONE = re.compile(rf"(?:done\s+(?:at|after)\s+|in\s+)?{_FIGURE}\s*min\.?", re.IGNORECASE)
_BELOW = re.compile(r"(?:^|[^\d\s]\s+)[-−]\s?(?=[\d.])")
_TEMPERATURE = re.compile(rf"{_FIGURE}\s*(?:°\s*[cCfF]?|[cCfF])")
_FAN = {"fan": "yes", "with fan": "yes", "fan on": "yes", "no fan": "no", "still": "no"}
_KNOWN = tuple((name, re.compile(pattern, re.IGNORECASE)) for name, pattern in _PIECES)

READING_EXAMPLE = '"dial 160: 148, 152, 145"'
BAKE_EXAMPLE = '"F1, round 20 cm, 540 g, dial 170, 38 min, core 95"'


def reading_cells(text: str) -> tuple[dict[str, str], tuple[Fault, ...]]:
    """Cells of a reading: what the dial was set to, a colon, what the thermometer showed.

    >>> reading_cells("dial 325 F, fan: 300, 310, 302")[0]["read_c"]
    '148.9; 154.4; 150'
    """
    head, colon, looks = text.partition(":")
    if not colon:
        ask = f"Type the dial, a colon, and what the thermometer showed: {READING_EXAMPLE}."
        return {}, (Fault("read_c", "reading-unread", ask),)
    cells, left, faults = _taken(head.split(","), READINGS_HEAD)
    if left and "dial_c" not in cells and (plain := re.fullmatch(_DEGREES, left[0].strip())):
        cells["dial_c"], left = plain[0], left[1:]
    faults += [_unread(piece) for piece in left]
    unit = "f" if cells.get("dial_c", "").strip().casefold().endswith("f") else "c"
    try:
        found = looks_of(looks.strip(), unit=unit)
    except ValueError:
        ask = f"'{looks.strip()}' are no temperatures. Type them so: {READING_EXAMPLE}."
        return cells, (*faults, Fault("read_c", "reading-unread", ask))
    cells["read_c"] = "; ".join(as_text(t, 1) for t in found)
    return cells, tuple(faults)


def bake_cells(text: str) -> tuple[dict[str, str], tuple[Fault, ...]]:
    """Cells of a finished bake: its formula first, then in any order what is known of it.

    >>> bake_cells("F1, 34-38 min, dial 170, skewer")[0]["not_done_min"]
    '34'
    """
    first, *pieces = text.split(",")
    cells, left, faults = _taken(pieces, BAKES_HEAD)
    cells["formula"] = " ".join(first.split())
    rest: list[str] = []
    for piece in left:
        if fault := _no_tin(piece, text):
            faults.append(fault)
        elif span := _SPAN.fullmatch(piece):
            cells["not_done_min"], cells["done_min"] = span[1], span[2]
        elif done := _DONE.fullmatch(piece):
            cells["done_min"] = done[1]
        else:
            rest.append(piece)
    if rest:
        tin = ", ".join(rest)
        has_digits = any(sign.isdigit() for sign in tin)
        if has_digits or read_tin(tin).value is not None:
            cells["tin"] = tin
        else:
            faults += [_unread(piece) for piece in rest]
    return cells, tuple(faults)


def _taken(
    pieces: list[str], head: tuple[str, ...]
) -> tuple[dict[str, str], list[str], list[Fault]]:
    """Pieces that say what they are, those that do not, and those said twice."""
    cells: dict[str, str] = {}
    left: list[str] = []
    faults: list[Fault] = []
    for raw in pieces:
        piece = " ".join(raw.split())
        name, value = _piece(piece, head)
        if not piece:
            continue
        if not name:
            left.append(piece)
        elif cells.get(name, value) != value:
            ask = f"Both {cells[name]} and {value} are typed. Which one holds?"
            faults.append(Fault(name, "said-twice", ask))
        else:
            cells[name] = value
    return cells, left, faults


def _piece(piece: str, head: tuple[str, ...]) -> tuple[str, str]:
    """The column a piece is of, and its words; no column where it does not say."""
    if piece.casefold() in _FAN:
        return "fan", _FAN[piece.casefold()]
    for name, pattern in _KNOWN:
        match = pattern.fullmatch(piece)
        if match is not None and name in head:
            return name, "yes" if name == "sure" else match[1]
    return "", ""


def _no_tin(piece: str, text: str) -> Fault | None:
    """What is asked of a piece that can be no tin: a figure below nothing, a bare temperature."""
    if _BELOW.search(piece):
        ask = (
            f"'{piece}' is below nothing. Type what it was: 38 min, 540 g, dial 170, core 95; "
            "or leave it out."
        )
        return Fault("note", "below-nothing", ask)
    match = _TEMPERATURE.fullmatch(piece)
    found = None if match is None else figure_of(match[1])
    if found is None:
        return None
    temp_c = to_c(found[0]) if piece.casefold().endswith("f") else found[0]
    is_hot = temp_c > figures("reader.csv")["core-hottest"].value
    words = ("dial", "oven") if is_hot else ("core",)
    said = "Was the dial set to it, or was it the oven's air?" if is_hot else "Was it the core?"
    lines = (text.replace(piece, f"{word} {piece}", 1) for word in words)
    which = f"'{piece}' is a temperature. {said} Type {' or '.join(words)} before it."
    return Fault("note", "which-temperature", which, tuple(lines))


def _unread(piece: str) -> Fault:
    return Fault("note", "piece-unread", f"'{piece}' is not understood here. Leave it out.")
