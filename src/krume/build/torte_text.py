"""Read a torte plan: `3 layers of F1, 14 mm, trimmed to 19.5 cm`. Never raises on text."""

import re
from dataclasses import replace

from krume.base import Notice, Option, Problem, Read, unit_named
from krume.build.plain import PlainLine, PlainText, plain_text, unread
from krume.build.plan_lines import Component, TortePlan
from krume.build.torte_figures import (
    COUNT,
    LENGTH,
    MOST_WASTE_PCT,
    NUMBER,
    cm_of,
    count_of,
    mm_of,
    number_of,
)
from krume.build.torte_keys import read_key

_EXAMPLE = "3 layers of F1, 14 mm   or   10 mm C1 between the layers"
_ASK_LINE = (
    "This line of the torte was not understood. Type how much of what goes where, such as: "
    "3 layers of F1, 14 mm, trimmed to 19.5 cm · 0.15 g/cm2 S1 on each layer · "
    "10 mm C1 between the layers · 380 g C3 in the shell"
)
_MOST_PIECES = 50
_MOST_DECORATIONS = 1000
_CLAUSES = re.compile(r"\s*[,;]\s+|\s*;\s*")

_PIECE = re.compile(
    rf"^(?:(?P<count>{COUNT})\s+)?(?P<piece>layer|disc|sheet|shell|tier)(?P<many>s?)\s+(?:of\s+)?"
    rf"(?P<what>\S.*?)(?:\s+(?P<height>{NUMBER})\s*(?P<unit>{LENGTH})(?:\s+(?:thick|high|each))?)?$",
    re.IGNORECASE,
)
_AMOUNT = re.compile(
    rf"^(?:(?P<count>{COUNT})\s*(?:x|×|times)\s*)?"
    rf"(?P<number>{NUMBER})\s*(?P<unit>g\s*/\s*cm(?:2|²)|{LENGTH}|kg|g|oz|lb)\s+(?:of\s+)?"
    r"(?P<rest>\S.*)$",
    re.IGNORECASE,
)
_COUNTED = re.compile(rf"^(?P<count>{COUNT})\s+(?:x\s+|×\s+)?(?P<rest>[^\W\d_].*)$", re.I)
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
    rf"^(?:trimmed|cut)\s+to\s+(?P<n>{NUMBER})\s*(?P<nu>{LENGTH})?"
    rf"(?:\s*[x×]\s*(?P<w>{NUMBER})\s*(?P<u>{LENGTH}))?(?:\s+across)?$",
    re.I,
)
_HEIGHT = re.compile(rf"^(?P<n>{NUMBER})\s*(?P<u>{LENGTH})(?:\s+(?:thick|high|each))?$", re.I)
_ROLLED = re.compile(r"^rolled\s+from\s+the\s+(long|short)\s+side$", re.I)
_FREE = re.compile(
    rf"^(?P<n>{NUMBER})\s*(?P<u>{LENGTH})\s+(?:left\s+)?free(?:\s+at\s+the\s+(?:far\s+)?edge)?$",
    re.I,
)
_BAKES = re.compile(rf"^(?:cut\s+)?from\s+(?P<n>{COUNT})\s+(?:bakes?|cakes?)$", re.I)
_WASTE = re.compile(
    rf"^(?P<n>{NUMBER})\s*%\s+(?:(?:is|are)\s+)?(?:waste|lost|left\s+in\s+the\s+bag)$", re.I
)
_OUT = re.compile(
    rf"^rolled\s+out(?:\s+to\s+(?P<n>{NUMBER})\s*(?P<u>{LENGTH})(?:\s+across)?)?$", re.I
)
_FLAGS = {
    "domed": "is_domed",
    "piped": "is_piped",
    "crumb coat": "is_crumb_coat",
    "as a crumb coat": "is_crumb_coat",
}
_FILLED = re.compile(r"^filled\s+(?:out\s+)?to\s+the\s+ring$", re.I)


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
        found = read_key(plan, line)
        if isinstance(found, Problem):
            problems.append(found)
        elif isinstance(found, Notice):
            notices.append(found)
        else:
            plan = found
    return Read(plan, tuple(sorted(problems, key=_line_of)), tuple(notices))


def _line_of(problem: Problem) -> int:
    return int(problem.where.rsplit(" ", 1)[-1])


def _component(line: PlainLine) -> tuple[tuple[Component, ...], tuple[Problem, ...]]:
    first, *clauses = _CLAUSES.split(line.text)
    found = _piece(line, first) or _amount(line, first) or _bare(line, first)
    found = found or _counted(line, first)
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
        "from 2 bakes · filled out to the ring · rolled from the long side · 2 cm left free at "
        "the far edge · domed · piped · crumb coat · rolled out to 42 cm · 8 % waste"
    )
    without = re.sub(r"\s*[,;]\s*" + re.escape(clause), "", line.text, count=1)
    options = (Option("Leave it out", without),)
    return Problem("torte-clause-unread", line.where, line.text, ask, options)


def _plausible(found: Component) -> bool:
    figures = (
        found.height_mm,
        found.mass_g,
        found.g_per_cm2,
        found.trimmed_to_cm,
        found.trimmed_wide_cm,
        found.rolled_out_cm,
    )
    most = _MOST_PIECES if found.mass_g is None else _MOST_DECORATIONS
    counted = found.count is None or 0 < found.count <= most
    counted = counted and (found.bakes is None or 0 < found.bakes <= _MOST_PIECES)
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
        count=count_of(match["count"]) if match["count"] or not match["many"] else None,
        piece="layer" if piece == "disc" else piece,
        is_disc=piece == "disc",
        height_mm=mm_of(match["height"], match["unit"]) if match["height"] else None,
    )


