"""What is said of a bowl becomes a slip: names, questions, bad inputs, ways."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from krume.base import InputError
from krume.usecases import Asked, SlipWish, rescue_slip

SLIP = ("white rice=40", "teff=26")
NO_STEPS = """\
Own sponge
Family: separated

40 g white rice flour
20 g teff flour
30 g potato starch
9 g sweet rice flour
6 g maize starch
255 g egg
130 g caster sugar
"""


def test_the_worked_slip_is_answered_with_three_ways(demo: Asked) -> None:
    answer = rescue_slip("F2", SlipWish(SLIP), demo)
    assert answer.exit_code == 0, answer.problems
    assert [way.kind for way in answer.result.options] == ["jar", "leave", "hold"]
    jar = answer.result.options[0]
    assert (jar.total_g, jar.jar_g, jar.jar_next_g) == (136.5, 31.5, 73.5)
    assert [line.mass_g for line in jar.lines] == [52.0, 26.0, 39.0, 11.7, 7.8]
    assert jar.percent["starch"] == pytest.approx(34.3, abs=0.05)
    assert jar.shift_basis == "points of the blend"


def test_what_lies_in_the_bowl_is_said_back(demo: Asked) -> None:
    result = rescue_slip("F2", SlipWish(SLIP), demo).result
    assert [(held.name, held.over_g) for held in result.in_bowl] == [
        ("white rice flour", 0.0),
        ("teff flour", 6.0),
    ]
    assert result.bowl is not None
    assert result.bowl.planned_g == 105.0
    assert result.not_yet == ()
    assert result.step_g == 0.1
    assert {band.figure for band in result.bands} >= {"starch", "egg", "sugar_per_egg"}


def test_lines_that_come_before_the_slip_are_named_when_nothing_was_said_of_them(
    demo: Asked,
) -> None:
    assert rescue_slip("F2", SlipWish(("teff=26",)), demo).result.not_yet == ("white rice flour",)


def test_a_line_alone_in_its_cup_can_be_spooned_back(demo: Asked) -> None:
    (back,) = rescue_slip("F2", SlipWish(("sugar=140",)), demo).result.take_back
    assert (back.name, back.mass_g) == ("caster sugar", 10.0)


def test_a_name_of_two_lines_is_asked_unless_one_stands_at_its_plan(demo: Asked) -> None:
    assert rescue_slip("F2", SlipWish(("rice=40", "teff=26")), demo).exit_code == 0
    answer = rescue_slip("F2", SlipWish(("teff=26", "starch=46")), demo)
    (problem,) = answer.problems
    assert (problem.code, problem.where) == ("line-twice", "--weighed 2")
    assert answer.result.options == ()
    for option in problem.options:
        asked = replace(demo, answers=(f"--weighed 2={option.line}",))
        assert rescue_slip("F2", SlipWish(("teff=26", "starch=46")), asked).exit_code == 0


@pytest.mark.parametrize(
    ("said", "name"),
    [
        ("caster sugar=140", "caster sugar"),
        ("SUGAR=140", "caster sugar"),
        ("cornstarch=9", "maize starch"),
        ("line 9=26", "teff flour"),
        ("egg=6 eggs", "eggs"),
        ("20 g butter, melted=25", "butter"),
        ("butter=1 oz", "butter"),
        ("teff=26,5", "teff flour"),
    ],
)
def test_a_line_is_found_as_a_person_calls_it(demo: Asked, said: str, name: str) -> None:
    answer = rescue_slip("F2", SlipWish((said,)), demo)
    assert answer.exit_code == 0, answer.problems
    assert [held.name for held in answer.result.in_bowl] == [name]


def test_an_unknown_name_is_answered_with_the_lines_there_are(demo: Asked) -> None:
    (problem,) = rescue_slip("F2", SlipWish(("fonio=26",)), demo).problems
    assert problem.code == "line-unknown"
    assert len(problem.options) == 11
    assert "teff flour=26" in [option.line for option in problem.options]


@pytest.mark.parametrize(
    "said",
    [
        *("teff=-3", "teff=nan", "teff=inf", "teff=", "=26", "teff", "teff=lots", "teff=1 cup"),
        *("teff=2 eggs", "teff=1e9", "teff=26 27", "teff=\N{MINUS SIGN}3"),
    ],
)
def test_what_is_no_mass_is_refused_with_what_to_type(demo: Asked, said: str) -> None:
    with pytest.raises(InputError) as refused:
        rescue_slip("F2", SlipWish((said,)), demo)
    assert "Type" in refused.value.message


@pytest.mark.parametrize("said", ["teff=260", "teff=6000", "sugar=5001"])
def test_more_than_a_bowl_holds_or_ten_times_the_plan_is_asked(demo: Asked, said: str) -> None:
    (problem,) = rescue_slip("F2", SlipWish((said,)), demo).problems
    assert problem.code == "weight-large"
    for option in problem.options:
        asked = replace(demo, answers=(f"--weighed={option.line}",))
        assert rescue_slip("F2", SlipWish((said,)), asked).exit_code == 0


def test_a_line_is_named_once(demo: Asked) -> None:
    with pytest.raises(InputError, match="named twice"):
        rescue_slip("F2", SlipWish(("teff=20", "teff flour=6")), demo)


def test_nothing_weighed_of_a_line_is_as_if_it_was_not_said(demo: Asked) -> None:
    result = rescue_slip("F2", SlipWish(("white rice=0", "teff=26")), demo).result
    assert [held.name for held in result.in_bowl] == ["teff flour"]


def test_without_steps_the_bowl_is_asked_when_something_else_was_weighed(
    bare: Asked, write: Callable[[str], str]
) -> None:
    wish, path = SlipWish((*SLIP, "sugar=130")), write(NO_STEPS)
    answer = rescue_slip(path, wish, bare)
    (problem,) = answer.problems
    assert (problem.code, problem.where) == ("same-bowl", "--same-bowl")
    assert answer.exit_code == 3
    nothing, sugar = (
        rescue_slip(path, wish, replace(bare, answers=(f"--same-bowl={option.line}",)))
        for option in problem.options
    )
    assert nothing.result.options[0].kind == "jar"
    assert "jar" not in {way.kind for way in sugar.result.ways}
    assert rescue_slip(path, replace(wish, same_bowl=("sugar",)), bare).result == sugar.result


def test_without_steps_nothing_is_asked_while_only_the_blend_is_weighed(
    bare: Asked, write: Callable[[str], str]
) -> None:
    assert rescue_slip(write(NO_STEPS), SlipWish(SLIP), bare).exit_code == 0


def test_where_the_steps_settle_it_the_bowl_is_never_asked(demo: Asked) -> None:
    assert rescue_slip("F2", SlipWish((*SLIP, "sugar=130")), demo).exit_code == 0


def test_an_open_question_of_the_formula_comes_first(
    bare: Asked, write: Callable[[str], str]
) -> None:
    text = "Sponge\n\n100 g white rice flour\n5 eggs\n120 g caster sugar\n"
    answer = rescue_slip(write(text), SlipWish(("sugar=130",)), bare)
    assert answer.exit_code == 3
    assert answer.problems[0].where.startswith("line ")
    assert answer.result.options == ()


def test_no_more_of_a_line_closes_it(demo: Asked) -> None:
    wish = SlipWish(("eggs=4 eggs",), no_more=("eggs",))
    result = rescue_slip("F2", wish, demo).result
    assert result.options[0].kind == "down"
    assert result.in_bowl[0].is_closed


def test_spoilt_whites_find_their_place(demo: Asked) -> None:
    result = rescue_slip("F2", SlipWish(spoilt="whites of 2 eggs"), demo).result
    assert result.spoilt is not None
    assert result.spoilt.eggs_to_have == 2
    assert result.spoilt.white_g == pytest.approx(67.0)
    assert result.spoilt.formulas == ("F6", "F7")
    assert "2 whole eggs again" in result.spoilt.text


@pytest.mark.parametrize("said", ["whites", "0 whites", "6 whites", "1.5 whites", "2 yolks", "-1"])
def test_spoilt_whites_that_are_none_are_refused(demo: Asked, said: str) -> None:
    with pytest.raises(InputError):
        rescue_slip("F2", SlipWish(spoilt=said), demo)


def test_a_coarser_scale_is_reckoned_with(demo: Asked) -> None:
    result = rescue_slip("F2", SlipWish(SLIP, step_g=1.0), demo).result
    assert result.step_g == 1.0
    assert all(line.add_g == int(line.add_g) for line in result.options[0].lines)


def test_the_books_tins_are_named_for_a_larger_cake(demo: Asked) -> None:
    result = rescue_slip("F2", SlipWish(("sugar=156",)), demo).result
    whole = next(way for way in result.ways if way.kind == "scale")
    assert whole.tin is not None
    assert whole.tin.fits == "round 22 x 5 cm"
