"""Pieces of a line with several ingredients: `26 g rice / 16 millet`, `1 egg, plus 1 yolk`."""

import re

from krume.design.reader.naming import is_egg, named, part_of, phrase_of
from krume.design.reader.tokens import Token
from krume.pantry import Ingredient

_SEPARATORS = frozenset(";,/+&s\t")
_JOINERS = frozenset(("and", "und", "plus", "sowie", "with", "mit"))
_PART_LEAD = re.compile(
    r"^(?:the |finely |grated |beaten )*(?:yolks?|whites?|juice|rind|zest|peel|eigelb|eiwei(?:ß|"
    r"ss)|saft|schale|abrieb)\b",
    re.IGNORECASE,
)
_NO_NAME = re.compile(r"^(?:for|to|zum|zur|für|extra|more|as|if|about|at)\b", re.IGNORECASE)
_UNIT_KINDS = frozenset("MVK")
_EACH_OF = re.compile(r"\beach(?: of)?\b[\s,:]*|\bje(?:weils)?\b[\s,:]*", re.IGNORECASE)


def pieces(found: list[Token], text: str, own: tuple[Ingredient, ...]) -> list[list[Token]]:
    """Tokens of each ingredient of a line, in order; one list for an ordinary line."""
    if sum(token.kind in "NA" for token in found) < 2:
        return [found]
    out: list[list[Token]] = []
    start = depth = 0
    for at, token in enumerate(found):
        depth += (token.kind == "(") - (token.kind == ")")
        if depth > 0 or at <= start or not _separates(token):
            continue
        if _holds_item(found[start:at], text) and _starts_item(found, at + 1, token, text, own):
            out.append(found[start:at])
            start = at + 1
    out.append(found[start:])
    return out


def _separates(token: Token) -> bool:
    return token.kind in _SEPARATORS or (token.kind == "W" and token.value in _JOINERS)


def _holds_item(found: list[Token], text: str) -> bool:
    """Whether a piece has an amount and a name of its own."""
    numbers = [at for at, token in enumerate(found) if token.kind in "NA"]
    if not numbers:
        return False
    words = [token for token in found if token.kind in "WHO"]
    if not words:
        return False
    return any(t.kind == "W" for t in found) and bool(
        phrase_of(text[words[0].start : found[-1].end]).head
    )


def _starts_item(
    found: list[Token], at: int, separator: Token, text: str, own: tuple[Ingredient, ...]
) -> bool:
    while (at < len(found) and found[at].kind in "\t,") or (
        at < len(found) and found[at].value == "plus"
    ):
        at += 1
    if at >= len(found):
        return False
    end = _end_of_piece(found, at)
    piece = found[at:end]
    if piece[0].kind == "~":
        piece = piece[1:]
    if not piece:
        return False
    if piece[0].kind == "K" and len(piece) > 1:
        return _is_known(text[piece[1].start : piece[-1].end], own, loosely=False)
    if piece[0].kind in "NA":
        return _is_amount_with_name(piece, separator, text, own)
    return _is_name_with_amount(piece, separator, text, own)


def _end_of_piece(found: list[Token], at: int) -> int:
    depth = 0
    for end in range(at, len(found)):
        depth += (found[end].kind == "(") - (found[end].kind == ")")
        if depth <= 0 and end > at and found[end].kind in ";,/+&s\t":
            return end
        if (
            depth <= 0
            and end > at
            and found[end].kind == "W"
            and found[end].value in ("and", "und", "plus")
        ):
            return end
    return len(found)


def _is_amount_with_name(
    piece: list[Token], separator: Token, text: str, own: tuple[Ingredient, ...]
) -> bool:
    at = 1
    if (
        len(piece) > 2
        and piece[1].kind in "-W"
        and piece[2].kind == "N"
        and piece[1].value in ("-", "–", "to", "bis", "spaced")
    ):
        at = 3
    has_unit = (at < len(piece) and piece[at].kind in _UNIT_KINDS) or (
        at + 1 < len(piece) and piece[at].kind == "H" and piece[at + 1].kind in _UNIT_KINDS
    )
    if at < len(piece) and piece[at].kind in "%TDL":
        return False
    start = at + has_unit
    words = [token for token in piece[start:] if token.kind in "WHOK"]
    if not words:
        return False
    name = text[words[0].start : piece[-1].end]
    return _is_known(name, own, loosely=has_unit and separator.kind != ",")


def _is_name_with_amount(
    piece: list[Token], separator: Token, text: str, own: tuple[Ingredient, ...]
) -> bool:
    number = next((at for at, token in enumerate(piece) if token.kind in "NA"), None)
    if number is None:
        return False
    lead = text[piece[0].start : piece[number - 1].end]
    if _PART_LEAD.match(lead):
        return True
    has_unit = number + 1 < len(piece) and piece[number + 1].kind in _UNIT_KINDS
    return separator.kind in ";\t" and has_unit and _is_known(lead, own, loosely=False)


def _is_known(name: str, own: tuple[Ingredient, ...], *, loosely: bool) -> bool:
    head = phrase_of(name).head
    if not head or _NO_NAME.match(head):
        return False
    if is_egg(head, part_of(head, head)):
        return True
    kind = named(name, own).found.kind
    return kind in ("known", "ask", "good") or (
        loosely and kind in ("close", "lookalike", "unknown")
    )


def each_of(name: str) -> tuple[str, ...]:
    """Names of `each cinnamon and clove`, where one amount holds for each of several.

    >>> each_of("each cinnamon and clove"), each_of("cinnamon")
    (('cinnamon', 'clove'), ())
    """
    match = _EACH_OF.match(name.strip())
    if match is None:
        return ()
    names = re.split(r"\s*,\s*(?:and\s+)?|\s+(?:and|und|&)\s+", name.strip()[match.end() :])
    return tuple(n for n in names if n) if len(names) > 1 else ()
