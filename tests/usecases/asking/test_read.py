"""Reading a formula: the demo, other people's texts, answers, and writing them down."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from krume.base import Interval, StoreError
from krume.usecases import Asked, QuestionError, read_formula
from tests.usecases.conftest import PLAIN


def test_a_formula_of_the_book_is_read_whole(demo: Asked) -> None:
    answer = read_formula("F1", demo)
    result = answer.result
    assert answer.exit_code == 0, answer.problems
    assert result.name == "Orl hazel sponge"
    assert len(result.lines) == 10
    assert sum(line.mass_g or 0 for line in result.lines) == pytest.approx(542.0)
    assert result.tin is not None
    assert (result.tin.shape, result.tin.diameter_cm, result.tin.height_cm) == ("round", 20, 7)
    assert result.tin.volume_ml == pytest.approx(2199.1, abs=0.05)
    assert result.oven is not None
    assert (result.oven.temp_c, result.oven.fan) == (170, False)
    assert result.core_c == 95
    assert result.bake_min == Interval(34, 37, 40)
    assert result.baked is not None
    assert (result.baked.height_mm, result.baked.mass_g) == (50, 482)
    assert len(result.steps) == 6
    assert result.eggs.shelled_g == pytest.approx(255)


def test_every_line_of_the_text_is_kept_as_it_was_written(demo: Asked, book: Path) -> None:
    text = (book / "formulas" / "F1.txt").read_text(encoding="utf-8")
    result = read_formula("F1", demo).result
    assert [line.text for line in result.text][: len(text.splitlines())] == text.splitlines()
    written = text.splitlines()
    assert all(line.read in written[line.line - 1] for line in result.lines)


def test_what_is_not_known_is_asked_and_the_rest_is_told(
    bare: Asked, write: Callable[[str], str]
) -> None:
    answer = read_formula(write(PLAIN), bare)
    assert answer.exit_code == 3
    (problem,) = answer.problems
    assert (problem.where, problem.read) == ("line 5", "5 eggs")
    assert [line.mass_g for line in answer.result.lines] == [100, None, 120]
    assert answer.result.eggs.shelled_g is None


def test_the_books_egg_region_settles_what_medium_means(
    demo: Asked, bare: Asked, write: Callable[[str], str]
) -> None:
    path = write(PLAIN.replace("5 eggs", "5 eggs, medium"))
    assert read_formula(path, bare).exit_code == 3
    answer = read_formula(path, demo)
    assert answer.exit_code == 0, answer.problems
    assert answer.result.lines[1].mass_g == pytest.approx(255)


def test_answers_are_written_down_once_nothing_is_open(
    bare: Asked, write: Callable[[str], str], tmp_path: Path
) -> None:
    path, new = write(PLAIN), tmp_path / "deep" / "new.txt"
    answered = replace(bare, answers=("line 5=5 eggs, EU M",))
    answer = read_formula(path, answered, write=new)
    assert answer.exit_code == 0
    assert answer.result.written == str(new)
    assert new.read_text(encoding="utf-8") == PLAIN.replace("5 eggs", "5 eggs, EU M")
    assert Path(path).read_text(encoding="utf-8") == PLAIN
    assert read_formula(str(new), bare).problems == ()


def test_nothing_is_written_while_a_question_is_open(
    bare: Asked, write: Callable[[str], str], tmp_path: Path
) -> None:
    answer = read_formula(write(PLAIN), bare, write=tmp_path / "new.txt")
    assert answer.exit_code == 3
    assert answer.result.written is None
    assert not (tmp_path / "new.txt").exists()


def test_a_text_that_is_there_is_replaced_only_when_that_is_said(
    bare: Asked, write: Callable[[str], str]
) -> None:
    path = Path(write(PLAIN))
    asked = replace(bare, answers=("line 5=5 eggs, EU M",))
    with pytest.raises(StoreError, match="left as it is"):
        read_formula(str(path), asked, write=path)
    assert path.read_text(encoding="utf-8") == PLAIN
    read_formula(str(path), asked, write=path, replace=True)
    assert "5 eggs, EU M" in path.read_text(encoding="utf-8")


@pytest.mark.parametrize("name", ["T1", "101", "CLASS7"])
def test_a_torte_or_an_order_is_no_formula(demo: Asked, name: str) -> None:
    with pytest.raises(QuestionError, match=f"{name} is no formula"):
        read_formula(name, demo)


def test_a_line_can_be_explained(demo: Asked) -> None:
    why = read_formula("F1", demo, explain="line 13").explain
    assert why is not None
    assert why.value == pytest.approx(255)
