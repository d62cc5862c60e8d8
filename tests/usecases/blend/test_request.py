"""Reading a request for a blend: what is asked, what an answer does, what is only told."""

from collections.abc import Callable
from dataclasses import replace

import pytest

from krume.base import InputError
from krume.usecases import Answer, Asked, BlendResult, BlendWish, choose_blend
from tests.usecases.blends import FLOURS, WITHOUT_TEFF

COVERS = ("flours", "match")
SHEET = """\
Green banana flour, fine
Name: Green banana flour
Class: flour
Role: flour
Water: 9.0 g
Protein: 3.6 g
Fat: 0.7 g
Carbohydrate: 76.0 g
Fibre: 8.0 g
Ash: 2.7 g
Salt: 0.01 g
Allergens: none
"""


def codes(answer: Answer[BlendResult]) -> list[str]:
    """Codes of what is asked."""
    return [problem.code for problem in answer.problems]


def answered(demo: Asked, *answers: str) -> Asked:
    """The request with these answers."""
    return replace(demo, answers=answers)


def test_a_name_of_two_flours_is_asked_and_its_answer_settles_it(demo: Asked) -> None:
    wish = BlendWish("buckwheat flour, potato flour, rice flour", match="F2")
    answer = choose_blend(wish, demo)
    assert answer.exit_code == 3
    assert [problem.where for problem in answer.problems] == ["--from 2", "--from 3"]
    lines = [f"{p.where}={p.options[0].line}" for p in answer.problems]
    settled = choose_blend(wish, answered(demo, *lines))
    assert settled.exit_code == 0
    assert list(settled.result.composition)[1:] == ["starch-potato-ciqual", "flour-rice-white"]


def test_an_unknown_flour_is_asked_and_may_be_left_out(demo: Asked) -> None:
    wish = BlendWish("white rice flour, fonio flour, potato starch", match="F2")
    (problem,) = choose_blend(wish, demo).problems
    assert (problem.code, problem.where, problem.read) == (
        "flour-unknown",
        "--from 2",
        "fonio flour",
    )
    left = choose_blend(wish, answered(demo, f"--from 2={problem.options[0].line}"))
    assert left.exit_code == 0
    assert len(left.result.composition) == 2


def test_a_slip_of_the_keys_is_asked_back_and_never_taken(demo: Asked) -> None:
    (problem,) = choose_blend(BlendWish("buckweat flour, potato starch", match="F2"), demo).problems
    assert problem.code == "flour-which"
    assert problem.options[0].line == "buckwheat flour"


def test_what_is_no_flour_is_not_blended(demo: Asked) -> None:
    answer = choose_blend(BlendWish("white rice flour, caster sugar", match="F2"), demo)
    assert codes(answer) == ["not-a-flour"]


def test_a_bare_grain_is_read_as_its_flour_and_said(demo: Asked) -> None:
    answer = choose_blend(BlendWish("millet, sorghum, potato starch", match="F2"), demo)
    assert list(answer.result.composition)[:2] == ["flour-millet", "flour-sorghum-whole"]
    told = [n.text for n in answer.notices if n.code == "flour-read-as"]
    assert len(told) == 2


def test_the_keys_of_an_answer_may_be_typed_back(demo: Asked) -> None:
    named = choose_blend(BlendWish(FLOURS, match="F2"), demo).result
    keyed = choose_blend(BlendWish(", ".join(named.composition), match="F2"), demo).result
    assert list(keyed.composition) == list(named.composition)
    assert [part.mass_g for part in keyed.parts] == [part.mass_g for part in named.parts]
    assert keyed.names["starch-corn"] == "maize starch"


