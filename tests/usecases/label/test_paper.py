"""Label sheets are written whole or not at all, and never with what may not be said."""

import io
from pathlib import Path

import pytest
from pypdf import PdfReader

from krume.store import place_all
from krume.usecases import Asked, LabelWish, label_sheets
from krume.usecases.book.book import demo_files

EU = LabelWish(market="eu")


def words_of(path: str) -> str:
    """Words of a PDF or a page."""
    data = Path(path).read_bytes()
    if path.endswith(".pdf"):
        return " ".join(page.extract_text() for page in PdfReader(io.BytesIO(data)).pages)
    return data.decode("utf-8")


def test_a_closed_label_is_not_written_and_says_what_opens_it(demo: Asked, tmp_path: Path) -> None:
    answer = label_sheets("T1", EU, demo, out=tmp_path / "out", layout="single-100x150")
    assert answer.exit_code == 3
    assert "L-016" in answer.problems[0].ask
    assert answer.result.files == ()
    assert not (tmp_path / "out").exists()


def test_one_closed_label_of_an_order_holds_all_of_them(demo: Asked, tmp_path: Path) -> None:
    wish = LabelWish(market="eu", with_panel=False)
    answer = label_sheets("102", wish, demo, out=tmp_path / "out", layout="single-100x150")
    assert answer.exit_code == 3
    assert [p.read for p in answer.problems] == ["Buckwheat ganache tart"]
    assert not (tmp_path / "out").exists()


def test_a_closed_panel_offers_the_label_without_it(demo: Asked, tmp_path: Path) -> None:
    answer = label_sheets("T3", EU, demo, out=tmp_path / "out", layout="single-100x150")
    assert answer.exit_code == 3
    assert [option.line for option in answer.problems[0].options] == ["--no-panel"]


def test_a_label_holds_its_words_and_no_gluten_sentence_while_the_gate_is_closed(
    demo: Asked, tmp_path: Path
) -> None:
    wish = LabelWish(market="eu", with_panel=False)
    answer = label_sheets("T3", wish, demo, out=tmp_path, layout="single-100x150")
    assert answer.exit_code == 0
    assert [file.format for file in answer.result.files] == ["pdf", "html", "txt", "json"]
    for file in answer.result.files:
        words = words_of(file.path)
        assert "WALNUTS" in words
        assert "gelatine (beef)" in words
        assert "not baked" in words
        assert "gluten-free" not in words.casefold()
        assert "nut-free" not in words.casefold()


def test_the_gluten_sentence_is_printed_only_through_the_open_gate(tmp_path: Path) -> None:
    asked = Asked(book=tmp_path / "book")
    place_all(asked.book or Path(), demo_files())
    clean = tmp_path / "book" / "cleaning.csv"
    clean.write_text("date,cleaned\n2027-06-10,yes\n", encoding="utf-8")
    wish = LabelWish(market="eu", with_panel=False)
    answer = label_sheets("T3", wish, asked, out=tmp_path / "out", layout="single-100x150")
    for file in answer.result.files:
        assert "Gluten-free" in words_of(file.path)


def test_what_does_not_fit_is_no_answer_and_nothing_is_written(demo: Asked, tmp_path: Path) -> None:
    wish = LabelWish(market="us")
    answer = label_sheets("F4", wish, demo, out=tmp_path / "out", layout="single-62x100")
    assert answer.exit_code == 4
    assert "93.0 mm" in answer.problems[0].ask
    assert not (tmp_path / "out").exists()


@pytest.mark.parametrize("layout", ["a4-1", "a4-2x2", "a4-2x4", "letter-2x2"])
def test_a_sheet_holds_as_many_labels_as_its_row_says(
    demo: Asked, tmp_path: Path, layout: str
) -> None:
    count = {"a4-1": 1, "a4-2x2": 4, "a4-2x4": 8, "letter-2x2": 4}[layout]
    answer = label_sheets("C1", EU, demo, out=tmp_path, layout=layout)
    reader = PdfReader(io.BytesIO(Path(answer.result.files[0].path).read_bytes()))
    assert len(reader.pages) == 1
    assert reader.pages[0].extract_text().count("Vanilla custard cream") == count


def test_a_torte_that_cannot_be_has_no_label_and_names_its_limit(
    demo: Asked, tmp_path: Path
) -> None:
    text = tmp_path / "high.txt"
    text.write_text("High\n\n3 layers of F1, 20 mm\n", encoding="utf-8")
    answer = label_sheets(str(text), EU, demo, out=tmp_path / "out", layout="single-100x150")
    assert answer.exit_code == 4
    assert not (tmp_path / "out").exists()


def test_the_studios_notes_stand_only_on_labels_of_its_book(demo: Asked, tmp_path: Path) -> None:
    text = tmp_path / "cream.txt"
    text.write_text("Cream\nFamily: set-cream\n\n200 g whipping cream\n20 g sugar\n")
    answer = label_sheets(str(text), EU, demo, out=tmp_path / "out", layout="single-100x150")
    assert answer.exit_code == 0
    assert all("not baked" not in words_of(file.path) for file in answer.result.files)


def test_the_sentence_on_cold_ends_where_its_words_end(demo: Asked, tmp_path: Path) -> None:
    answer = label_sheets("F4", LabelWish(market="us"), demo, out=tmp_path, layout="single-100x150")
    words = " ".join(words_of(answer.result.files[0].path).split())
    assert "____________ Keep cold, at 5 °C (41 °F) or below. " in words
