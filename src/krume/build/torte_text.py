"""Read a torte plan: `3 layers of F1, 14 mm, trimmed to 19.5 cm`. Never raises on text."""

import re
from dataclasses import replace

from krume.base import Notice, Option, Problem, Read, read_number, unit_named
from krume.build.plain import PlainLine, PlainText, plain_text, unread
from krume.build.plan_lines import Component, RingLine, TortePlan

_EXAMPLE = "3 layers of F1, 14 mm   or   10 mm C1 between the layers"
_ASK_LINE = (
    "This line of the torte was not understood. Type how much of what goes where, such as: "
    "3 layers of F1, 14 mm, trimmed to 19.5 cm · 0.15 g/cm2 S1 on each layer · "
    "10 mm C1 between the layers · 380 g C3 in the shell"
)
_NUMBER_WORDS = {
    "a": 1, "an": 1, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6,
    "seven": 7, "eight": 8,
}  # fmt: skip
_MOST_PIECES = 50
_NUM = r"\d+(?:[.,]\d+)?|[.,]\d+|\d*\s?[½¼¾]"
_COUNT = rf"\d+|{'|'.join(_NUMBER_WORDS)}"
_LENGTH = r"mm|cm|in|inch|inches"
_CLAUSES = re.compile(r"\s*[,;]\s+|\s*;\s*")

_PIECE = re.compile(
    rf"^(?:(?P<count>{_COUNT})\s+)?(?P<piece>layer|disc|sheet|shell)(?P<many>s?)\s+(?:of\s+)?"
    rf"(?P<what>\S.*?)(?:\s+(?P<height>{_NUM})\s*(?P<unit>{_LENGTH})(?:\s+(?:thick|high|each))?)?$",
    re.IGNORECASE,
)
_AMOUNT = re.compile(
    rf"^(?:(?P<count>{_COUNT})\s*(?:x|×|times)\s*)?"
    rf"(?P<number>{_NUM})\s*(?P<unit>g\s*/\s*cm(?:2|²)|{_LENGTH}|kg|g|oz|lb)\s+(?:of\s+)?"
    r"(?P<rest>\S.*)$",
    re.IGNORECASE,
)
_PLACE_WORDS = (
    ("around and on top", "around and on top"),
    ("on top and around", "around and on top"),
    ("all around and on top", "around and on top"),
    ("on each layer", "on each layer"),
    ("on every layer", "on each layer"),
    ("between the layers", "between the layers"),
    ("between layers", "between the layers"),
    ("on the layer", "on the layer"),
    ("on the sheet", "on the sheet"),
    ("in the shell", "in the shell"),
    ("into the shell", "in the shell"),
    ("on top", "on top"),
    ("all around", "around"),
    ("around", "around"),
)
_PLACE = re.compile(
    r"(?:^|\s+)(?:one\s+)?(" + "|".join(re.escape(said) for said, _ in _PLACE_WORDS) + r")$",
    re.IGNORECASE,
)
_PLACE_OF = dict(_PLACE_WORDS)

_TRIM = re.compile(
    rf"^(?:trimmed|cut)\s+to\s+(?P<n>{_NUM})\s*(?P<u>{_LENGTH})(?:\s+across)?$", re.I
)
_HEIGHT = re.compile(rf"^(?P<n>{_NUM})\s*(?P<u>{_LENGTH})(?:\s+(?:thick|high|each))?$", re.I)
_ROLLED = re.compile(r"^rolled\s+from\s+the\s+(long|short)\s+side$", re.I)
_FREE = re.compile(
    rf"^(?P<n>{_NUM})\s*(?P<u>{_LENGTH})\s+(?:left\s+)?free(?:\s+at\s+the\s+(?:far\s+)?edge)?$",
    re.I,
)
_FILLED = re.compile(r"^filled\s+(?:out\s+)?to\s+the\s+ring$", re.I)
_RING = re.compile(
    rf"^(?P<d>{_NUM})\s*(?P<du>{_LENGTH})?(?:\s*[x×]\s*(?P<h>{_NUM})\s*(?P<hu>{_LENGTH})?)?"
    r"(?:\s+high)?$",
    re.I,
)
_SLICES = re.compile(
    r"^\d+(?:\s*(?:,|or|to|-|–|/)+\s*(?:or\s+)?\d+)*(?:\s+(?:slices|pieces))?$", re.I
)
_MOST_SLICES = 400