def test_a_blank_composition_is_asked_and_counts_for_nothing(demo: Asked) -> None:
    wish = BlendWish("white rice flour, green banana flour, potato starch", match="F2")
    answer = choose_blend(wish, demo)
    (problem,) = answer.problems
    assert (problem.code, problem.where) == ("composition-blank", "--without")
    assert answer.result.composition["flour-green-banana"]["protein"] is None
    left = choose_blend(wish, answered(demo, f"--without={problem.options[0].line}"))
    assert left.exit_code == 0
    assert left.result.without == ("flour-green-banana",)


def test_one_blank_may_leave_its_property_out_of_the_match(demo: Asked) -> None:
    wish = BlendWish("white rice flour, arborio rice, potato starch", match="F2")
    (problem,) = choose_blend(wish, demo).problems
    assert [option.line for option in problem.options][1] == "fibre"
    left = choose_blend(wish, answered(demo, "--without=fibre"))
    assert left.exit_code == 0
    assert list(left.result.target) == ["protein", "fat"]


def test_a_suppliers_sheet_fills_the_blank(own_demo: Asked) -> None:
    assert own_demo.book is not None
    folder = own_demo.book / "suppliers"
    folder.mkdir()
    (folder / "banana.txt").write_text(SHEET, encoding="utf-8")
    wish = BlendWish("white rice flour, green banana flour, potato starch", match="F2")
    answer = choose_blend(wish, own_demo)
    assert answer.exit_code == 0, answer.problems
    assert answer.result.composition["flour-green-banana"]["protein"] == pytest.approx(3.6)


def test_the_same_flour_twice_is_taken_once(demo: Asked) -> None:
    answer = choose_blend(BlendWish("teff flour, teff, potato starch", match="F2"), demo)
    assert len(answer.result.composition) == 2
    assert "flour-twice" in [notice.code for notice in answer.notices]


@pytest.mark.parametrize(
    ("wish", "code"),
    [
        (BlendWish(FLOURS), "no-aim"),
        (BlendWish("", match="F2"), "no-flours"),
        (BlendWish(FLOURS, match="S1"), "no-blend"),
        (BlendWish(FLOURS, want="taste 6"), "want-unread"),
        (BlendWish(FLOURS, want="protein 6", also=("water",)), "want-missing"),
        (BlendWish(FLOURS, match="F2", also=("taste",)), "property-unknown"),
        (BlendWish(FLOURS, match="F2", also=("price",)), "price-is-a-limit"),
        (BlendWish(FLOURS, match="F2", without=("blarg",)), "without-unknown"),
        (BlendWish(FLOURS, match="F2", limits=("blarg",)), "limit-unread"),
        (BlendWish(FLOURS, match="F2", total_g=105.5), "total-off-scale"),
        (BlendWish(FLOURS, match="F2", total_g=90_000, step_g=0.1), "too-many-steps"),
        (BlendWish("teff flour, fonio", match="F2"), "flour-unknown"),
    ],
    ids=lambda value: value if isinstance(value, str) else "",
)
def test_what_cannot_be_used_is_asked_with_exit_3(demo: Asked, wish: BlendWish, code: str) -> None:
    answer = choose_blend(wish, demo)
    assert code in codes(answer)
    assert answer.exit_code == 3
    assert answer.result.parts == ()


def test_a_total_that_the_scale_shows_is_offered(demo: Asked) -> None:
    wish = BlendWish(FLOURS, match="F2", total_g=105.5)
    (problem,) = choose_blend(wish, demo).problems
    settled = choose_blend(wish, answered(demo, f"--total={problem.options[0].line}"))
    assert settled.result.total_g == 106


def test_a_formulas_odd_total_goes_to_the_nearest_gram_and_is_said(
    demo: Asked, write: Callable[[str], str]
) -> None:
    text = "Test\n\n40.3 g white rice flour\n30 g potato starch\n100 g caster sugar\n"
    answer = choose_blend(BlendWish(FLOURS, match=write(text)), demo)
    assert answer.result.total_g == 70
    assert "total-to-the-scale" in [notice.code for notice in answer.notices]


