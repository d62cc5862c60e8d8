"""The pantry as a page shows it, against the demo's own table of evidence."""

from pathlib import Path

import pytest

from krume.usecases import Asked, add_row, asked_table, load_demo, pantry_now, room_now
from krume.usecases.book.rows import save_row, table_now
from krume.usecases.pantry.page import LotRow, evidence_words

STATES = {
    "L-001": "good", "L-002": "missing", "L-003": "good", "L-004": "expired", "L-005": "good",
    "L-006": "good", "L-007": "good", "L-008": "conflict", "L-009": "good", "L-010": "good",
    "L-011": "missing", "L-012": "missing", "L-013": "missing", "L-014": "good",
    "L-015": "not-needed", "L-016": "good", "L-017": "not-needed", "L-018": "good",
}  # fmt: skip


@pytest.fixture
def kept(tmp_path: Path) -> Asked:
    """A demo book with a database, which the test may change."""
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    return asked


def _lots(asked: Asked) -> dict[str, LotRow]:
    return {each.row.get("lot"): each for each in pantry_now(asked).lots}


def test_every_lot_of_the_demo_stands_as_the_studio_says(kept: Asked) -> None:
    assert {name: each.state for name, each in _lots(kept).items()} == STATES


def test_a_folder_of_plain_texts_shows_the_same_and_cannot_be_edited(own_demo: Asked) -> None:
    assert {name: each.state for name, each in _lots(own_demo).items()} == STATES
    now = pantry_now(own_demo)
    assert now.has_book
    assert not now.can_edit


def test_lots_stand_by_ingredient_and_what_is_not_said_is_a_word(kept: Asked) -> None:
    lots = pantry_now(kept).lots
    names = [each.row.get("ingredient") for each in lots]
    assert names == sorted(names)
    teff = next(each for each in lots if each.row.get("lot") == "L-002")
    assert [teff.said(name) for name in ("result_mg_kg", "from")] == ["not known"] * 2


@pytest.mark.parametrize(
    ("last", "is_soon"),
    [("2027-06-10", True), ("2027-07-10", True), ("2027-07-11", False), ("2027-06-09", False)],
)
def test_a_record_that_ends_within_thirty_days_is_told(
    kept: Asked, last: str, is_soon: bool
) -> None:
    row = next(r for r in table_now("lots.csv", kept).rows if r.get("lot") == "L-001")
    assert row.key is not None
    save_row("lots.csv", row.key, {"valid_to": last}, kept, seen=1)
    assert [each.row.get("lot") for each in pantry_now(kept).ending] == ["L-001"] * is_soon


def test_a_row_that_cannot_be_read_stays_with_its_question_and_has_no_record(kept: Asked) -> None:
    cells = {"lot": "L-020", "ingredient": "teff flour", "evidence": "hearsay", "from": "spring"}
    add_row("lots.csv", cells, kept, head=tuple(cells))
    found = _lots(kept)["L-020"]
    assert found.state == "missing"
    assert {p.code for p in found.questions} == {"evidence-unknown", "lot-date-unread"}


def test_the_room_is_not_known_until_it_is_written(kept: Asked) -> None:
    assert room_now(kept).is_cleaned is None
    head = ("date", "cleaned")
    add_row("cleaning.csv", {"date": "2027-06-09", "cleaned": "yes"}, kept, head=head)
    assert room_now(kept).is_cleaned is None
    add_row("cleaning.csv", {"date": "2027-06-10", "cleaned": "yes"}, kept, head=head)
    assert room_now(kept).is_cleaned is True
    assert room_now(kept).row is not None


def test_a_no_of_the_day_stands_before_a_yes(kept: Asked) -> None:
    for said in ("yes", "no"):
        cells = {"date": "2027-06-10", "cleaned": said}
        add_row("cleaning.csv", cells, kept, head=("date", "cleaned"))
    room = room_now(kept)
    assert room.is_cleaned is False
    assert room.row is not None
    assert room.row.get("cleaned") == "no"


def test_a_table_comes_with_the_questions_of_its_rows(kept: Asked) -> None:
    add_row("prices.csv", {"item": "quark", "price": "dear", "per": "kg"}, kept, head=())
    found = asked_table("prices.csv", kept)
    last = found.table.rows[-1].line
    assert [p.code for p in found.by_line[last]] == ["price-unread"]
    assert found.whole == ()
    assert found.can_edit


def test_every_kind_of_evidence_has_a_word_that_is_read(kept: Asked) -> None:
    used = {row.get("evidence") for row in table_now("lots.csv", kept).rows}
    assert used <= set(evidence_words())
    assert set(evidence_words()) - used == {"may contain", "own handling", "doubt"}


def test_an_empty_book_has_an_empty_pantry(bare: Asked) -> None:
    now = pantry_now(bare)
    assert (now.lots, now.ending, now.questions, now.has_book) == ((), (), (), False)
