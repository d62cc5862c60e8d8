"""The flours at hand for a blend: which rows of the pantry they are, and what 100 g hold."""

import re
import unicodedata
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace

from krume.base import NotFoundError, Notice, Option, Problem, Read
from krume.design import AtHand
from krume.pantry import Found, Ingredient, find, ingredient
from krume.usecases.asking.answer import Asked
from krume.usecases.sold.papers import Papers

FROM = "--from"
WITHOUT = "--without"
_ROLES = ("flour", "starch", "nut", "binder")
_MARKS = re.compile(r"\s*[,;\n]\s*")
_SAYS_KIND = ("flour", "starch", "meal", "mehl", "stärke", "powder", "ground")
_QUANTITIES = {
    "protein": "protein_g",
    "fat": "fat_g",
    "fibre": "fibre_g",
    "water": "water_g",
    "sugars": "sugars_g",
    "ash": "ash_g",
}
_SHARES = {"starch": "starch", "binder": "binder"}
_WHOLE = 100.0
_UNSEEN = ("Cc", "Cf", "Co", "Cs")


@dataclass(frozen=True, slots=True)
class Flour:
    """A flour at hand: its words, its row of the pantry, and where its composition comes from."""

    name: str
    key: str
    row: Ingredient
    where: str = FROM

    @property
    def at_hand(self) -> AtHand:
        """The flour as the words of a limit look for it."""
        return AtHand(self.name, self.key, self.row.role, self.row.sweet_rice)

    def holds(self, name: str) -> float | None:
        """What 100 g hold of a property [g]; a share counts all of it or nothing."""
        if name in _SHARES:
            return _WHOLE if self.row.role == _SHARES[name] else 0.0
        return self.row.composition.amount(_QUANTITIES[name])


def flours_named(
    text: str, asked: Asked, sheets: Mapping[str, Ingredient]
) -> Read[tuple[Flour, ...]]:
    """Flours of a list by commas; an answer to `--from 2` takes the place of the second."""
    listed = _plain(asked.answer_for(FROM) or text)
    words = [part for part in _MARKS.split(listed.strip()) if part]
    return flours_of([(name, place(at)) for at, name in enumerate(words, 1)], asked, sheets)


def _plain(text: str) -> str:
    """Words without signs that show nothing or turn the writing round; a line end stays one."""
    return "".join(s for s in text if s == "\n" or unicodedata.category(s) not in _UNSEEN)


def place(number: int) -> str:
    """Where a flour of the list stands."""
    return f"{FROM} {number}"


def flours_of(
    named: Iterable[tuple[str, str]], asked: Asked, sheets: Mapping[str, Ingredient]
) -> Read[tuple[Flour, ...]]:
    """Flours of names with their places, each once."""
    flours: dict[str, Flour] = {}
    problems: list[Problem] = []
    notices: list[Notice] = []
    for name, where in named:
        answer = asked.answer_for(where)
        said = name if answer is None else _plain(answer)
        read = _flour(said, where, sheets) if said else Read(None)
        problems += read.problems
        notices += read.notices
        if read.value is not None and read.value.key in flours:
            text = f"{said} is the same as {flours[read.value.key].name}: it is taken once."
            notices.append(Notice("flour-twice", text, where))
        elif read.value is not None:
            flours[read.value.key] = read.value
    return Read(tuple(flours.values()), tuple(problems), tuple(notices))


def _flour(words: str, where: str, sheets: Mapping[str, Ingredient]) -> Read[Flour | None]:
    name, found = _meant(words)
    if found.kind in ("ask", "close", "lookalike"):
        options = tuple(Option(choice.label, choice.words) for choice in found.choices)
        return Read(None, (Problem("flour-which", where, words, found.question, options),))
    if found.key is None:
        return Read(None, (_unknown(words, where),))
    row = _row(found.key, sheets)
    if row.role not in _ROLES:
        ask = f"{words} is no flour, starch, ground nut or binder: leave it out of the blend."
        return Read(None, (Problem("not-a-flour", where, words, ask, (_leave_out(),)),))
    notices = []
    if name != words:
        notices.append(Notice("flour-read-as", f"“{words}” is read as {name}.", where))
    if row.role == "nut":
        text = f"{name} is a nut or a seed: in a balance it stands apart from the flour."
        notices.append(Notice("nut-in-blend", text, where))
    return Read(Flour(name, found.key, row, where), (), tuple(notices))


