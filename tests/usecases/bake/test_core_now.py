"""A measured core: about how long, and honest where the model cannot say."""

from pathlib import Path

import pytest

from krume.base import InputError
from krume.usecases import Asked, BakeWish, core_left, load_demo

F1 = "formulas/F1.txt"


@pytest.fixture(scope="module")
def asked(tmp_path_factory: pytest.TempPathFactory) -> Asked:
    found = Asked(book=tmp_path_factory.mktemp("core") / "book")
    load_demo(found)
    return found


def test_it_says_to_which_core_how_long_and_how_sure(asked: Asked) -> None:
    found = core_left(F1, BakeWish(), 90.0, asked, after_min=30).result
    assert found.wanted_c == 95.0
    assert found.left_min is not None
    assert found.left_min.low <= found.left_min.best <= found.left_min.high
    assert found.text == "to 95: about 2 min (1–3)"


def test_a_core_that_is_there_is_taken_out(asked: Asked) -> None:
    assert "take it out" in core_left(F1, BakeWish(), 96.0, asked, after_min=34).result.text


def test_outside_it_says_so_and_no_minutes(asked: Asked) -> None:
    hot = core_left(F1, BakeWish(), 110.0, asked)
    assert hot.result.left_min is None
    assert not hot.is_possible
    assert "does not get hotter than it boils" in hot.result.text
    cream = core_left("formulas/C1.txt", BakeWish(), 60.0, asked)
    assert cream.result.left_min is None
    assert cream.problems


@pytest.mark.parametrize("core_c", [-50.0, 200.0, float("nan")])
def test_what_is_no_core_is_refused(asked: Asked, core_c: float) -> None:
    with pytest.raises(InputError) as refused:
        core_left(F1, BakeWish(), core_c, asked)
    assert refused.value.field == "core"


def test_without_a_book_a_text_serves(tmp_path: Path) -> None:
    text = tmp_path / "cake.txt"
    text.write_text(
        "Cake\nFamily: separated\nTin: round 20 x 7 cm\nOven: 170 C\n\n100 g rice flour\n"
        "5 eggs, EU M\n120 g caster sugar\n",
        encoding="utf-8",
    )
    found = core_left(str(text), BakeWish(), 70.0, Asked(book=tmp_path / "none"), after_min=20)
    assert found.result.left_min is not None or found.problems
