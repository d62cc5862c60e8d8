"""What stands round the tin: taken as typed, and refused where it cannot be."""

import pytest

from krume.bake import Around
from krume.size import Tin
from krume.usecases import BakeWish
from krume.usecases.bake.around import (
    around_notices,
    around_of,
    around_problems,
    door_too_late,
    told_around,
)

ROUND = Tin("round 20 cm", "round", diameter_cm=20.0)
RING = Tin("ring 22 cm", "ring", diameter_cm=22.0)


def _codes(wish: BakeWish, tin: Tin = ROUND, oven_c: float = 170.0) -> list[str]:
    return [problem.code for problem in around_problems(wish, tin, oven_c)]


def test_nothing_unusual_is_nothing_said() -> None:
    assert around_of(BakeWish()) == Around()
    assert told_around(BakeWish()).text == ""
    assert _codes(BakeWish()) == []


def test_all_of_it_is_said_in_words_and_doors_in_their_order() -> None:
    wish = BakeWish(jacket="wrapped", under="insulated", rack="low", door_min=(20.0, 10.0))
    assert around_of(wish).door_min == (10.0, 20.0)
    assert told_around(wish).text == (
        "A wet strip round the wall; on a double tray; low in the oven; "
        "the door opened at 10 and 20 min."
    )


def test_an_unknown_word_is_asked_with_the_likeliest_first() -> None:
    (problem,) = around_problems(BakeWish(jacket="watr"), ROUND, 170.0)
    assert (problem.code, problem.where) == ("jacket-unknown", "--jacket")
    assert problem.options[0].line == "water"
    assert {option.line for option in problem.options} == {"none", "wrapped", "water"}


@pytest.mark.parametrize(
    ("wish", "tin", "code"),
    [
        (BakeWish(jacket="water"), RING, "water-and-ring"),
        (BakeWish(jacket="water", under="stone"), ROUND, "water-and-under"),
        (BakeWish(cold_start_c=170.0), ROUND, "cold-start-range"),
        (BakeWish(cold_start_c=-40.0), ROUND, "cold-start-range"),
        (BakeWish(cold_start_c=float("nan")), ROUND, "cold-start-range"),
        (BakeWish(door_min=(0.0,)), ROUND, "door-range"),
        (BakeWish(door_min=(float("nan"),)), ROUND, "door-range"),
        (BakeWish(door_min=tuple(float(k) for k in range(1, 15))), ROUND, "door-often"),
    ],
)
def test_what_cannot_be_is_refused_with_its_reason(wish: BakeWish, tin: Tin, code: str) -> None:
    assert _codes(wish, tin) == [code]


def test_water_in_a_tin_with_a_floor_on_the_rack_is_fine() -> None:
    assert _codes(BakeWish(jacket="water")) == []
    assert _codes(BakeWish(jacket="wrapped"), RING) == []


def test_a_door_after_the_bake_is_asked_and_one_before_it_is_not() -> None:
    assert door_too_late((10.0, 41.0), 42.0) == ()
    (problem,) = door_too_late((10.0, 70.0), 42.0)
    assert (problem.code, problem.read) == ("door-after-the-bake", "70")
    assert "over by 42" in problem.ask


def test_a_foam_in_a_cold_oven_is_warned_of_and_a_butter_cake_is_not() -> None:
    wish = BakeWish(cold_start_c=20.0)
    assert [notice.code for notice in around_notices(wish, "separated")] == ["cold-start-foam"]
    assert around_notices(wish, "butter") == ()
    assert around_notices(wish, None) == ()
    assert around_notices(BakeWish(), "separated") == ()


@pytest.mark.parametrize(
    "said",
    ["Oven: 170 C, cold start", "170 C from a cold oven", "In den kalten Ofen stellen.",
     "Bake from a cold-start."],
)  # fmt: skip
def test_a_text_that_speaks_of_a_cold_oven_is_told_that_its_minutes_are_of_a_hot_one(
    said: str,
) -> None:
    (notice,) = around_notices(BakeWish(), "butter", ("Bake 40 min.", said))
    assert notice.code == "cold-start-unsaid"
    assert notice.text.endswith("bake with --cold-start 20.")
    assert around_notices(BakeWish(cold_start_c=20.0), "butter", (said,)) == ()


def test_a_cold_bowl_and_a_cold_batter_are_no_cold_oven() -> None:
    assert around_notices(BakeWish(), "butter", ("Oven: 170 C", "Chill cold, then bake.")) == ()
