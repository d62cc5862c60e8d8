"""A text line by line beside what was understood of it."""

from pathlib import Path

from krume.usecases import Asked, check_formula, read_formula
from krume.web.formulas.twin import TwinRow, twin


def _rows(book: Path, name: str) -> tuple[TwinRow, ...]:
    asked = Asked(book=book)
    read = read_formula(name, asked)
    return twin(read.result, check_formula(name, asked).result, read.problems)


def test_every_line_of_the_text_is_there_in_its_own_words(demo_book: Path) -> None:
    rows = _rows(demo_book, "F2")
    assert [row.number for row in rows] == list(range(1, len(rows) + 1))
    assert rows[0].own == "Tidewick vanilla sponge"


def test_an_ingredient_has_its_grams_its_row_and_its_share(demo_book: Path) -> None:
    line = next(row for row in _rows(demo_book, "F2") if row.own == "30 g potato starch")
    assert [(got.mass, got.text, got.share) for got in line.got] == [
        ("30", "Potato starch", "28.6 %")
    ]


def test_a_step_says_the_grams_it_uses(demo_book: Path) -> None:
    row = next(row for row in _rows(demo_book, "F2") if row.own.startswith("Beat the yolks"))
    assert "55 g caster sugar" in row.got[0].text


def test_what_krume_wrote_for_itself_stands_small_and_all_else_as_it_is() -> None:
    text = "Kid\nParent: F2\nParent lines: f39ce76e\nParent was: 40 g sugar\n\n40 g caster sugar\n"
    asked = Asked(typed=text.encode())
    read = read_formula("-", asked)
    rows = twin(read.result, check_formula("-", asked).result, read.problems)
    assert [row.is_kept for row in rows[:4]] == [False, False, True, True]
    assert rows[2].got[0].text == "by this it follows its parent"
    assert not any(row.is_kept for row in rows[4:])
