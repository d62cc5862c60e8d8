"""Limits that cannot hold together: the smallest set, in words, each with its least way out."""

from dataclasses import replace

import pytest

from krume.base import Problem
from krume.design import TypedLimit
from krume.usecases import Asked, BlendWish, choose_blend
from krume.usecases.blend.clash import limit_text
from tests.usecases.blends import FLOURS


def problems(demo: Asked, wish: BlendWish) -> tuple[Problem, ...]:
    """What a wish that cannot be met is told."""
    answer = choose_blend(wish, demo)
    assert answer.exit_code == 4
    assert not answer.result.parts
    return answer.problems


@pytest.mark.parametrize(
    "limits",
    [
        ("starch 60..70", "potato starch <= 20", "maize starch <= 10 g"),
        ("rice >= 80 g", "starch >= 30"),
        ("sweet rice 8.571..8.571",),
        ("starch 30..50; potato starch <= 10 g, maize starch <= 5 g",),
        ("protein >= 11.5", "buckwheat <= 16 g"),
        ("at most 2 flours", "rice >= 20", "starch >= 30", "sweet rice >= 5"),
        ("starch 50..30",),
        ("tapioca >= 5 g",),
    ],
    ids=lambda limits: limits[0],
)
def test_each_way_out_that_is_offered_opens_it(demo: Asked, limits: tuple[str, ...]) -> None:
    wish = BlendWish(FLOURS, match="F2", limits=limits)
    found = problems(demo, wish)
    offered = [(p.where, option.line) for p in found for option in p.options]
    assert offered
    for where, line in offered:
        again = replace(demo, answers=(f"{where}={line}",))
        assert choose_blend(wish, again).exit_code == 0, (where, line)


def test_limits_that_do_not_clash_are_not_named(demo: Asked) -> None:
    limits = ("buckwheat <= 16 g", "starch >= 60", "potato starch <= 20", "maize starch <= 10 g")
    found = problems(demo, BlendWish(FLOURS, match="F2", limits=limits))
    assert [problem.read for problem in found] == list(limits[1:])


def test_a_way_out_is_the_least_one(demo: Asked) -> None:
    limits = ("starch >= 60", "potato starch <= 20 g", "maize starch <= 10 g")
    first = problems(demo, BlendWish(FLOURS, match="F2", limits=limits))[0]
    assert first.options[0].line == "starch >= 28.57"
    tighter = replace(demo, answers=("--limit=starch >= 28.58",))
    assert choose_blend(BlendWish(FLOURS, match="F2", limits=limits), tighter).exit_code == 4


def test_a_share_between_two_steps_is_told_with_the_steps(demo: Asked) -> None:
    (problem,) = problems(demo, BlendWish(FLOURS, match="F2", limits=("sweet rice 8.3..8.4",)))
    assert problem.code == "limit-between-steps"
    assert [option.line for option in problem.options] == ["sweet rice 9 g", "sweet rice 8 g"]


def test_ends_that_run_backwards_are_not_turned_in_silence(demo: Asked) -> None:
    (problem,) = problems(demo, BlendWish(FLOURS, match="F2", limits=("starch 50..30",)))
    assert problem.code == "limit-backwards"
    assert problem.options[0].line == "starch 30..50"


def test_a_limit_on_a_flour_that_is_left_out_is_named(demo: Asked) -> None:
    wish = BlendWish(FLOURS, match="F2", limits=("millet >= 5 g",), without=("millet",))
    (problem,) = problems(demo, wish)
    assert problem.code == "limit-without-its-flour"
    assert "millet flour is left out" in problem.ask


def test_nothing_left_to_blend_is_no_answer(demo: Asked) -> None:
    wish = BlendWish("millet flour", match="F2", without=("millet",))
    assert [problem.code for problem in problems(demo, wish)] == ["no-flour-left"]


