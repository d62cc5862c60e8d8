"""Lots in the house with their papers, read strictly; nothing typed is lost."""

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from datetime import date

from krume.base import Problem, Read
from krume.pantry.evidence_kinds import EvidenceKind, evidence_kind, evidence_kinds, kind_key
from krume.pantry.gluten_methods import gluten_methods, method_of
from krume.pantry.gluten_results import GlutenResult, gluten_result
from krume.pantry.typed_rows import plain_word, row_is_cut, split_outside, typed_day, typed_rows

_COMMA = re.compile("[;,]")
LOT_HEAD = ("lot", "ingredient", "evidence", "text", "result_mg_kg", "from", "valid_to")
LOT_MORE = ("method", "limit_mg_kg", "ingredients")
"""Columns that a table of lots may have beside those of its head."""


@dataclass(frozen=True, slots=True)
class LotRecord:
    """One paper about a lot; None is not said. `evidence` is a key of the kinds, or empty.

    `notes` are its own words, `method` how it was measured, in the words of the paper. `is_unread`
    is True where its row cannot be read, so that it may say anything.
    """

    evidence: str
    result: GlutenResult | None = None
    valid_from: date | None = None
    valid_to: date | None = None
    notes: str = ""
    ingredients: tuple[str, ...] | None = None
    method: str = ""
    line: int = 0
    is_unread: bool = False

    @property
    def kind(self) -> EvidenceKind:
        """What kind of paper it is."""
        return evidence_kind(self.evidence)


@dataclass(frozen=True, slots=True)
class Lot:
    """One bag with one supplier mark and its papers; None is not said.

    Its own fields are those of the first paper; `more` are the others. `ingredients` are the
    parts the bag lists, None where it does not.
    """

    key: str
    ingredient: str
    evidence: str
    result: GlutenResult | None = None
    valid_from: date | None = None
    valid_to: date | None = None
    notes: str = ""
    ingredients: tuple[str, ...] | None = None
    line: int = 0
    method: str = ""
    more: tuple[LotRecord, ...] = ()
    is_unread: bool = False

    @property
    def records(self) -> tuple[LotRecord, ...]:
        """All its papers, in the order of their lines."""
        first = LotRecord(
            self.evidence, self.result, self.valid_from, self.valid_to, self.notes,
            self.ingredients, self.method, self.line, self.is_unread,
        )  # fmt: skip
        return (first, *self.more)

    @property
    def is_record(self) -> bool:
        """Whether one of its papers is a record at all: a test or a certificate."""
        return any(record.kind.is_record for record in self.records)

    @property
    def is_specified(self) -> bool:
        """Whether one of its papers says what is in the bag."""
        return any(r.evidence == "specification" or r.ingredients for r in self.records)

    @property
    def lines(self) -> tuple[int, ...]:
        """The lines of the table in which its papers stand."""
        return tuple(record.line for record in self.records)


def read_lots(text: str, *, file: str = "lots.csv") -> Read[tuple[Lot, ...]]:
    r"""Read a table of lots; rows of one mark are the papers of one bag, and every row is kept.

    >>> head = "lot,ingredient,evidence,text,result_mg_kg,from,valid_to\n"
    >>> lots = read_lots(head + "L-1,teff flour,lab test,,<5,2027-03-02,2028-03-02\n").value
    >>> lots[0].evidence, lots[0].result.most_ppm, lots[0].valid_to.isoformat()
    ('lab-test', 5.0, '2028-03-02')
    """
    problems: list[Problem] = []
    lots: list[Lot] = []
    for number, row in typed_rows(text, file, LOT_HEAD, problems):
        lots.append(_lot(row, number, file, problems))
    return Read(_together(_of_their_mark(lots), file, problems), tuple(problems))


def _of_their_mark(lots: list[Lot]) -> list[Lot]:
    """A row that names no goods stands for the bag whose mark it bears."""
    goods: dict[str, str] = {}
    for lot in lots:
        if lot.key and lot.ingredient:
            goods.setdefault(plain_word(lot.key), lot.ingredient)
    return [
        lot if lot.ingredient else replace(lot, ingredient=goods.get(plain_word(lot.key), ""))
        for lot in lots
    ]


