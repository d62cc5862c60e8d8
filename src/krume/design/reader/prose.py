"""Ingredients in running text, where there is no list: `beat 6 yolks with 150 g sugar`."""

import re
from functools import lru_cache

from krume.design.reader.asking import Asking
from krume.design.reader.classifying import Kind
from krume.design.reader.cleaning import clean
from krume.design.reader.entry import Entry
from krume.design.reader.linereading import LineReading, read_piece, settling
from krume.design.reader.settings import Settings
from krume.design.reader.tokens import Token, tokens

_SENTENCE = re.compile(r"(?:[^.;:!?]|\.(?=\S))+")
_STOPS = frozenset(
    "and und or oder with mit into in to until over for from at then stir beat fold add mix bake "
    "whisk cook put melt on by while as each zu bis auf dazu geben rühren schlagen".split()
)


def with_prose(kinds: list[Kind], settings: Settings) -> list[Kind]:
    """Lines of a text without a list of ingredients, with those its sentences name."""
    if any(kind.kind == "ingredient" for kind in kinds):
        return kinds
    return [_with_reading(kind, settings) for kind in kinds]


def _with_reading(kind: Kind, settings: Settings) -> Kind:
    if kind.kind not in ("step", "note", "name"):
        return kind
    reading = prose_ingredients(kind.source, settings)
    if not reading.entries:
        return kind
    return kind._replace(reading=reading, kind="step" if kind.kind == "note" else kind.kind)


@lru_cache(maxsize=4096)
def prose_ingredients(source: str, settings: Settings) -> LineReading:
    """Ingredients that the sentences of one line name with their amounts."""
    found = _read_prose(source, settings)
    tried = (
        settling(problem, found, lambda line: _read_prose(line, settings))
        for problem in found.problems
    )
    return found._replace(problems=tuple(tried))


@lru_cache(maxsize=4096)
def _read_prose(source: str, settings: Settings) -> LineReading:
    asking = Asking(source)
    text = clean(source).text
    entries: list[Entry] = []
    for sentence in _SENTENCE.finditer(text):
        found = tokens(text, *sentence.span())
        for piece in _pieces(found):
            entries.extend(_known(piece, text, settings, asking))
    forms = ("prose",) * len(entries)
    return LineReading(tuple(entries), forms, tuple(asking.problems), tuple(asking.notices))


def _known(piece: list[Token], text: str, settings: Settings, asking: Asking) -> list[Entry]:
    """Entries of a piece that names something the pantry knows."""
    trial = Asking(asking.source)
    entries: list[Entry] = []
    read_piece(piece, text, None, settings, trial, entries)
    if not entries or any(e.kind not in ("known", "good", "ask") or not e.name for e in entries):
        return []
    asking.problems.extend(trial.problems)
    asking.notices.extend(trial.notices)
    return entries


def _pieces(found: list[Token]) -> list[list[Token]]:
    out, at = [], 0
    while at < len(found):
        if found[at].kind not in "NA" or at + 1 >= len(found):
            at += 1
            continue
        end = _end(found, at)
        if found[at + 1].kind in "MVKHW(-" and any(token.kind == "W" for token in found[at:end]):
            out.append(found[at:end])
        at = max(end, at + 1)
    return out


def _end(found: list[Token], at: int) -> int:
    for end in range(at + 1, len(found)):
        token = found[end]
        if token.kind == "," and _says_size(found, end + 1):
            continue
        if token.kind in ",;()&+/s\tDTL" or (token.kind == "W" and token.value in _STOPS):
            return end
        if token.kind in "NA" and found[end - 1].kind not in "-O,":
            return end
    return len(found)


def _says_size(found: list[Token], at: int) -> bool:
    """Whether what follows a comma still speaks of the eggs before it: `3 eggs, EU M`."""
    if at >= len(found):
        return False
    if found[at].kind == "N":
        return (
            at + 2 < len(found) and found[at + 1].kind == "M" and found[at + 2].value == "shelled"
        )
    return found[at].value in _SIZES


_SIZES = frozenset("eu us uk medium large small size separated shelled".split())
