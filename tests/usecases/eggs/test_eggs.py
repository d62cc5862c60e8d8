"""Eggs of orders, tortes and formulas: counts, bowls, left-overs, and what is asked or refused."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from krume.usecases import Answer, Asked, EggsResult, EggsWish, eggs_of
from krume.usecases.eggs.result import no_eggs
from tests.agreement import agrees

COVERS = ("result", "rows", "wanted")
PLAIN = "Angel\nEggs: EU sizes\n\n100 g white rice flour\n250 g caster sugar\n400 g egg white\n"


def eggs(asked: Asked, *names: str, **wish: object) -> Answer[EggsResult]:
    return eggs_of(names, EggsWish(**wish), asked)  # type: ignore[arg-type]


def counts(answer: Answer[EggsResult]) -> dict[str, int]:
    assert answer.exit_code == 0
    return {buy.size: buy.count for buy in answer.result.buy}


@pytest.mark.source("reference-book", "order 101: eggs")
def test_order_101_takes_eight_eggs_and_leaves_three_whites(demo: Asked) -> None:
    result = eggs(demo, "101").result
    assert agrees(result.buy[0].count, "8") and result.proven
    white, yolk = result.left
    assert agrees(white.mass_g, "100.5") and white.taken_g == pytest.approx(60.0)
    assert (yolk.part, yolk.count) == ("yolk", 0.5)
    assert result.crack[0].text == "8 EU M: 5 go in whole, 3 separated for 2.5 yolks"
    assert [(row.formula, row.text) for row in result.formulas] == [
        ("F1", "5 EU M, 255 g"), ("C1", "2.5 EU M yolks: weigh 43.8 g"),
    ]  # fmt: skip


@pytest.mark.source("reference-book", "order 102: eggs")
def test_order_102_takes_nine_medium_and_four_large(demo: Asked) -> None:
    found = counts(eggs(demo, "102"))
    assert agrees(found["eu-m"], "9") and agrees(found["eu-l"], "4")


@pytest.mark.source("reference-book", "twelve tortes: eggs")
def test_twelve_tortes_leave_1005_g_of_white_and_405_after_the_buttercream(demo: Asked) -> None:
    result = eggs(demo, "T1*12").result
    assert agrees(result.crack[0].whole, "60") and agrees(result.crack[0].yolks, "30")
    (left,) = result.left
    assert (
        agrees(left.mass_g, "1005") and agrees(left.taken_g, "600") and agrees(left.left_g, "405")
    )
    own, offer = result.takers
    assert own.is_ordered and own.heat_c == 71.0 and own.left_g == pytest.approx(405.0)
    assert (offer.formula, offer.batches, offer.is_ordered) == ("C5", 3.0, False)
    assert offer.left_g == pytest.approx(45.0)
    (pack,) = result.packs
    assert (pack.mass_g, pack.saved_g) == pytest.approx((600.0, 600.0))
    assert (pack.buy_g, pack.heat_c) == (600.0, 71.0)
    assert any("71 °C" in caution for caution in result.cautions)


def test_a_torte_twelve_times_is_an_order_of_twelve(
    demo: Asked, write: Callable[[str], str]
) -> None:
    text = "Order 12\nDate: Saturday 2027-06-12\nHand-over: 09:00\n\n12 T1\n"
    order, torte = eggs(demo, write(text)).result, eggs(demo, "T1*12").result
    assert order.buy == torte.buy and order.packs == torte.packs
    assert [row.text for row in order.formulas] == [row.text for row in torte.formulas]


def test_orders_of_one_week_share_their_eggs(demo: Asked) -> None:
    assert counts(eggs(demo, "101", "102")) == {"eu-m": 17, "eu-l": 4}


def test_ten_medium_in_the_house_and_large_in_the_shop(demo: Asked) -> None:
    answer = eggs(demo, "101", "102", have=("10 EU M",), shop=("EU L",), packs=(6, 10))
    assert counts(answer) == {"eu-l": 10}
    (buy,) = answer.result.buy
    assert [(pack.holds, pack.count) for pack in buy.packs] == [(10, 1)] and buy.over == 0
    kinds = {way.kind for row in answer.result.formulas for way in row.filled}
    assert "weighed" in kinds
    for row in answer.result.formulas:
        for way in row.filled:
            assert abs(way.off_pct) <= 5.0
    assert sum(way.bowls for row in answer.result.formulas for way in row.filled) == 6


def test_every_bowl_adds_up_to_what_its_formula_wants(demo: Asked) -> None:
    for row in eggs(demo, "101", "102", have=("7 EU L",), shop=("EU M",)).result.formulas:
        grams = sum(way.bowls * way.mass_g for way in row.filled)
        assert grams == pytest.approx(row.mass_g, rel=0.05)
        assert row.spread_g is not None and row.likely_half_g is not None
        assert row.spread_g.best - row.spread_g.low >= row.likely_half_g - 1e-6


def test_a_tolerance_of_nothing_weighs_every_other_egg(demo: Asked) -> None:
    wish = {"have": ("4 EU M",), "shop": ("EU L",)}
    loose, tight = eggs(demo, "F1", **wish), eggs(demo, "F1", **wish, tolerance_pct=0.0)
    assert loose.result.formulas[0].text == "1 EU L + 4 EU M, 264 g (+3.5 %)"
    assert tight.result.formulas[0].filled[0].kind == "weighed"


def test_sugared_yolk_takes_its_sugar_off_the_formula(demo: Asked) -> None:
    wish = {"have": ("300 g sugared yolk",), "sugared_pct": 12.5}
    (row,) = eggs(demo, "C1*2", **wish).result.formulas
    (way,) = row.filled
    assert (way.kind, way.liquid_g, way.sugar_off_g) == ("liquid", 100.0, 12.5)
    assert way.text == "100 g sugared yolk, and 12.5 g less sugar in the bowl"
    assert row.spread_g is None


def test_a_pack_in_the_house_is_bought_less(demo: Asked) -> None:
    result = eggs(demo, "C5", have=("50 g pasteurised white",)).result
    (pack,) = result.packs
    assert (pack.mass_g, pack.from_house_g, pack.buy_g) == (120.0, 50.0, 70.0)
    assert result.buy == () and result.proven


def test_no_pack_goes_into_a_whipped_white_and_it_is_said(demo: Asked) -> None:
    result = eggs(demo, "F5", have=("900 g pasteurised white",)).result
    assert result.buy[0].count == 5 and result.packs == ()
    assert any("whips more slowly" in caution for caution in result.cautions)


def test_the_yolk_of_a_chiffon_is_offered_to_a_custard_of_the_book(demo: Asked) -> None:
    result = eggs(demo, "F5").result
    (taker,) = result.takers
    assert (taker.formula, taker.batches, taker.mass_g) == ("C1", 0.5, 17.5)
    assert taker.text == (
        "Half a batch more of C1 would take 17.5 g yolk and want 26.2 g beside it, boiled."
    )


def test_a_formula_without_eggs_wants_none(demo: Asked) -> None:
    answer = eggs(demo, "C2")
    assert answer.exit_code == 0
    assert answer.result == replace(no_eggs(("Set yoghurt cream",)), proven=True)


def test_whites_in_grams_are_of_the_studios_eggs_or_asked(
    demo: Asked, write: Callable[[str], str], tmp_path: Path
) -> None:
    assert counts(eggs(demo, write(PLAIN))) == {"eu-m": 12}
    bare = Asked(book=tmp_path / "none")
    asked = eggs(bare, write(PLAIN))
    assert asked.exit_code == 3
    assert [(p.code, p.where) for p in asked.problems] == [("egg-size-missing", "--shop")]
    assert counts(eggs(bare, write(PLAIN), shop=("EU L",))) == {"eu-l": 10}


def test_eggs_of_no_size_are_asked_at_their_line(write: Callable[[str], str]) -> None:
    path = write("Sponge\n\n5 eggs\n100 g white rice flour\n100 g caster sugar\n")
    bare = Asked(book=Path(path).parent / "none")
    answer = eggs(bare, path)
    assert answer.exit_code == 3
    assert [(p.code, p.where) for p in answer.problems] == [("egg-size-missing", "line 3")]
    assert answer.result.buy == ()
    assert counts(eggs(replace(bare, answers=("line 3=5 eggs, EU M",)), path)) == {"eu-m": 5}


def test_a_range_of_eggs_is_bought_at_its_upper_end(
    demo: Asked, write: Callable[[str], str]
) -> None:
    path = write("Sponge\nEggs: EU sizes\n\n2-3 egg yolks, medium\n100 g white rice flour\n")
    answer = eggs(demo, path)
    assert counts(answer) == {"eu-m": 3}
    assert "egg-range" in {notice.code for notice in answer.notices}


@pytest.mark.parametrize(
    ("wish", "code", "where"),
    [
        ({"have": ("some eggs",)}, "eggs-unread", "--have"),
        ({"have": ("10 EU M", "ten")}, "eggs-unread", "--have 2"),
        ({"shop": ("goose",)}, "eggs-unread", "--shop"),
    ],
)
def test_what_cannot_be_read_is_asked_at_its_option(
    demo: Asked, wish: dict[str, object], code: str, where: str
) -> None:
    answer = eggs(demo, "F1", **wish)
    assert answer.exit_code == 3
    assert [(p.code, p.where) for p in answer.problems] == [(code, where)]
    mended = replace(demo, answers=(f"{where}=EU M" if "shop" in where else f"{where}=10 EU M",))
    assert eggs(mended, "F1", **wish).exit_code == 0


def test_too_few_eggs_and_nothing_to_buy_is_no_answer(demo: Asked) -> None:
    answer = eggs(demo, "101", have=("3 EU M",), shop=("none",))
    assert answer.exit_code == 4
    (problem,) = answer.problems
    assert problem.code == "eggs-short" and "5 EU M more are wanted" in problem.ask
    (option,) = problem.options
    mended = replace(demo, answers=(f"--shop={option.line}",))
    assert counts(eggs(mended, "101", have=("3 EU M",), shop=("none",))) == {"eu-m": 5}


def test_an_order_is_named_once_and_a_formula_as_often_as_it_is_wanted(demo: Asked) -> None:
    twice = eggs(demo, "101", "101")
    assert twice.exit_code == 3
    assert [(p.code, p.where) for p in twice.problems] == [("order-twice", "ORDER")]
    assert counts(eggs(demo, "F1", "F1")) == {"eu-m": 10}


def test_a_class_wants_the_eggs_of_all_its_kits(demo: Asked) -> None:
    (row,) = eggs(demo, "CLASS7").result.formulas
    assert (row.formula, row.count, row.batches) == ("F3", 40, 10)


def test_half_a_batch_is_its_share_of_the_eggs(demo: Asked) -> None:
    (row,) = eggs(demo, "C1*0.5").result.formulas
    assert (row.count, row.mass_g, row.batches) == (2.5, 43.75, 0.5)


def test_a_torte_that_cannot_stand_is_no_answer(demo: Asked, write: Callable[[str], str]) -> None:
    path = write(
        "Low\nRing: 22 x 3 cm\n\n2 layers of F4, 12 mm, trimmed to 21 cm\n"
        "14 mm C2 between the layers\n"
    )
    answer = eggs(demo, path)
    assert answer.exit_code in (3, 4) and answer.problems and answer.result.buy == ()


def test_raw_white_never_takes_the_place_of_pasteurised_unasked(demo: Asked) -> None:
    result = eggs(demo, "101").result
    (pack,) = result.packs
    assert (pack.mass_g, pack.buy_g, pack.saved_g) == (60.0, 60.0, 60.0)
    own = result.takers[0]
    assert "can take 60 g white of it, heated to 71 °C, in place of pasteurised" in own.text


def test_with_two_sizes_it_is_said_within_what_no_fewer_do(demo: Asked) -> None:
    assert eggs(demo, "F4", "C1*3").result.within == "each bowl from eggs of its own size"
    assert eggs(demo, "F1*12").result.within == ""


def test_egg_in_grams_comes_out_of_eggs_that_are_cracked_anyway(
    demo: Asked, write: Callable[[str], str]
) -> None:
    text = (
        "Mixed eggs\nEggs: EU sizes\n\n60 g white rice flour\n40 g potato starch\n"
        "3 eggs, medium\n2 egg yolks, large\n20 g egg white\n130 g caster sugar\n"
    )
    result = eggs(demo, write(text)).result
    assert sum(buy.count for buy in result.buy) == 5
    assert sum(left.mass_g for left in result.left if left.part == "white") == pytest.approx(61.0)


def test_no_eggs_in_the_house_and_none_in_the_shop_is_no_answer(demo: Asked) -> None:
    answer = eggs(demo, "F1", shop=("none",))
    assert answer.exit_code == 4
    assert answer.problems[0].code == "eggs-short"
