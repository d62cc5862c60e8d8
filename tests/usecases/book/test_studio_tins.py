"""The tins a studio begins with."""

from pathlib import Path

import pytest

from krume.base import InputError
from krume.usecases import Asked, init_book, keep_tins, load_demo, table_now, tins_typed


def tins(asked: Asked) -> list[tuple[str, str]]:
    rows = table_now("tins.csv", asked).rows
    return [(row.cells["count"], row.cells["tin"]) for row in rows]


def test_tins_are_kept_once_with_how_many_there_are(tmp_path: Path) -> None:
    asked = Asked(book=tmp_path / "book")
    init_book(asked)
    typed = tins_typed("4 x round 20 x 7 cm\n2 \u00d7 sheet 13x9x1 in\n\n8 in round x 3 in\n")
    for _ in range(2):
        keep_tins(typed, asked)
    assert tins(asked) == [
        ("4", "round 20 x 7 cm"), ("2", "sheet 13x9x1 in"), ("1", "8 in round x 3 in")
    ]  # fmt: skip


def test_what_is_there_already_stays(tmp_path: Path) -> None:
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    before = tins(asked)
    keep_tins(tins_typed("9 x Round 20 x 7 cm\nsquare 18 x 5 cm"), asked)
    assert tins(asked) == [*before, ("1", "square 18 x 5 cm")]


@pytest.mark.parametrize("line", ["triangle", "8in", "0 x round 20 x 7 cm"])
def test_a_line_that_is_no_tin_says_so_and_nothing_is_kept(line: str) -> None:
    with pytest.raises(InputError, match="Type one such as: round 20 x 7 cm") as refusal:
        tins_typed(f"round 20 x 7 cm\n{line}")
    assert refusal.value.field == "tins"
