"""What may go in by a tap, and what it would do."""

from pathlib import Path

import pytest

from krume.base import NotFoundError
from krume.usecases import (
    Asked,
    choice_for_oven,
    load_demo,
    loads_now,
    others_if_in,
    oven_choices,
    put_in,
    save_text,
    tins_at_hand,
)


@pytest.fixture
def asked(tmp_path: Path) -> Asked:
    found = Asked(book=tmp_path / "book")
    load_demo(found)
    return found


def test_formulas_with_a_tin_are_to_tap_and_what_was_in_lately_comes_first(asked: Asked) -> None:
    found = oven_choices(asked)
    assert [each.formula for each in found.shown] == ["F1", "F2", "F3", "F4", "F5", "F6", "F7"]
    assert found.more == 0
    assert found.shown[0].tin == "round 20 x 7 cm"
    put_in("one", "F5", "", asked)
    assert oven_choices(asked).shown[0].formula == "F5"
    assert [each.formula for each in oven_choices(asked, search="walnut").shown] == ["F4"]


def test_many_formulas_are_cut_and_counted(asked: Asked) -> None:
    for n in range(20):
        text = f"Sponge {n}\nTin: round 20 cm\n\n100 g caster sugar\n"
        save_text("formula", f"Z{n:02d}", text, asked, seen=None)
    found = oven_choices(asked)
    assert len(found.shown) == 12
    assert found.more > 8
    with pytest.raises(NotFoundError):
        choice_for_oven("F99", asked)


def test_what_it_would_do_is_said_by_the_clock_and_changes_nothing(asked: Asked) -> None:
    put_in("one", "F4", "", asked)
    before = loads_now(asked)
    said = others_if_in("F4", "", 1, asked)
    assert loads_now(asked) == before
    assert said[0].startswith("Load 1: first check ")
    assert said[0].count(" → ") == 2
    assert said[1].startswith("In now: first check ")
    assert "less heat between the tins." in said[1]
    three = others_if_in("F4", "", 2, asked)
    assert three[0] == "3 tins would be in; this oven takes 2 at once, by your own figure."
    assert three[1].startswith("Load 1: first check ")


def test_a_load_of_no_minutes_says_why_and_leaves_the_others(asked: Asked) -> None:
    put_in("one", "F4", "", asked)
    said = others_if_in("F7", "", 1, asked)
    assert said[0] == "Load 1 stays as it is."
    assert "no minutes" in said[1]


def test_the_tins_of_the_book_are_at_hand(asked: Asked, tmp_path: Path) -> None:
    tins = tins_at_hand(asked)
    assert len(tins) == len(set(tins)) > 3
    assert tins_at_hand(Asked(book=tmp_path / "none")) == ()