def _meant(words: str) -> tuple[str, Found]:
    """A bare grain is meant as its flour; what names its kind, or is a key, as it stands."""
    keyed = _of_key(words)
    if keyed is not None:
        return keyed
    found = find(words)
    folded = words.casefold()
    if any(kind in folded for kind in _SAYS_KIND):
        return words, found
    row = ingredient(found.key) if found.kind == "known" and found.key is not None else None
    if row is not None and row.pure_starch:
        return words, found
    milled = find(f"{words} flour")
    is_flour = milled.key is not None and ingredient(milled.key).is_flour
    if milled.kind == "ask" or (milled.kind == "known" and is_flour):
        return f"{words} flour", milled
    return words, found


def _of_key(words: str) -> tuple[str, Found] | None:
    """A key of the pantry, typed back from an answer, with the everyday name of its goods."""
    try:
        row = ingredient(words)
    except NotFoundError:
        return None
    said = row.label_name if find(row.label_name).key == row.key else row.name
    return said, Found("known", words, row.key)


def _row(key: str, sheets: Mapping[str, Ingredient]) -> Ingredient:
    """Row of the pantry with the composition of the supplier's own sheet, where there is one."""
    packed = ingredient(key)
    sheet = sheets.get(key)
    if sheet is None:
        return packed
    return replace(packed, composition=sheet.composition, status=sheet.status, source=sheet.source)


def flour_of_line(name: str, key: str, where: str, sheets: Mapping[str, Ingredient]) -> Flour:
    """A flour that a formula has."""
    return Flour(name, key, _row(key, sheets), where)


def _unknown(words: str, where: str) -> Problem:
    ask = (
        f"'{words}' is unknown to the pantry, so nobody knows what 100 g of it hold, and unknown "
        "is not 0. Type another name for it, or leave it out."
    )
    return Problem("flour-unknown", where, words, ask, (_leave_out(),))


def _leave_out() -> Option:
    return Option("leave it out", "")


def blanks(
    flours: Iterable[Flour], properties: Iterable[str], *, is_match: bool = False
) -> tuple[Problem, ...]:
    """Questions for what is not known of a flour; a blank is never read as nothing."""
    wanted = tuple(properties)
    asked = []
    for flour in flours:
        missing = [name for name in wanted if flour.holds(name) is None]
        if missing:
            asked.append(_blank(flour, missing, wanted, is_match=is_match))
    return tuple(asked)


def _blank(flour: Flour, missing: list[str], wanted: tuple[str, ...], *, is_match: bool) -> Problem:
    told = " and ".join(missing)
    ask = (
        f"What 100 g of {flour.name} hold of {told} is not known ({flour.row.name}), and unknown "
        f"is not 0. {_ways(flour, told, wanted, missing, is_match=is_match)}"
    )
    options = [] if is_match else [Option(f"leave {flour.name} out", flour.name)]
    if len(missing) < len(wanted):
        options.append(Option(f"leave {told} out of the match", " + ".join(missing)))
    return Problem("composition-blank", WITHOUT, flour.name, ask, tuple(options))


def _ways(
    flour: Flour, told: str, wanted: tuple[str, ...], missing: list[str], *, is_match: bool
) -> str:
    ways = [] if is_match else [f"leave {flour.name} out"]
    ways += [f"leave {told} out of the match"] if len(missing) < len(wanted) else []
    ways.append("put its supplier's sheet among the book's suppliers")
    first, *rest = ways
    return f"{first[:1].upper()}{first[1:]}{', or '.join(['', *rest])}."


def composition_sources(flours: Iterable[Flour], papers: Papers) -> tuple[str, ...]:
    """Sources of the compositions; a supplier's own sheet has none of the tables."""
    return tuple(flour.row.source for flour in flours if flour.key not in papers.sheets)
