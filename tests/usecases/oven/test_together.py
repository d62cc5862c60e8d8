"""Several loads in one oven, asked for by name: later than alone, and by what."""

from pathlib import Path

import pytest

from krume.bake import LoadTogether, Oven
from krume.base import InputError, Interval
from krume.usecases import Asked, LoadWish, TogetherWish, bakes_together, load_demo
from krume.usecases.oven.together import delay_text, later_minutes, oven_text


@pytest.fixture(scope="module")
def asked(tmp_path_factory: pytest.TempPathFactory) -> Asked:
    found = Asked(book=tmp_path_factory.mktemp("together") / "book")
    load_demo(found)
    return found


def _beside(later: float, **changes: float) -> LoadTogether:
    fields = {"short_k": 0.0, "door_k": 0.0, "heat_factor": 1.0, **changes}
    return LoadTogether(
        prediction=None, alone_min=30.0, likely_min=30.0 * later, later_factor=later, later_ln=0.05,
        course=None, back_c=170.0, back_min=5.0, notices=(), **fields,
    )  # fmt: skip


def test_a_lone_tin_takes_what_the_bake_says(asked: Asked) -> None:
    (load,) = bakes_together(TogetherWish((LoadWish("F3"),)), asked).result.loads
    assert load.minutes == load.alone_min
    assert (load.later_min, load.air_c, load.heat_pct, load.text) == (0, 0, 0, "")


def test_a_second_tin_makes_both_later_and_says_by_what(asked: Asked) -> None:
    answer = bakes_together(TogetherWish((LoadWish("F3", tins=2),)), asked)
    assert answer.is_answered
    (load,) = answer.result.loads
    assert load.minutes is not None and load.alone_min is not None
    assert load.minutes.low > load.alone_min.low
    assert load.later_min is not None and load.later_min > 0
    assert "less heat between the tins" in load.text
    assert answer.result.text.startswith("2 tins in one oven: F3 comes out last, likely at ")
    assert answer.notices[-1].code == "together-assumed"
    assert "eu-oven-sheets" in answer.sources


def test_the_oven_is_that_of_the_load_that_goes_in_first(asked: Asked) -> None:
    wish = TogetherWish((LoadWish("F3", in_min=5.0), LoadWish("F4")))
    answer = bakes_together(wish, asked)
    assert answer.result.oven_c == 170
    assert [load.wants_c for load in answer.result.loads] == [190, None]
    assert answer.result.last == 2
    assert "load 2, F4, comes out last" in answer.result.text


def test_a_neighbour_on_another_shelf_takes_less_room(asked: Asked) -> None:
    same = bakes_together(TogetherWish((LoadWish("F3"), LoadWish("F3"))), asked)
    low = LoadWish("F3", rack="low")
    apart = bakes_together(TogetherWish((LoadWish("F3"), low)), asked)
    apart_pct, same_pct = apart.result.loads[0].heat_pct, same.result.loads[0].heat_pct
    assert apart_pct is not None and same_pct is not None
    assert 0 < apart_pct < same_pct
    assert apart.result.loads[1].rack == "low"


def test_more_tins_than_the_studio_takes_is_no_answer_and_both_figures_are_named(
    asked: Asked,
) -> None:
    answer = bakes_together(TogetherWish((LoadWish("F3", tins=3),)), asked)
    assert answer.exit_code == 4
    assert answer.problems[0].ask == (
        "3 tins would be in at once, and this oven takes 2, by your own figure. Bake fewer, or "
        "put one in later: “F1 @40”."
    )
    assert answer.result.loads[0].minutes is None
    assert answer.result.loads[0].alone_min is not None


def test_what_cannot_be_baked_is_asked_by_its_name(asked: Asked) -> None:
    answer = bakes_together(TogetherWish((LoadWish("F3"), LoadWish("C1"))), asked)
    assert not answer.is_answered
    assert all(problem.ask.startswith("C1: ") for problem in answer.problems)
    wish = TogetherWish((LoadWish("F3", tin="round 16 x 1 cm"),))
    assert bakes_together(wish, asked).exit_code == 4


@pytest.mark.parametrize(
    ("wish", "words"),
    [
        (TogetherWish(()), "Name at least one load"),
        (TogetherWish((LoadWish("F3", tins=0),)), "A load is 1 to 24 tins."),
        (TogetherWish((LoadWish("F3", in_min=-1.0),)), "from 0 on"),
        (TogetherWish((LoadWish("F3"),), power_w=2.3), "200 to 20000 W"),
    ],
)
def test_what_is_no_load_is_refused(wish: TogetherWish, words: str, tmp_path: Path) -> None:
    with pytest.raises(InputError, match=words):
        bakes_together(wish, Asked(book=tmp_path))


def test_a_delay_moves_all_three_minutes_and_widens_them_a_little() -> None:
    alone = Interval(25.0, 34.0, 46.0)
    moved = later_minutes(alone, _beside(1.1))
    assert moved.best == 37.4
    assert moved.low == 27
    assert moved.high == 51
    assert later_minutes(alone, _beside(1.0)) == Interval(25, 34.0, 47)


def test_the_reason_is_said_in_degrees_and_in_heat() -> None:
    assert delay_text(_beside(1.01)) == ""
    assert delay_text(_beside(1.1, short_k=3.2)) == "the air about 3 °C lower"
    door = delay_text(_beside(1.1, short_k=6.6, door_k=4.2, heat_factor=0.92))
    assert door == (
        "the air about 7 °C lower, 4 of it for the door and 8 % less heat between the tins"
    )
    assert delay_text(_beside(float("inf"))) == (
        "With the others in, the model never sees it done."
    )


def test_an_oven_is_typed_as_it_is_read() -> None:
    assert oven_text(Oven(162.8)) == "162.8 C"
    assert oven_text(Oven(150.0, fan=True)) == "fan 150 C"


def test_what_was_not_worked_out_is_not_nought(asked: Asked) -> None:
    answer = bakes_together(TogetherWish((LoadWish("F1"), LoadWish("F3")), oven="80 C"), asked)
    assert not answer.is_possible
    for load in answer.result.loads:
        assert (load.air_c, load.door_c, load.heat_pct, load.later_min) == (None,) * 4


def test_a_load_that_is_never_done_is_not_possible(asked: Asked) -> None:
    answer = bakes_together(TogetherWish((LoadWish("F1", tins=2),), power_w=200), asked)
    assert not answer.is_possible
    (problem,) = answer.problems
    assert problem.ask.startswith("F1 is not done in 200 minutes with all of this in the oven")
    assert answer.result.last is None