def _together(lots: list[Lot], file: str, problems: list[Problem]) -> tuple[Lot, ...]:
    """One lot for each mark; a mark on two kinds of goods is asked and stays two lots."""
    found: dict[tuple[str, str], Lot] = {}
    first: dict[str, Lot] = {}
    for lot in lots:
        where = f"{file} line {lot.line}"
        mark = plain_word(lot.key)
        key = (mark, plain_word(lot.ingredient)) if mark else ("", where)
        known, same = first.setdefault(mark, lot), found.get(key)
        if same is not None and _again(lot, same):
            ask = f"{lot.key} has this very paper in another line already. Take one of them out."
            problems.append(Problem("lot-twice", where, f"{lot.key}, {lot.ingredient}", ask))
        elif lot.key and same is None and known is not lot:
            ask = (
                f"{lot.key} is {known.ingredient} in line {known.line} already. One mark is one "
                "bag of one thing: which?"
            )
            problems.append(Problem("lot-twice", where, f"{lot.key}, {lot.ingredient}", ask))
        found[key] = lot if same is None else replace(same, more=(*same.more, *lot.records))
    by_mark: dict[str, list[Lot]] = {}
    for lot in found.values():
        by_mark.setdefault(plain_word(lot.key), []).append(lot)
    return tuple(_with_strays(lot, by_mark[plain_word(lot.key)]) for lot in found.values())


def _with_strays(lot: Lot, marked: list[Lot]) -> Lot:
    """A lot with the papers that bear its mark on other goods: whose they are is not known."""
    others = [each for each in marked if lot.key and each is not lot]
    strays = tuple(replace(r, is_unread=True) for each in others for r in each.records)
    return replace(lot, more=(*lot.more, *strays)) if strays else lot


def _again(lot: Lot, known: Lot) -> bool:
    return any(replace(record, line=lot.line) == lot.records[0] for record in known.records)


def _lot(row: Mapping[str, str], number: int, file: str, problems: list[Problem]) -> Lot:
    where = f"{file} line {number}"
    read = ",".join(row[name] for name in LOT_HEAD)
    kind = kind_key(row["evidence"])

    def ask(code: str, words: str) -> None:
        problems.append(Problem(code, where, read, words))

    if not row["lot"] or not row["ingredient"]:
        ask("lot-unnamed", "Which lot is it, and of what? Type both.")
    if not kind:
        known = ", ".join(each.name for each in evidence_kinds().values())
        ask("evidence-unknown", f"'{row['evidence']}' is no kind of evidence. There are: {known}.")
    result = _result(row, ask)
    first, last = _days(row, kind, ask)
    listed = split_outside(row.get("ingredients", ""), _COMMA)
    parts = tuple(part.strip() for part in listed if part.strip())
    return Lot(
        row["lot"], row["ingredient"], kind, result, first, last, row["text"],
        parts or None, number, row.get("method", ""),
        is_unread=not kind or not row["ingredient"] or row_is_cut(where, problems)
        or (result is None and any(sign.isdigit() for sign in row["result_mg_kg"])),
    )  # fmt: skip


def _result(row: Mapping[str, str], ask: Callable[[str, str], None]) -> GlutenResult | None:
    """The result of a row, with what its method must be for it to count."""
    printed, typed = row["result_mg_kg"], row.get("limit_mg_kg", "")
    limit = gluten_result(typed)
    if typed and limit is None:
        ask("limit-unread", f"'{typed}' is no limit of a method. Type mg/kg, such as 5.")
    result = gluten_result(printed, limit_ppm=None if limit is None else limit.most_ppm)
    if printed and result is None:
        ask(
            "result-unread",
            f"'{printed}' is no result. Type 8, <5 or ≤20 (mg/kg), a thousand as 1000. Not "
            "detected lies below the limit of its method: type that limit, as <5.",
        )
    method = row.get("method", "")
    if method and method_of(method) is None:
        known = ", ".join(each.name for each in gluten_methods())
        ask("method-unknown", f"'{method}' is no method known here. There are: {known}.")
    return None if typed and limit is None else result


def _days(
    row: Mapping[str, str], kind: str, ask: Callable[[str, str], None]
) -> tuple[date | None, date | None]:
    days = {name: typed_day(row[name]) for name in ("from", "valid_to")}
    for name, day in days.items():
        if row[name] and day is None:
            ask("lot-date-unread", f"'{row[name]}' is no day. Type year-month-day: 2027-06-12.")
        elif day is None and evidence_kind(kind).is_record:
            ask("lot-date-missing", f"A {row['evidence']} needs its {name} day: 2027-06-12.")
    first, last = days["from"], days["valid_to"]
    if first is not None and last is not None and last < first:
        ask("lot-dates-swapped", f"It ends on {last} before it begins on {first}. Which holds?")
    return first, last