def read_torte(text: str) -> Read[TortePlan]:
    r"""Read a torte plan as a person types it; all questions at once, every line kept.

    >>> plan = read_torte("Roll\n\n1 sheet of F3, 12 mm\n7 mm C2 on the sheet").value
    >>> [(c.what, c.height_mm, c.place) for c in plan.components]
    [('F3', 12.0, None), ('C2', 7.0, 'on the sheet')]
    """
    plain = plain_text(text, what="component of a torte", example=_EXAMPLE)
    problems = list(plain.problems)
    components: list[Component] = []
    for line in plain.body_lines():
        found, asked = _component(line)
        components.extend(found)
        problems.extend(asked)
    plan = TortePlan(plain.name, tuple(components), source_lines=plain.lines, keys=_keys_of(plain))
    return _with_keys(plan, plain, problems)


def _keys_of(plain: PlainText) -> dict[str, str]:
    return {line.key: line.value for line in plain.key_lines()}


def _with_keys(plan: TortePlan, plain: PlainText, problems: list[Problem]) -> Read[TortePlan]:
    notices: list[Notice] = []
    for line in plain.key_lines():
        found = _key(plan, line)
        if isinstance(found, Problem):
            problems.append(found)
        elif isinstance(found, Notice):
            notices.append(found)
        else:
            plan = found
    return Read(plan, tuple(sorted(problems, key=_line_of)), tuple(notices))


def _line_of(problem: Problem) -> int:
    return int(problem.where.rsplit(" ", 1)[-1])


def _key(plan: TortePlan, line: PlainLine) -> TortePlan | Problem | Notice:
    if line.key == "ring":
        return _ring(plan, line)
    if line.key == "slices":
        return _slices(plan, line)
    if line.key == "keep":
        return replace(plan, keep=line.value or None)
    if line.key in ("note", "notes"):
        return replace(plan, notes=(*plan.notes, line.value))
    return Notice("key-kept", f"“{line.text}” is kept; nothing is worked out from it.", line.where)


def _ring(plan: TortePlan, line: PlainLine) -> TortePlan | Problem:
    match = _RING.match(line.value)
    unit = (match["hu"] or match["du"]) if match else None
    if match is None or unit is None:
        ask = "Which ring is it? Type diameter and height inside, such as: Ring: 22 x 6 cm"
        return Problem("ring-unread", line.where, line.text, ask)
    height = _cm(match["h"], unit) if match["h"] else None
    diameter = _cm(match["d"], match["du"] or unit)
    return replace(plan, ring=RingLine(line.text, diameter, height))


def _slices(plan: TortePlan, line: PlainLine) -> TortePlan | Problem:
    counts = [int(digits) for digits in re.findall(r"\d{1,6}", line.value)]
    if not _SLICES.match(line.value) or not all(1 <= n <= _MOST_SLICES for n in counts):
        ask = "How many slices? Type whole numbers, such as: Slices: 12, or 14"
        return Problem("slices-unread", line.where, line.text, ask)
    return replace(plan, slices=tuple(dict.fromkeys(counts)))


def _component(line: PlainLine) -> tuple[tuple[Component, ...], tuple[Problem, ...]]:
    first, *clauses = _CLAUSES.split(line.text)
    found = _piece(line, first) or _amount(line, first) or _bare(line, first)
    if found is None:
        return (), (unread(line, code="torte-line-unread", ask=_ASK_LINE),)
    problems: list[Problem] = []
    for clause in clauses:
        more = _clause(found, clause.strip())
        if more is None:
            problems.append(_odd_clause(line, clause))
        else:
            found = more
    if not _plausible(found):
        return (), (unread(line, code="torte-line-unread", ask=_ASK_LINE),)
    return (found,), (*problems, *_missing(found))


def _odd_clause(line: PlainLine, clause: str) -> Problem:
    ask = (
        f"“{clause.strip()}” was not understood. Type such as: trimmed to 19.5 cm · "
        "filled out to the ring · rolled from the long side · 2 cm left free at the far edge"
    )
    without = re.sub(r"\s*[,;]\s*" + re.escape(clause), "", line.text, count=1)
    options = (Option("Leave it out", without),)
    return Problem("torte-clause-unread", line.where, line.text, ask, options)


