"""The papers of a book: lots, cleaning records, suppliers' sheets."""

from pathlib import Path

import pytest

from krume.store import place_all
from krume.usecases import Asked
from krume.usecases.book.book import demo_files
from krume.usecases.sold.papers import papers_of

SHEET = "Name: xanthan gum\nClass: gel\nFibre: 80 g\n"


@pytest.fixture
def book(tmp_path: Path) -> Path:
    """A demo book that a test may change."""
    path = tmp_path / "book"
    place_all(path, demo_files())
    return path


def test_the_demo_has_its_lots_and_no_cleaning_record(book: Path) -> None:
    papers = papers_of(Asked(book=book))
    assert len(papers.lots) == 18
    assert papers.cleaning == ()
    assert papers.problems_of(frozenset(lot.key for lot in papers.lots)) == ()


def test_without_a_book_there_are_no_papers_and_no_questions(tmp_path: Path) -> None:
    papers = papers_of(Asked(book=tmp_path / "nothing"))
    assert (papers.lots, papers.cleaning, papers.sheets) == ((), (), {})
    assert papers.problems_of(frozenset()) == ()


def test_a_fault_of_a_lot_is_asked_where_the_lot_is_used_and_told_elsewhere(book: Path) -> None:
    table = book / "lots.csv"
    text = table.read_text(encoding="utf-8").replace("2027-03-15,2028-03-15", "2027-03-15,")
    table.write_text(text, encoding="utf-8")
    papers = papers_of(Asked(book=book))
    assert [p.code for p in papers.problems_of(frozenset({"L-014"}))] == ["lot-date-missing"]
    assert papers.problems_of(frozenset({"L-001"})) == ()
    assert [n.code for n in papers.notices_beside(frozenset({"L-001"}))] == ["other-lot"]


def test_a_cleaning_record_is_read(book: Path) -> None:
    (book / "cleaning.csv").write_text("date,cleaned\n2027-06-10,yes\n", encoding="utf-8")
    assert papers_of(Asked(book=book)).cleaning[0].is_cleaned


def test_a_suppliers_sheet_goes_by_what_its_name_means(book: Path) -> None:
    (book / "suppliers").mkdir()
    (book / "suppliers" / "gum.txt").write_text(SHEET, encoding="utf-8")
    papers = papers_of(Asked(book=book))
    assert papers.sheets["xanthan-gum"].composition.fibre_g == 80.0


def test_a_sheet_with_a_question_is_asked_and_not_used(book: Path) -> None:
    (book / "suppliers").mkdir()
    odd = SHEET.replace("80 g", "plenty")
    (book / "suppliers" / "gum.txt").write_text(odd, encoding="utf-8")
    papers = papers_of(Asked(book=book))
    assert papers.sheets == {}
    assert papers.problems_of(frozenset())[0].where.startswith("suppliers/gum.txt line")
