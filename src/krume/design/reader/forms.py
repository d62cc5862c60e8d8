"""Which form a line takes: its tokens' shape, parsed once by the grammar and then remembered."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache, lru_cache
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from lark import Lark, Tree

from krume.design.reader.tokens import Token
from krume.evidence import packed_text

FORMS = (
    *(
        "packaged",
        "times",
        "sized",
        "added",
        "joined",
        "doubled",
        "measured",
        "vague",
        "pinched",
        "share",
    ),
    *("counted", "named", "of_some", "bare"),
)
_FRONT = tuple(form for form in FORMS if form not in ("vague", "pinched", "named", "of_some"))
_BEHIND = ("vague", "pinched", "share", "named", "of_some", "bare")
_TERMINALS = {
    "N": "N", "A": "A", "M": "MASS", "V": "VOLUME", "K": "K", "L": "LENGTH", "D": "TIME",
    "T": "TEMPERATURE", "%": "PERCENT", "H": "H", "O": "OF", "?": "SOME", "~": "ABOUT",
    "x": "TIMES", "e": "EACH", "(": "LPAR", ")": "RPAR", ",": "COMMA", ";": "COMMA", ":": "COLON",
    "s": "GAP",
    "-": "DASH", "/": "SLASH", "+": "PLUS", "=": "EQUAL", "W": "WORD",
}  # fmt: skip
_WIDEST = 120


@dataclass(frozen=True, slots=True)
class AmountAt:
    """Places in a shape where an amount stands; `high` and `unit` may be missing."""

    low: int
    high: int | None
    unit: int | None
    last: int
    about: bool = False
    how_full: int | None = None


@dataclass(frozen=True, slots=True)
class Form:
    """A line's form: its amounts, the other statements of the first, and where the name stands."""

    kind: str
    amounts: tuple[AmountAt, ...]
    seconds: tuple[AmountAt, ...]
    name: tuple[int, int] | None
    rest: tuple[int, int] | None
    unit_only: int | None = None


@dataclass(frozen=True, slots=True)
class Shape:
    """Kinds of a line's tokens as one word, words run together; `places` lead back to tokens."""

    signs: str
    places: tuple[int, ...]


def shape_of(found: list[Token]) -> Shape:
    """Shape of tokens: gaps between words dropped, runs of words joined."""
    signs: list[str] = []
    places: list[int] = []
    for at in range(len(found)):
        sign = _sign(found, at)
        if not sign or (sign == "W" and signs and signs[-1] == "W"):
            continue
        signs.append(sign)
        places.append(at)
        if len(signs) == _WIDEST:
            break
    return Shape("".join(signs), tuple(places))


def _sign(found: list[Token], at: int) -> str:
    kind, value = found[at].kind, found[at].value
    if kind == "K" and at == 0 and len(found) > 1 and found[1].kind in ",:":
        return "W"
    if kind == "\t":
        is_column = (
            0 < at < len(found) - 1 and found[at - 1].kind in "MVK" and found[at + 1].kind == "N"
        )
        return "s" if is_column else ""
    if kind == "N" and 0 < at < len(found) - 1 and found[at + 1].kind in "%T":
        return "N" if found[at + 1].kind == "%" and at + 2 == len(found) else "W"
    if kind in "%T" and 1 < at < len(found) and found[at - 1].kind == "N":
        return kind if kind == "%" and at + 1 == len(found) else "W"
    if kind == "s" or value == ",,":
        return _gap_sign(found, at)
    if kind == "-":
        between = (
            0 < at < len(found) - 1 and found[at - 1].kind in "NMVK" and found[at + 1].kind == "N"
        )
        return "-" if between or value == "spaced" else "W"
    if kind == "W":
        return _word_sign(found, at, value)
    if kind == "&":
        return "+" if _starts_amount(found, at + 1) else "W"
    if kind == "T" and value is not None and _is_cup(found, at):
        return "V"
    return kind if kind in _TERMINALS else "W"


def _gap_sign(found: list[Token], at: int) -> str:
    """A gap between figure and unit says nothing; a long dash between figures is a range."""
    if not 0 < at < len(found) - 1:
        return found[at].kind
    before, after = found[at - 1].kind, found[at + 1].kind
    if before == "N" and after in "MVK":
        return ""
    return "-" if found[at].value == "—" and before == after == "N" else found[at].kind


