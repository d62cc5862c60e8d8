"""One source line as ingredients: what it says, what is asked, remembered by its text."""

import re
from collections.abc import Callable
from dataclasses import replace
from functools import lru_cache
from typing import NamedTuple

from krume.base import Notice, Problem, unit_named
from krume.design.reader.amounts import Amount
from krume.design.reader.asking import Asking
from krume.design.reader.asks import negative
from krume.design.reader.cleaning import clean
from krume.design.reader.entries import entry_of, unit_missing
from krume.design.reader.entry import Entry
from krume.design.reader.items import Item, form_and_shape, item_of, trimmed
from krume.design.reader.naming import is_egg, named, part_of, says_juice, says_zest
from krume.design.reader.pieces import each_of, pieces
from krume.design.reader.settings import Settings
from krume.design.reader.tables import RowAmount, row_amount
from krume.design.reader.tied import tied_entry, tied_names
from krume.design.reader.tokens import Token, tokens
from krume.pantry import egg_size, measure

_NEGATIVE = re.compile(r"(?:^|[:=\t])\s*-\s?(?=\d)")
_NOT_A_NUMBER = re.compile(
    r"^\s*[-+]?(nan|inf|infinity)\s*(?:g|kg|mg|oz|lb|ml|l|cups?|tsp|tbsp|%)\b", re.IGNORECASE
)
_LONGEST_ITEM = 600


class LineReading(NamedTuple):
    """Entries of one line with its questions; `where` is filled in by the text's reader."""

    entries: tuple[Entry, ...]
    forms: tuple[str, ...]
    problems: tuple[Problem, ...]
    notices: tuple[Notice, ...]


NOTHING_READ = LineReading((), (), (), ())


@lru_cache(maxsize=8192)
def tokens_of(source: str) -> tuple[Token, ...]:
    """Tokens of a source line, its bullet, tags and emphasis put aside."""
    cleaned = clean(source[:_LONGEST_ITEM])
    return tuple(trimmed(tokens(cleaned.text, cleaned.start, len(cleaned.text))))


@lru_cache(maxsize=8192)
def read_ingredients(source: str, settings: Settings) -> LineReading:
    """Ingredients of one line, as many as it names; options that settle nothing are left out."""
    found = read_line(source, settings)
    if not found.problems:
        return found
    return found._replace(problems=tuple(_settling(p, found, settings) for p in found.problems))


def _settling(problem: Problem, found: LineReading, settings: Settings) -> Problem:
    return settling(problem, found, lambda line: read_line(line, settings))


def settling(problem: Problem, found: LineReading, reread: Callable[[str], LineReading]) -> Problem:
    """A question with those of its options that settle it when they are typed."""

    def asks(reading: LineReading) -> int:
        return sum(other.code == problem.code for other in reading.problems)

    options = tuple(o for o in problem.options if asks(reread(o.line)) < asks(found))
    return problem if options == problem.options else replace(problem, options=options)


@lru_cache(maxsize=8192)
def read_line(source: str, settings: Settings) -> LineReading:
    """Ingredients of one line as they are read first, its options not yet tried."""
    asking = Asking(source)
    found = list(tokens_of(source))
    if not found or _is_no_number(source, asking):
        return LineReading((), (), tuple(asking.problems), tuple(asking.notices))
    text = clean(source[:_LONGEST_ITEM]).text
    tied = tied_names(text)
    if tied:
        made = tuple(tied_entry(name, settings.own) for name in tied)
        return LineReading(made, ("ratio",) * len(made), (), ())
    row = row_amount(source, settings.table) if settings.table else None
    if row is not None:
        return _of_row(row, settings, asking)
    if match := _NEGATIVE.search(text):
        negative(source, match.start(), asking)
        return LineReading((), ("negative",), tuple(asking.problems), ())
    entries: list[Entry] = []
    forms: list[str] = []
    last: Item | None = None
    found = _without_title(found, text, settings)
    for piece in pieces(found, text, settings.own):
        tidy = trimmed(piece)
        if tidy:
            last = read_piece(tidy, text, last, settings, asking, entries)
            forms.append(last.form)
    if entries and _ANY_FIGURE.search(source, _LONGEST_ITEM):
        _ask_shorter(asking)
    return LineReading(tuple(entries), tuple(forms), tuple(asking.problems), tuple(asking.notices))


_ANY_FIGURE = re.compile(r"\d")


def _ask_shorter(asking: Asking) -> None:
    behind = asking.source[_LONGEST_ITEM - 40 : _LONGEST_ITEM].strip()
    asking.ask(
        "line-too-long",
        f"Only the first {_LONGEST_ITEM} signs of this line are read for ingredients, to "
        f"'…{behind}'; more stand behind. Break it into lines.",
        read=asking.source[:60],
    )


def _of_row(row: RowAmount, settings: Settings, asking: Asking) -> LineReading:
    """The ingredient of a table's row, by the roles its head gives the columns."""
    amount = Amount(row.value, row.unit, row.figure.start, row.figure.end)
    name = row.name
    start, end = min(name.start, row.figure.start), max(name.end, row.figure.end)
    item = Item("named", amount, (), None, "", name.text, start, end, name.start, name.end)
    asking.piece = name.text
    entry = entry_of(item, settings, asking)
    return LineReading((entry,), ("named",), tuple(asking.problems), tuple(asking.notices))


def _without_title(found: list[Token], text: str, settings: Settings) -> list[Token]:
    """Tokens behind `Quick sponge:`, where two or more ingredients follow on the line."""
    at = title_end(found)
    if at is None or len(pieces(found[at:], text, settings.own)) < 2:
        return found
    return found[at:]


