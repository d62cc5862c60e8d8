"""The table of published values: what a run compared, as docs/validation.md."""

import os
from dataclasses import dataclass, field
from pathlib import Path

import pytest

from tests.agreement import Agreement

ROOT = Path(__file__).resolve().parents[1]
PAGE = ROOT / "docs" / "validation.md"

_HEAD = """\
# Validation

Every comparison of a computed value with a printed one that the tests make. Written by the tests
(`KRUME_WRITE_DOCS=1 python3 run.py test`); a run fails while this page is stale. The tolerance is
half of the last printed digit unless a wider one is stated with its reason; the deviation is
counted in such half-digits, so that 1.0 or less agrees. Source keys are rows of
`src/krume/data/sources.csv`.

| source | place | test | printed | computed | half-digits | verdict |
|---|---|---|---|---:|---:|---|
"""


@dataclass(frozen=True, slots=True)
class Cited:
    """A test and the source it cites."""

    test: str
    source: str
    place: str


@dataclass(frozen=True, slots=True, order=True)
class Row:
    """One line of the table, and where it stands in it."""

    source: str
    place: str
    test: str
    line: str = field(compare=False)


@dataclass(slots=True)
class Run:
    """What one run of the tests cited and compared.

    `is_share` is true in one of several processes that share the tests: its rows are not all.
    """

    citations: list[Cited] = field(default_factory=list)
    rows: list[Row] = field(default_factory=list)
    files: set[Path] = field(default_factory=set)
    is_partial: bool = False
    is_share: bool = False
    failed: list[str] = field(default_factory=list)

    def covers_all(self) -> bool:
        """Whether every test file takes part and no test is left out."""
        wanted = set((ROOT / "tests").rglob("test_*.py"))
        return not self.is_partial and wanted <= self.files

    def is_whole(self) -> bool:
        """Whether every test of the project ran in this process."""
        return self.covers_all() and not self.is_share

    def lines(self) -> list[str]:
        """The table's rows as Markdown, in an order that does not depend on the run."""
        return [row.line for row in sorted(self.rows)]

    def page(self) -> str:
        """The whole page."""
        return _HEAD + "".join(f"{line}\n" for line in self.lines())

    def judge(self, *, is_whole: bool) -> str:
        """What is wrong with the page, "" for nothing; where it is asked for, it is written.

        A share leaves that to the process that gathers all rows.
        """
        if self.is_share:
            return ""
        if os.environ.get("KRUME_WRITE_DOCS") == "1":
            if not is_whole:
                return "the page is written by a run of all tests"
            if self.failed:
                return "the page is not written: cited tests failed before"
            PAGE.write_text(self.page(), encoding="utf-8")
        kept = PAGE.read_text(encoding="utf-8")
        if is_whole:
            is_current = kept == self.page()
        else:
            is_current = set(self.lines()) <= set(kept.splitlines())
        return "" if is_current else "stale: KRUME_WRITE_DOCS=1 python3 run.py test"


RUN = pytest.StashKey[Run]()


def read_citation(nodeid: str, mark: pytest.Mark) -> Cited:
    """The source and place of a mark, which takes exactly these two."""
    if len(mark.args) != 2 or mark.kwargs or not all(mark.args):
        raise pytest.UsageError(f'{nodeid}: write source("key", "place"), both as text')
    source, place = mark.args
    name = nodeid.removeprefix("tests/").replace("::", " ")
    return Cited(name, str(source), str(place))


def row_of(cited: Cited, found: Agreement, accepted: str) -> Row:
    """A comparison as its line; `accepted` is the reason of a strict expected failure."""
    printed = (
        found.printed if found.within is None else f"{found.printed} ± {found.within} ({found.why})"
    )
    digits = "" if found.half_digits is None else str(found.half_digits)
    verdict = "agrees" if found.holds else (f"accepted miss: {accepted}" if accepted else "MISS")
    cells = (cited.source, cited.place, cited.test, printed, found.computed, digits, verdict)
    line = " | ".join(cell.replace("|", "\\|").replace("\n", " ") for cell in cells)
    return Row(cited.source, cited.place, cited.test, f"| {line} |")
