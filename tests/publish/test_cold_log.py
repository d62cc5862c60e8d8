"""The cold log: nothing passes before it is written, and what it does not prove stands first."""

import io
from dataclasses import replace

import pypdf
import pytest

from krume.publish import (
    ColdLog,
    CoolingLimits,
    Hold,
    Imprint,
    LoggedCooling,
    cold_log_leaf,
    leaf_html,
    leaf_pdf,
)

IMPRINT = Imprint(date="2027-06-10", program="1", data="2")
LIMITS = CoolingLimits(57.0, 21.0, 5.0, 2.0, 6.0, 5.0, "Food Code 2022, 3-501.14", 4.0)
EARLIER = (
    LoggedCooling("A", "C1", 1.923, 5.6, "pass", "", "invented"),
    LoggedCooling("B", "C1", 2.714, None, "fail", "stage-1,total", "invented"),
    LoggedCooling("D", "C1", None, None, "fail", "not-shown", "invented"),
)
LOG = ColdLog(
    title="Order 7",
    cooked=("C1 custard",),
    raw=("C2 cream",),
    limits=LIMITS,
    warm=("Hours out of the cold: 2.5 of 4.",),
    earlier=EARLIER,
    cautions=("Local law decides.",),
)


def test_the_verdict_without_a_reading_is_not_shown_and_says_what_it_will_not_prove() -> None:
    first = cold_log_leaf(LOG, IMPRINT).parts[0]
    assert first.heading == "Verdict so far: not shown"
    assert "not prove" in first.lines[1]
    assert "gluten" in first.lines[1]
    assert "3-501.14" in first.lines[2]


def test_a_cooked_cream_has_its_two_stages_to_fill_in() -> None:
    (part,) = [p for p in cold_log_leaf(LOG, IMPRINT).parts if p.heading.startswith("Cooling of")]
    assert part.table is not None
    rows = [row[0] for row in part.table.rows]
    assert rows[0] == "passes 57 °C: the clock starts"
    assert "21 °C or below by 2 h" in rows
    assert rows[-1] == "5 °C or below by 6 h"
    assert all(set(cell) == {"_"} for row in part.table.rows for cell in row[1:])


def test_the_limits_are_those_given_and_not_written_into_the_sheet() -> None:
    other = CoolingLimits(60.0, 20.0, 4.0, 1.5, 5.0, 4.0, "Another rule", 3.0)
    log = ColdLog("x", ("C1",), (), other, (), (), ())
    text = leaf_html(cold_log_leaf(log, IMPRINT))
    assert "passes 60 °C" in text
    assert "4 °C or below by 5 h" in text
    assert "57 °C" not in text


def test_a_cream_that_no_step_cooks_has_no_stages_but_stays_cold() -> None:
    part = next(p for p in cold_log_leaf(LOG, IMPRINT).parts if p.heading == "Not cooked")
    assert part.lines[0].startswith("C2 cream: no step cooks it")


def test_earlier_logs_are_told_by_their_verdict_and_prove_nothing_of_this_batch() -> None:
    part = cold_log_leaf(LOG, IMPRINT).parts[-1]
    assert "prove nothing of this batch" in part.heading
    assert part.table is not None
    assert [row[4] for row in part.table.rows] == [
        "within",
        "over: the first stage took too long, it took too long in all",
        "not shown",
    ]
    assert part.table.rows[1][3] == "not shown"


@pytest.mark.parametrize("paper", ["a4", "letter"])
def test_paper_carries_the_hold_and_the_hours_of_the_order(paper: str) -> None:
    leaf = cold_log_leaf(LOG, IMPRINT, Hold("Stopped.", "A record."))
    pages = pypdf.PdfReader(io.BytesIO(leaf_pdf(leaf, paper))).pages
    text = " ".join(page.extract_text() for page in pages)
    for words in ("HELD", "not shown", "2.5 of 4", "h above 5", "Local law decides."):
        assert words in text, words


@pytest.mark.parametrize(("creams", "rows"), [(1, 6), (2, 6), (3, 5)])
def test_many_creams_have_one_reading_less_each_and_both_limits_still(
    creams: int, rows: int
) -> None:
    log = replace(LOG, cooked=tuple(f"C{n}" for n in range(creams)))
    tables = [p.table for p in cold_log_leaf(log, IMPRINT).parts if p.heading[:7] == "Cooling"]
    assert [len(table.rows) for table in tables if table] == [rows] * creams
    assert all("21 °C or below by 2 h" in [r[0] for r in table.rows] for table in tables if table)