def title_end(found: list[Token]) -> int | None:
    """Index behind the colon of a line that begins with words and a colon."""
    colon = next((at for at, token in enumerate(found[:9]) if token.kind == ":"), None)
    if colon is None or colon == 0 or any(token.kind in "NMV" for token in found[:colon]):
        return None
    return colon + 1


def _is_no_number(source: str, asking: Asking) -> bool:
    match = _NOT_A_NUMBER.match(clean(source[:_LONGEST_ITEM]).text)
    if match:
        asking.ask("not-a-number", f"'{match[1]}' is not a number. Type the amount in figures.")
    return match is not None


def read_piece(
    piece: list[Token], text: str, last: Item | None, settings: Settings, asking: Asking,
    entries: list[Entry],
) -> Item:  # fmt: skip
    """Read one piece of a line into entries; its item is returned for those that follow."""
    asking.piece = asking.source[piece[0].start : piece[-1].end]
    item = item_of(piece, text, asking, comma_is_decimal=settings.comma_is_decimal)
    item = _inheriting(_turned(_from_table(item, text, settings)), last, settings)
    _note_spoon_letter(piece, text, asking)
    for each in _items(item):
        entry = entry_of(each, _sized_before(entries, settings), asking)
        unit_missing(each, entry, asking)
        entries.append(entry)
    return item


def _sized_before(entries: list[Entry], settings: Settings) -> Settings:
    """A size named earlier on the line holds for the rest of it."""
    size = next((e.egg_size for e in entries if e.egg_size is not None), None)
    return (
        settings._replace(egg_size=size, region=egg_size(size).region)
        if size is not None
        else settings
    )


_ZEST_AND_JUICE = re.compile(
    r"\b(?:zest|rind|peel|schale|abrieb)\s*(?:and|und|&|\+)\s*(?:the\s+|strained\s+)?(?:juice|saft)\b"
    r"|\b(?:juice|saft)\s*(?:and|und|&|\+)\s*(?:the\s+)?(?:finely\s+)?(?:grated\s+|abgeriebene\s+)?(?:zest|rind|peel|schale|abrieb)\b",
    re.IGNORECASE,
)


_EACH_LAST = re.compile(r"[\s,]*\beach\s*$", re.IGNORECASE)


def _items(item: Item) -> list[Item]:
    """An item, or one for each name that `each` spreads its amount over."""
    if _ZEST_AND_JUICE.search(item.lead):
        return [item._replace(lead=word) for word in ("grated rind", "juice")]
    if item.form == "counted" and _ZEST_AND_JUICE.search(item.name):
        head = item.name.split(",")[0]
        return [item._replace(lead=word, name=head) for word in ("juice", "grated rind")]
    trailing = _EACH_LAST.search(item.name) if item.form == "named" else None
    names = each_of(f"each {item.name[: trailing.start()]}" if trailing else item.name)
    return [item._replace(name=name) for name in names] if names else [item]


def _from_table(item: Item, text: str, settings: Settings) -> Item:
    """A bare figure in a row of a table takes the unit its head names."""
    is_row = settings.table_unit is not None and re.search(r"[\t|;]|,\d", text) is not None
    if not is_row or item.form not in ("counted", "of_some") or settings.table_unit is None:
        return item
    return item._replace(
        form="measured", amount=item.amount._replace(unit=unit_named(settings.table_unit))
    )


def _turned(item: Item) -> Item:
    """`lemon, grated rind of 1` as grated rind of one lemon."""
    match = _FRUIT_FIRST.match(item.name) if item.form == "of_some" and not item.lead else None
    return item if match is None else item._replace(lead=match[2], name=match[1])


_FRUIT_FIRST = re.compile(
    r"^([^\W\d_]+)s?\s*,\s*((?:the |finely |grated )*(?:rind|zest|peel|juice)\b.*?)\s+of\s*$",
    re.IGNORECASE,
)


def _inheriting(item: Item, last: Item | None, settings: Settings) -> Item:
    """A later piece without a unit takes the first one's: `26 g rice / 16 millet`."""
    if last is not None and not item.lead and (says_juice(last.lead) or says_zest(last.lead)):
        if item.form == "counted" and not _IS_EGG.search(item.name):
            return item._replace(lead=last.lead)
        if item.form == "of_some" and _ONLY_PART.match(item.name):
            return item._replace(lead=item.name, name=last.name)
    if item.form not in ("counted", "of_some") or item.amount.unit is None:
        return item
    unit = last.amount.unit if last is not None else None
    if unit is None or unit.kind != "mass":
        return item
    name = named(item.name, settings.own)
    head, key = name.phrase.head, name.found.key
    if is_egg(head, part_of(head, head)) or (key and measure(key, "each") is not None):
        return item
    return item._replace(amount=item.amount._replace(unit=unit))


_IS_EGG = re.compile(r"\b(?:eggs?|eier?n?)\b", re.IGNORECASE)
_ONLY_PART = re.compile(
    r"^\W*(?:the\s+|grated\s+)*(?:juice|rind|zest|peel|saft|schale|abrieb)\s*(?:of|from|von)?\W*$",
    re.IGNORECASE,
)


def _note_spoon_letter(piece: list[Token], text: str, asking: Asking) -> None:
    for token in piece:
        word = text[token.start : token.end]
        if token.kind == "V" and word in ("T", "t"):
            asking.note(
                "spoon-letter", f"{word} is read as a {'tablespoon' if word == 'T' else 'teaspoon'}"
            )
        elif token.kind == "T" and word in ("c", "C"):
            form, shape = form_and_shape(piece)
            if (
                form.amounts
                and form.amounts[0].unit is not None
                and piece[shape.places[form.amounts[0].unit]] is token
            ):
                asking.note("cup-letter", f"{word} is read as a US cup")