def test_a_question_about_a_flour_of_the_formula_stops_the_blend(
    demo: Asked, write: Callable[[str], str]
) -> None:
    text = "Test\n\n40 g rice flour\n30 g potato starch\n100 g caster sugar\n"
    answer = choose_blend(BlendWish(FLOURS, match=write(text)), demo)
    assert answer.exit_code == 3
    assert answer.problems[0].where == "line 3"
    settled = choose_blend(
        BlendWish(FLOURS, match=write(text)), answered(demo, "line 3=40 g white rice flour")
    )
    assert settled.exit_code == 0


def test_a_flour_of_the_formula_without_grams_is_asked(
    demo: Asked, write: Callable[[str], str]
) -> None:
    text = "Test\n\n40 g white rice flour\nsome potato starch\n100 g caster sugar\n"
    answer = choose_blend(BlendWish(FLOURS, match=write(text)), demo)
    assert answer.exit_code == 3


def test_a_filling_is_no_part_of_the_blend_that_is_matched(
    demo: Asked, write: Callable[[str], str]
) -> None:
    text = "Test\n\n60 g white rice flour\n40 g potato starch\n\nFilling:\n30 g maize starch\n"
    result = choose_blend(BlendWish(FLOURS, match=write(text)), demo).result
    assert result.match is not None
    assert result.match.total_g == 100


def test_lines_of_one_flour_count_together(demo: Asked, write: Callable[[str], str]) -> None:
    text = "Test\n\n60 g white rice flour\n40 g potato starch\n20 g white rice flour\n"
    result = choose_blend(
        BlendWish(FLOURS, match=write(text)),
        answered(demo, "line 5=20 g white rice flour, for later"),
    ).result
    if result.match is not None:
        assert result.match.total_g == 120


def test_the_missing_flour_need_not_be_named_as_missing(demo: Asked) -> None:
    with_words = choose_blend(WITHOUT_TEFF, demo)
    without_words = choose_blend(replace(WITHOUT_TEFF, without=()), demo)
    assert with_words.result.parts == without_words.result.parts
    assert "nothing-to-leave-out" not in [notice.code for notice in with_words.notices]


def test_a_count_of_flours_may_be_an_option_or_words(demo: Asked) -> None:
    by_option = choose_blend(replace(WITHOUT_TEFF, most_flours=4), demo).result
    by_words = choose_blend(
        replace(WITHOUT_TEFF, limits=(*WITHOUT_TEFF.limits, "at most 4 flours")), demo
    ).result
    assert len(by_option.parts) == 4
    assert by_option.distance == by_words.distance


def test_a_little_of_a_flour_is_not_worth_opening_its_bag(demo: Asked) -> None:
    result = choose_blend(replace(WITHOUT_TEFF, least_g=5.0), demo).result
    assert min(part.mass_g for part in result.parts) >= 5


@pytest.mark.parametrize("number", [float("nan"), float("inf"), -1.0])
def test_what_is_no_number_is_refused_with_its_option(demo: Asked, number: float) -> None:
    bare = BlendWish(FLOURS, match="F2")
    wishes = (
        replace(bare, total_g=number),
        replace(bare, step_g=number),
        replace(bare, least_g=number),
        replace(bare, most_price_per_kg=number),
    )
    for wish in wishes:
        with pytest.raises(InputError, match="no number of 0 or more"):
            choose_blend(wish, demo)


def test_an_answer_that_is_no_number_is_refused(demo: Asked) -> None:
    with pytest.raises(InputError, match="'nan' is no number"):
        choose_blend(BlendWish(FLOURS, match="F2"), answered(demo, "--total=nan"))


def test_signs_that_turn_the_writing_round_do_not_come_back(demo: Asked) -> None:
    wish = BlendWish("white \u202erice flour, potato\u200b starch", match="F2")
    result = choose_blend(wish, demo).result
    assert list(result.names.values()) == ["white rice flour", "potato starch"]