def _amount(line: PlainLine, words: str) -> Component | None:
    match = _AMOUNT.match(words)
    if match is None:
        return None
    what, place = _split_place(match["rest"])
    if not what:
        return None
    found = Component(line.text, line.number, what, count_of(match["count"]), place=place)
    unit = re.sub(r"\s", "", match["unit"].casefold()).replace("²", "2")
    if unit == "g/cm2":
        return replace(found, g_per_cm2=number_of(match["number"]))
    known = unit_named(unit)
    if known is not None and known.kind == "mass" and known.size is not None:
        return replace(found, mass_g=number_of(match["number"]) * known.size)
    return replace(found, height_mm=mm_of(match["number"], unit))


def _bare(line: PlainLine, words: str) -> Component | None:
    what, place = _split_place(words)
    if place is None or not what[:1].isalpha():
        return None
    return Component(line.text, line.number, what, place=place)


def _counted(line: PlainLine, words: str) -> Component | None:
    """Decorations by their count alone: `14 walnut halves on top`; their grams are asked."""
    match = _COUNTED.match(words)
    if match is None:
        return None
    what, place = _split_place(match["rest"])
    if place is None or not what[:1].isalpha():
        return None
    return Component(line.text, line.number, what, count_of(match["count"]), place=place)


def _split_place(words: str) -> tuple[str, str | None]:
    match = _PLACE.search(words)
    if match is None:
        return words.strip(), None
    return words[: match.start()].strip(), _PLACE_OF[" ".join(match[1].casefold().split())]


def _clause(found: Component, clause: str) -> Component | None:
    if (match := _TRIM.match(clause)) and (match["nu"] or match["u"]):
        unit = match["u"] or match["nu"]
        wide = None if match["w"] is None else cm_of(match["w"], unit)
        to = cm_of(match["n"], match["nu"] or unit)
        return replace(found, trimmed_to_cm=to, trimmed_wide_cm=wide)
    if match := _ROLLED.match(clause):
        return replace(found, rolled_from=match[1].casefold())
    if match := _FREE.match(clause):
        return replace(found, free_edge_cm=cm_of(match["n"], match["u"]))
    if _FILLED.match(clause):
        return replace(found, fills_ring=True)
    if match := _BAKES.match(clause):
        return replace(found, bakes=count_of(match["n"])) if found.piece else None
    if match := _WASTE.match(clause):
        lost = number_of(match["n"])
        return replace(found, waste_pct=lost) if 0 <= lost <= MOST_WASTE_PCT else None
    if (match := _OUT.match(clause)) and found.piece is None:
        across = cm_of(match["n"], match["u"]) if match["n"] else None
        return replace(found, is_rolled_out=True, rolled_out_cm=across)
    if (flag := _FLAGS.get(clause.casefold())) and found.piece is None:
        return _flagged(found, flag)
    if found.height_mm is None and (match := _HEIGHT.match(clause)):
        return replace(found, height_mm=mm_of(match["n"], match["u"]))
    what, place = _split_place(clause)
    return replace(found, place=place) if place is not None and not what else None


def _flagged(found: Component, flag: str) -> Component | None:
    """A word that says how it lies: only a top is domed, only a coat is a crumb coat."""
    if flag == "is_domed":
        return replace(found, is_domed=True) if found.place == "on top" else None
    if flag == "is_crumb_coat":
        is_coat = found.place in ("around", "around and on top")
        return replace(found, is_crumb_coat=True) if is_coat else None
    return replace(found, is_piped=True)


def _missing(found: Component) -> tuple[Problem, ...]:
    if found.count is None:
        return (_ask(found, "count-missing", "How many are there?", ("2 ", "3 "), after=False),)
    if found.piece in ("layer", "sheet") and found.height_mm is None:
        heights = (", 10 mm", ", 12 mm", ", 14 mm")
        return (_ask(found, "layer-height-missing", "How thick is it, cold?", heights),)
    if found.piece is not None:
        return ()
    if (found.count or 1) > 1 and found.mass_g is None and found.height_mm is None:
        return (_one_of_them(found),)
    if found.height_mm is None and found.mass_g is None and found.g_per_cm2 is None:
        amounts = ("4 mm ", "10 mm ", "0.15 g/cm2 ")
        return (_ask(found, "amount-missing", "How much of it?", amounts, after=False),)
    if found.place is None:
        places = (" on each layer", " between the layers", " on top", " around and on top")
        return (_ask(found, "place-missing", "Where does it go?", places),)
    return ()


def _one_of_them(found: Component) -> Problem:
    said = f"{found.what} {found.place or ''}".strip()
    options = tuple(
        Option(f"{grams} g each", f"{found.count} x {grams} g {said}") for grams in ("2", "5", "8")
    )
    ask = "How heavy is one of them? Weigh ten and share."
    return Problem("amount-missing", f"line {found.number}", found.read, ask, options)


def _ask(
    found: Component, code: str, ask: str, words: tuple[str, ...], *, after: bool = True
) -> Problem:
    options = tuple(
        Option(word.strip(" ,"), found.read + word if after else word + found.read)
        for word in words
    )
    return Problem(code, f"line {found.number}", found.read, ask, options)
