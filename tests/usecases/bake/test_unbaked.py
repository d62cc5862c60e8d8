"""What gets no minutes: ways of baking the model does not know, and texts that only sound so."""

import pytest

from krume.design import read
from krume.usecases.bake.unbaked import unbaked
from krume.usecases.bake.wish import BakeWish

_HEAD = "Cake\nFamily: butter\n\n100 g sugar\n100 g butter\n100 g eggs\n100 g rice flour\n\n"


def _codes(step: str, jacket: str = "none") -> list[str]:
    found = read(f"{_HEAD}1. {step}\n").value
    assert found.steps
    return [problem.code for problem in unbaked(found, BakeWish(jacket=jacket))]


@pytest.mark.parametrize(
    ("step", "code"),
    [
        ("Bake from frozen at 160 C, 50 minutes.", "baked-frozen"),
        ("Bake it frozen.", "baked-frozen"),
        ("Bake in a water bath 40 minutes.", "baked-water"),
        ("Set the tin in a bain-marie. Bake 40 minutes.", "baked-water"),
        ("Steam 40 minutes.", "baked-steamed"),
        ("Bake with steam for 40 minutes.", "baked-steamed"),
        ("Bake in the microwave 6 minutes.", "baked-microwave"),
    ],
)
def test_a_way_of_baking_the_model_does_not_know_is_refused(step: str, code: str) -> None:
    assert _codes(step) == [code]


@pytest.mark.parametrize(
    "step",
    [
        "Whip eggs and sugar over a water bath to 40 C.",
        "Melt butter in the microwave.",
        "Fold in frozen raspberries. Bake 40 minutes.",
        "Bake 40 minutes. Cool, wrap and freeze.",
        "Bake until no more steam rises.",
        "Bake 38 minutes at 170 C.",
    ],
)
def test_what_only_sounds_like_it_is_baked_as_ever(step: str) -> None:
    assert _codes(step) == []


def test_a_water_bath_is_reckoned_with_where_the_tin_is_said_to_stand_in_water() -> None:
    assert _codes("Bake in a water bath 40 minutes.", "water") == []
    assert _codes("Bake from frozen in a water bath.", "water") == ["baked-frozen"]


def test_the_line_that_says_it_is_named_with_what_to_do() -> None:
    found = read(f"{_HEAD}1. Bake in a water bath 40 minutes.\n").value
    (problem,) = unbaked(found, BakeWish())
    assert problem.where == "line 9"
    assert problem.ask == (
        "Line 9 says it is baked in a water bath, and minutes without the water would be far too "
        "few. Add --jacket water, or take the water out of the text."
    )


def test_a_cream_is_no_batter() -> None:
    found = read("Cream\nFamily: custard\n\n200 g milk\n").value
    cream = read("Shells\nFamily: tart\n\n200 g rice flour\n100 g butter\n").value
    assert [p.code for p in unbaked(cream, BakeWish())] == ["not-a-batter"]
    assert {p.code for p in unbaked(found, BakeWish())} <= {"not-a-batter"}