def _plausible(found: Component) -> bool:
    figures = (found.height_mm, found.mass_g, found.g_per_cm2, found.trimmed_to_cm)
    counted = found.count is None or 0 < found.count <= _MOST_PIECES
    return counted and all(value is None or value > 0 for value in figures)


def _piece(line: PlainLine, words: str) -> Component | None:
    match = _PIECE.match(words)
    if match is None:
        return None
    piece = match["piece"].casefold()
    return Component(
        read=line.text,
        number=line.number,
        what=match["what"],
        count=_count(match["count"]) if match["count"] or not match["many"] else None,
        piece="layer" if piece == "disc" else piece,
        height_mm=_mm(match["height"], match["unit"]) if match["height"] else None,
    )


def _amount(line: PlainLine, words: str) -> Component | None:
    match = _AMOUNT.match(words)
    if match is None:
        return None
    what, place = _split_place(match["rest"])
    if not what:
        return None
    found = Component(line.text, line.number, what, _count(match["count"]), place=place)
    unit = re.sub(r"\s", "", match["unit"].casefold()).replace("²", "2")
    if unit == "g/cm2":
        return replace(found, g_per_cm2=_number(match["number"]))
    known = unit_named(unit)
    if known is not None and known.kind == "mass" and known.size is not None:
        return replace(found, mass_g=_number(match["number"]) * known.size)
    return replace(found, height_mm=_mm(match["number"], unit))


def _bare(line: PlainLine, words: str) -> Component | None:
    what, place = _split_place(words)
    if place is None or not what[:1].isalpha():
        return None
    return Component(line.text, line.number, what, place=place)


def _split_place(words: str) -> tuple[str, str | None]:
    match = _PLACE.search(words)
    if match is None:
        return words.strip(), None
    return words[: match.start()].strip(), _PLACE_OF[" ".join(match[1].casefold().split())]


def _clause(found: Component, clause: str) -> Component | None:
    if match := _TRIM.match(clause):
        return replace(found, trimmed_to_cm=_cm(match["n"], match["u"]))
    if match := _ROLLED.match(clause):
        return replace(found, rolled_from=match[1].casefold())
    if match := _FREE.match(clause):
        return replace(found, free_edge_cm=_cm(match["n"], match["u"]))
    if _FILLED.match(clause):
        return replace(found, fills_ring=True)
    if found.height_mm is None and (match := _HEIGHT.match(clause)):
        return replace(found, height_mm=_mm(match["n"], match["u"]))
    what, place = _split_place(clause)
    return replace(found, place=place) if place is not None and not what else None


def _missing(found: Component) -> tuple[Problem, ...]:
    if found.count is None:
        return (_ask(found, "count-missing", "How many are there?", ("2 ", "3 "), after=False),)
    if found.piece in ("layer", "sheet") and found.height_mm is None:
        heights = (", 10 mm", ", 12 mm", ", 14 mm")
        return (_ask(found, "layer-height-missing", "How thick is it, cold?", heights),)
    if found.piece is not None:
        return ()
    if found.height_mm is None and found.mass_g is None and found.g_per_cm2 is None:
        amounts = ("4 mm ", "10 mm ", "0.15 g/cm2 ")
        return (_ask(found, "amount-missing", "How much of it?", amounts, after=False),)
    if found.place is None:
        places = (" on each layer", " between the layers", " on top", " around and on top")
        return (_ask(found, "place-missing", "Where does it go?", places),)
    return ()


def _ask(
    found: Component, code: str, ask: str, words: tuple[str, ...], *, after: bool = True
) -> Problem:
    options = tuple(
        Option(word.strip(" ,"), found.read + word if after else word + found.read)
        for word in words
    )
    return Problem(code, f"line {found.number}", found.read, ask, options)


def _count(words: str | None) -> int:
    if not words:
        return 1
    said = words.casefold()
    return _NUMBER_WORDS[said] if said in _NUMBER_WORDS else int(said[:6])


def _number(digits: str) -> float:
    found = read_number(digits, comma_is_decimal=True)
    return -1.0 if found is None else found.value


def _cm(digits: str, unit: str) -> float:
    return _number(digits) * _size_cm(unit)


def _mm(digits: str, unit: str) -> float:
    return _number(digits) * (_size_cm(unit) * 10)


def _size_cm(unit: str) -> float:
    known = unit_named(unit)
    return known.size if known is not None and known.size is not None else 1.0
