"""Questions about the rows of tables stand at the row that asks them."""

from pathlib import Path

import pytest

from krume.usecases import Asked, load_demo, questions_of_table, row_questions
from krume.usecases.book.rows import table_now
from krume.usecases.tables.questions import questions_by_line


@pytest.fixture
def kept(tmp_path: Path) -> Asked:
    """A demo book with a database, which the test may change."""
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    return asked


def _codes(place: str, cells: dict[str, str], asked: Asked, key: int | None = None) -> set[str]:
    found = row_questions(place, cells, asked, key=key, head=tuple(cells))
    return {problem.code for problem in found}


def test_a_good_row_asks_nothing(kept: Asked) -> None:
    lot = {"lot": "L-019", "ingredient": "teff flour", "evidence": "lab test",
           "result_mg_kg": "<5", "from": "2027-06-01", "valid_to": "2028-06-01"}  # fmt: skip
    assert _codes("lots.csv", lot, kept) == set()
    assert _codes("prices.csv", {"item": "quark", "price": "2.10", "per": "kg"}, kept) == set()
    assert _codes("packs.csv", {"item": "caster sugar", "stock_g": "0"}, kept) == set()
    assert _codes("tins.csv", {"tin": "round 24 x 7 cm", "count": "1"}, kept) == set()
    assert _codes("cleaning.csv", {"date": "2027-06-10", "cleaned": "no"}, kept) == set()


@pytest.mark.parametrize(
    ("place", "cells", "code"),
    [
        ("lots.csv", {"ingredient": "teff flour", "evidence": "lab test"}, "lot-unnamed"),
        ("lots.csv", {"lot": "L-1", "ingredient": "teff", "evidence": "hearsay"},
         "evidence-unknown"),
        ("lots.csv", {"lot": "L-001", "ingredient": "teff", "evidence": "certificate"},
         "lot-twice"),
        ("prices.csv", {"item": "butter", "price": "9.00", "per": "kg"}, "price-twice"),
        ("prices.csv", {"item": "quark", "price": "dear", "per": "kg"}, "price-unread"),
        ("packs.csv", {"item": "sugar", "pack_g": "a kilo"}, "pack-pack-unread"),
        ("packs.csv", {"item": "sugar", "stock_g": "-4"}, "pack-stock-unread"),
        ("packs.csv", {"item": "sugar", "stock_g": "nan"}, "pack-stock-unread"),
        ("packs.csv", {"pack_g": "1000"}, "pack-item-missing"),
        ("tins.csv", {"tin": "round 24 x 7 cm", "count": "0"}, "tin-count-unread"),
        ("cleaning.csv", {"date": "soon", "cleaned": "yes"}, "cleaning-date"),
    ],
)  # fmt: skip
def test_what_is_wrong_with_a_row_is_asked(
    kept: Asked, place: str, cells: dict[str, str], code: str
) -> None:
    assert code in _codes(place, cells, kept)


def test_what_is_only_not_said_yet_is_asked_later_not_refused(kept: Asked) -> None:
    lot = {"lot": "L-019", "ingredient": "teff flour", "evidence": "lab test"}
    assert _codes("lots.csv", lot, kept) == set()
    text = "lot,ingredient,evidence,text,result_mg_kg,from,valid_to\nL-1,teff flour,lab test,,,,\n"
    assert {p.code for p in questions_of_table("lots.csv", text, kept)} == {"lot-date-missing"}


def test_a_row_is_held_against_the_others_not_against_itself(kept: Asked) -> None:
    row = table_now("lots.csv", kept).rows[0]
    assert _codes("lots.csv", row.cells, kept, row.key) == set()
    assert _codes("lots.csv", row.cells, kept) == {"lot-twice"}


def test_an_empty_table_asks_nothing(kept: Asked) -> None:
    assert questions_of_table("packs.csv", "", kept) == ()


def test_questions_are_by_line_and_those_of_the_whole_apart(own_demo: Asked) -> None:
    assert own_demo.book is not None
    text = "lot,ingredient,evidence,text,from,valid_to\nL-1,teff flour,rumour,,,\n"
    (own_demo.book / "lots.csv").write_text(text, encoding="utf-8")
    table = table_now("lots.csv", own_demo)
    by_line, whole = questions_by_line(table, questions_of_table("lots.csv", text, own_demo))
    assert [p.code for p in by_line[2]] == ["evidence-unknown"]
    assert [p.code for p in whole] == ["column-missing"]