def test_a_price_that_nothing_can_keep_is_named(demo: Asked) -> None:
    found = problems(demo, BlendWish(FLOURS, match="F2", most_price_per_kg=2.0))
    assert [problem.where for problem in found] == ["--most-price"]
    assert found[0].options[0].line == "2.8"
    again = replace(demo, answers=("--most-price=2.8",))
    opened = choose_blend(BlendWish(FLOURS, match="F2", most_price_per_kg=2.0), again)
    assert [part.ingredient for part in opened.result.parts] == ["starch-corn"]


def test_what_the_house_has_is_no_limit_that_words_can_move(own_demo: Asked) -> None:
    assert own_demo.book is not None
    packs = "item,pack_g,where,stock_g\nwhite rice flour,1000,mill,30\npotato starch,1000,mill,20\n"
    (own_demo.book / "packs.csv").write_text(packs, encoding="utf-8")
    wish = BlendWish("white rice flour, potato starch", match="F2", by_stock=True)
    found = problems(own_demo, wish)
    assert {"--stock", "--total"} == {problem.where for problem in found}
    assert all(not problem.options for problem in found if problem.where == "--stock")
    enough = choose_blend(replace(wish, total_g=50.0), own_demo).result
    assert [part.mass_g for part in enough.parts] == [30, 20]


@pytest.mark.parametrize(
    ("limit", "text"),
    [
        (TypedLimit("", "", "share", "starch", "%", 30.0, 50.0), "starch 30..50"),
        (TypedLimit("", "", "share", "rice", "g", 25.0), "rice >= 25 g"),
        (TypedLimit("", "", "share", "rice", "g", None, 25.5), "rice <= 25.5 g"),
        (TypedLimit("", "", "share", "rice", "g", 9.0, 9.0), "rice 9 g"),
        (TypedLimit("", "", "parts", "flours", "flours", None, 4.0), "at most 4 flours"),
        (TypedLimit("", "", "property", "protein", "g in 100 g", 6.0), "protein >= 6"),
    ],
)
def test_a_limit_is_written_as_it_may_be_typed(limit: TypedLimit, text: str) -> None:
    assert limit_text(limit) == text


TWO_SETS = BlendWish(
    "tapioca starch, chickpea flour, teff flour",
    match="F2",
    total_g=100,
    limits=(
        "teff flour at most 10 %",
        "tapioca starch 7..16 g",
        "chickpea flour <= 27 g",
        "starch 27..51",
    ),
)


def test_two_sets_that_clash_have_a_way_on_that_ends_in_a_blend(demo: Asked) -> None:
    asked, steps = demo, 0
    while (answer := choose_blend(TWO_SETS, asked)).exit_code == 4:
        problem = next(p for p in answer.problems if p.options)
        kept = tuple(a for a in asked.answers if not a.startswith(f"{problem.where}="))
        asked = replace(asked, answers=(*kept, f"{problem.where}={problem.options[0].line}"))
        steps += 1
        assert steps < 5
    assert answer.exit_code == 0
    assert steps == 2


def test_what_clashes_next_is_told_with_the_first(demo: Asked) -> None:
    asks = [problem.ask for problem in problems(demo, TWO_SETS)]
    assert all("Moving it alone opens nothing: without it, " in ask for ask in asks)
    assert "chickpea flour at most 27 g" in asks[0]


def test_the_total_is_named_with_what_the_limits_come_to(demo: Asked) -> None:
    wish = BlendWish(
        "brown rice flour, millet flour, tapioca starch",
        match="F2",
        total_g=60,
        limits=("brown rice at most 8 g", "millet at most 2 %", "tapioca at most 15 %"),
    )
    for problem in problems(demo, wish):
        assert "in a blend of 60 g: together they leave room for 18.2 g." in problem.ask


def test_one_flour_is_one_flour(demo: Asked) -> None:
    wish = BlendWish(FLOURS, match="F2", limits=("at most 1 flour", "starch 30..50"))
    asks = " ".join(problem.ask for problem in problems(demo, wish))
    assert "at most 1 flour " in asks
    assert "1 flours" not in asks
