"""Lots in the house and the room's cleaning records, read strictly; nothing typed is lost."""

import csv
import io
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from datetime import date
from functools import cache

from krume.base import Problem, Read
from krume.evidence import column, load, optional

KIND_COLUMNS = (
    column("key", "key"),
    column("words"),
    optional("is_record", "flag"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)
LOT_HEAD = ("lot", "ingredient", "evidence", "text", "result_mg_kg", "from", "valid_to")
CLEANING_HEAD = ("date", "cleaned")
_RESULT = re.compile(r"^(?P<sign><=|≤|<|)\s*(?P<number>\d+(?:[.,]\d+)?)$")
_YES = ("yes", "y", "x", "done")


@dataclass(frozen=True, slots=True)
class GlutenResult:
    """A result as printed: at most `most_ppm`, or below it where `is_below`."""

    printed: str
    most_ppm: float
    is_below: bool = False


@dataclass(frozen=True, slots=True)
class Lot:
    """One bag with one supplier mark and one evidence record; None is not said.

    `evidence` is a key of the evidence kinds, or empty where the word is none of them; `notes`
    are the record's own words; `ingredients` are the parts the bag lists, None where it does not.
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

    @property
    def is_record(self) -> bool:
        """Whether its evidence is a record at all: a test or a certificate."""
        return evidence_kinds().get(self.evidence, False)


@dataclass(frozen=True, slots=True)
class CleaningRecord:
    """The room on one day: cleaned before the work, or not."""

    day: date
    is_cleaned: bool
    line: int = 0


@cache
def evidence_kinds() -> dict[str, bool]:
    """Keys of the kinds of evidence, with whether each is a record of gluten."""
    rows = load("evidence_kinds.csv", KIND_COLUMNS)
    return {row.text("key"): row.flag("is_record") for row in rows}


@cache
def _kind_words() -> dict[str, str]:
    rows = load("evidence_kinds.csv", KIND_COLUMNS)
    return {word: row.text("key") for row in rows for word in row.text("words").split(";")}


def read_lots(text: str, *, file: str = "lots.csv") -> Read[tuple[Lot, ...]]:
    r"""Read a table of lots; every row is kept, and what is wrong in it is asked.

    >>> head = "lot,ingredient,evidence,text,result_mg_kg,from,valid_to\n"
    >>> lots = read_lots(head + "L-1,teff flour,lab test,,<5,2027-03-02,2028-03-02\n").value
    >>> lots[0].evidence, lots[0].result.most_ppm, lots[0].valid_to.isoformat()
    ('lab-test', 5.0, '2028-03-02')
    """
    problems: list[Problem] = []
    lots: list[Lot] = []
    for number, row in _rows(text, file, LOT_HEAD, problems):
        lots.append(_lot(row, number, file, problems))
    problems += _repeated(lots, file)
    return Read(tuple(lots), tuple(problems))


def read_cleaning(text: str, *, file: str = "cleaning.csv") -> Read[tuple[CleaningRecord, ...]]:
    r"""Read the room's cleaning records; a row without a day or a clear word counts as none.

    >>> read_cleaning("date,cleaned\n2027-06-12,yes\n").value[0].is_cleaned
    True
    """
    problems: list[Problem] = []
    records: list[CleaningRecord] = []
    for number, row in _rows(text, file, CLEANING_HEAD, problems):
        day = _day(row["date"])
        where = f"{file} line {number}"
        if day is None:
            ask = "Which day was it? Type year-month-day, such as 2027-06-12."
            problems.append(Problem("cleaning-date", where, row["date"], ask))
            continue
        said = row["cleaned"].casefold()
        if said not in (*_YES, "no"):
            ask = "Was the room cleaned before the work? Type yes or no."
            problems.append(Problem("cleaning-unread", where, row["cleaned"], ask))
        records.append(CleaningRecord(day, said in _YES, number))
    return Read(tuple(records), tuple(problems))


def _rows(
    text: str, file: str, wanted: tuple[str, ...], problems: list[Problem]
) -> Iterator[tuple[int, dict[str, str]]]:
    """Rows by column; a column that is missing is asked once and is empty in every row."""
    try:
        rows = _numbered(text)
    except csv.Error as error:
        ask = f"{file} is no table ({error}). Save it as CSV in UTF-8, or put a copy back."
        problems.append(Problem("table-unread", f"{file} line 1", "", ask))
        return
    head = [name.strip().casefold() for name in rows.pop(0)[1]] if rows else []
    for name in wanted:
        if name not in head:
            ask = f"{file} has no column {name}. Its first line wants: {','.join(wanted)}"
            problems.append(Problem("column-missing", f"{file} line 1", ",".join(head), ask))
    for number, cells in rows:
        if not any(cell.strip() for cell in cells):
            continue
        if len(cells) > len(head):
            ask = f"This row has {len(cells)} cells and the first line {len(head)}. Quote commas."
            where = f"{file} line {number}"
            problems.append(Problem("row-too-long", where, ",".join(cells), ask))
        found = dict(zip(head, (cell.strip() for cell in cells), strict=False))
        yield number, {name: found.get(name, "") for name in {*wanted, *head}}


def _numbered(text: str) -> list[tuple[int, list[str]]]:
    lines = csv.reader(io.StringIO(text.lstrip("\ufeff"), newline=None))
    return [(lines.line_num, cells) for cells in lines]


def _lot(row: Mapping[str, str], number: int, file: str, problems: list[Problem]) -> Lot:
    where = f"{file} line {number}"
    read = ",".join(row[name] for name in LOT_HEAD)
    kind = _kind_words().get(" ".join(row["evidence"].casefold().split()), "")

    def ask(code: str, words: str) -> None:
        problems.append(Problem(code, where, read, words))

    if not row["lot"] or not row["ingredient"]:
        ask("lot-unnamed", "Which lot is it, and of what? Type both.")
    if not kind:
        known = ", ".join(word for word in _kind_words() if ";" not in word)
        ask("evidence-unknown", f"'{row['evidence']}' is no kind of evidence. There are: {known}.")
    result = _result(row["result_mg_kg"])
    if row["result_mg_kg"] and result is None:
        ask("result-unread", f"'{row['result_mg_kg']}' is no result. Type 8, <5 or ≤20 (mg/kg).")
    days = {name: _day(row[name]) for name in ("from", "valid_to")}
    for name, day in days.items():
        if row[name] and day is None:
            ask("lot-date-unread", f"'{row[name]}' is no day. Type year-month-day: 2027-06-12.")
        elif day is None and evidence_kinds().get(kind, False):
            ask("lot-date-missing", f"A {row['evidence']} needs its {name} day: 2027-06-12.")
    first, last = days["from"], days["valid_to"]
    if first is not None and last is not None and last < first:
        ask("lot-dates-swapped", f"It ends on {last} before it begins on {first}. Which holds?")
    listed = row.get("ingredients", "")
    parts = tuple(part.strip() for part in re.split(r"[;,]", listed) if part.strip())
    return Lot(
        row["lot"], row["ingredient"], kind, result, first, last, row["text"],
        parts or None, number,
    )  # fmt: skip


def _result(printed: str) -> GlutenResult | None:
    match = _RESULT.match(printed)
    if match is None:
        return None
    return GlutenResult(printed, float(match["number"].replace(",", ".")), match["sign"] == "<")


def _day(text: str) -> date | None:
    try:
        return date.fromisoformat(text)
    except ValueError:
        return None


def _repeated(lots: list[Lot], file: str) -> list[Problem]:
    first: dict[str, Lot] = {}
    problems = []
    for lot in lots:
        known = first.setdefault(lot.key, lot)
        if lot.key and known is not lot:
            ask = f"{lot.key} stands in line {known.line} already. One lot has one record: which?"
            where = f"{file} line {lot.line}"
            problems.append(Problem("lot-twice", where, f"{lot.key}, {lot.ingredient}", ask))
    return problems