def _word_sign(found: list[Token], at: int, value: object) -> str:
    if value in ("to", "bis", "or", "oder") and 0 < at < len(found) - 1:
        if found[at - 1].kind == "N" and found[at + 1].kind == "N":
            return "-"
    elif value in ("plus", "and", "und") and at and _starts_amount(found, at + 1):
        return "+" if found[at - 1].kind in "MVK)" else "W"
    elif value in ("each", "jeweils", "je", "à"):
        return "e"
    return "W"


def _starts_amount(found: list[Token], at: int) -> bool:
    return at < len(found) - 1 and found[at].kind in "NA" and found[at + 1].kind in "MVKNH"


def _is_cup(found: list[Token], at: int) -> bool:
    """Whether `c` behind the first number of a line is a cup: 1 c flour."""
    if at > 3 or at + 1 >= len(found) or found[at + 1].kind not in "WHOK":
        return False
    return getattr(found[at].value, "name", "") == "c" and found[at].end - found[at].start == 1


@lru_cache(maxsize=65536)
def form_of(signs: str) -> Form:
    """Form of a shape: the first of FORMS that the grammar accepts.

    >>> form_of("NMW").kind, form_of("NM(NM)W").kind, form_of("WNW").kind
    ('measured', 'doubled', 'of_some')
    """
    from lark.exceptions import UnexpectedInput

    for kind in _FRONT if signs[:1] in "NA~" else _BEHIND:
        try:
            tree = _grammar().parse(signs, start=kind)
        except UnexpectedInput:
            continue
        return _form(kind, tree)
    return Form("bare", (), (), None, (0, len(signs)))


@cache
def _grammar() -> "Lark":
    from lark import Lark, Token
    from lark.lexer import Lexer

    class Signs(Lexer):
        def __init__(self, conf: Any) -> None:
            pass

        def lex(self, lexer_state: Any, _parser_state: Any = None) -> Iterator[Token]:
            for at, sign in enumerate(str(getattr(lexer_state, "text", lexer_state))):
                yield Token(_TERMINALS[sign], sign, start_pos=at)

    return Lark(
        packed_text("forms.lark"),
        parser="lalr", lexer=Signs, start=list(FORMS), maybe_placeholders=False,
    )  # fmt: skip


def _form(kind: str, tree: "Tree[Any]") -> Form:
    amounts: list[AmountAt] = []
    seconds: list[AmountAt] = []
    spans: dict[str, tuple[int, int]] = {}
    unit_only = None
    children: list[Any] = list(tree.children)
    for child in children:
        data = getattr(child, "data", None)
        if data == "amount":
            amounts.append(_amount(child))
        elif data == "number":
            amounts.append(_number(child, None))
        elif data == "second":
            seconds.extend(_amount(t) for t in child.find_data("amount"))
        elif data == "rest":
            spans[data] = _span(child)
        elif data == "name_sign":
            first = spans.get("name", _span(child))[0]
            spans["name"] = first, _span(child)[1]
        elif child.type == "N":
            amounts.append(AmountAt(child.start_pos, None, None, child.start_pos))
        elif child.type in ("K", "PERCENT", "VOLUME"):
            unit_only = child.start_pos
    seconds.sort(key=lambda a: a.low)
    return Form(
        kind, tuple(amounts), tuple(seconds), spans.get("name"), spans.get("rest"), unit_only
    )


def _signs_of(tree: "Tree[Any]") -> list[Any]:
    return list(tree.scan_values(lambda _: True))


def _span(tree: "Tree[Any]") -> tuple[int, int]:
    signs = _signs_of(tree)
    return signs[0].start_pos, signs[-1].start_pos + 1


def _amount(tree: "Tree[Any]") -> AmountAt:
    signs = _signs_of(tree)
    numbers = [s.start_pos for s in signs if s.type in ("N", "A")]
    units = [s.start_pos for s in signs if s.type in ("MASS", "VOLUME", "K")]
    full = next((s.start_pos for s in signs if s.type == "H"), None)
    high = numbers[1] if len(numbers) > 1 else None
    about = signs[0].type == "ABOUT"
    return AmountAt(numbers[0], high, units[-1], signs[-1].start_pos, about, full)


def _number(tree: "Tree[Any]", unit: int | None) -> AmountAt:
    signs = _signs_of(tree)
    high = signs[2].start_pos if len(signs) == 3 else None
    return AmountAt(signs[0].start_pos, high, unit, signs[-1].start_pos)
