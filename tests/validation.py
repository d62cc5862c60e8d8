"""The table of published values: what a run compared, as docs/validation.md."""

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


@dataclass(slots=True)
class Run:
    """What one run of the tests cited and compared."""

    citations: list[Cited] = field(default_factory=list)
    rows: list[tuple[Cited, Agreement, str]] = field(default_factory=list)
    files: set[Path] = field(default_factory=set)
    is_partial: bool = False
    failed: list[str] = field(default_factory=list)

    def add(self, cited: Cited, rows: list[Agreement], accepted: str) -> None:
        """Keep a test's comparisons; `accepted` is the reason of a strict expected failure."""
        self.rows.extend((cited, row, accepted) for row in rows)

    def is_whole(self) -> bool:
        """Whether every test file took part and no test was left out."""
        wanted = set((ROOT / "tests").rglob("test_*.py"))
        return not self.is_partial and wanted <= self.files

    def lines(self) -> list[str]:
        """The table's rows as Markdown, in an order that does not depend on the run."""
        ordered = sorted(
            enumerate(self.rows), key=lambda r: (r[1][0].source, r[1][0].place, r[1][0].test, r[0])
        )
        return [_line(cited, row, accepted) for _, (cited, row, accepted) in ordered]

    def page(self) -> str:
        """The whole page."""
        return _HEAD + "".join(f"{line}\n" for line in self.lines())


RUN = pytest.StashKey[Run]()


def read_citation(nodeid: str, mark: pytest.Mark) -> Cited:
    """The source and place of a mark, which takes exactly these two."""
    if len(mark.args) != 2 or mark.kwargs or not all(mark.args):
        raise pytest.UsageError(f'{nodeid}: write source("key", "place"), both as text')
    source, place = mark.args
    name = nodeid.removeprefix("tests/").replace("::", " ")
    return Cited(name, str(source), str(place))


def _line(cited: Cited, row: Agreement, accepted: str) -> str:
    printed = row.printed if row.within is None else f"{row.printed} ± {row.within} ({row.why})"
    digits = "" if row.half_digits is None else str(row.half_digits)
    verdict = "agrees" if row.holds else (f"accepted miss: {accepted}" if accepted else "MISS")
    cells = (cited.source, cited.place, cited.test, printed, row.computed, digits, verdict)
    return "| " + " | ".join(cell.replace("|", "\\|").replace("\n", " ") for cell in cells) + " |"
