"""The fewest eggs, compared with trying everything; and the laws every answer keeps."""

import math
from collections.abc import Iterator
from dataclasses import replace
from itertools import product

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from krume.plan import EggNeed, EggStock, Liquid, crack, left_over, missing_eggs
from krume.plan.eggs import cracking
from tests.agreement import agrees
from tests.plan.eggs.needs import C1, F1, F3, F4, F7, MASSES, need

SIZES = ("eu-s", "eu-m", "eu-l")


def every_way(
    need: EggNeed, house: dict[str, int], shop: tuple[str, ...], near: float
) -> Iterator[dict[str, float]]:
    """Eggs by size that fill one bowl, by trying all counts of two sizes."""
    may = {s for s, n in house.items() if n} | ({need.size} if need.size in shop else set(shop))
    if need.size in may:
        yield {str(need.size): float(need.count or 0)}
    for one, other in product(sorted(may), repeat=2):
        for a, b in product(range(9), repeat=2):
            if one == other and (b or one == need.size):
                continue
            eggs = {one: float(a), **({other: float(b)} if one != other else {})}
            short = need.mass_g - sum(n * MASSES[s, need.part] for s, n in eggs.items())
            used = {s for s, n in eggs.items() if n}
            if used and used != {need.size} and abs(short) <= need.mass_g * near + 1e-9:
                yield eggs
            if 1e-9 < short < MASSES[one, need.part] - 1e-9 and used | {one} != {need.size}:
                yield eggs | {one: a + short / MASSES[one, need.part]}


def fewest(needs: list[EggNeed], house: dict[str, int], shop: tuple[str, ...], near: float) -> int:
    """Fewest eggs bought over all ways to fill all bowls; -1 where there is none."""
    each = [
        list({tuple(sorted(w.items())): w for w in every_way(n, house, shop, near)}.values())
        for n in needs
        for _ in range(round(n.batches))
    ]
    parts = [n.part for n in needs for _ in range(round(n.batches))]
    best = -1
    for ways in product(*each):
        bought = 0
        for size in SIZES:
            used = {part: sum(w.get(size, 0.0) for w, p in zip(ways, parts, strict=True)
                              if p == part) for part in ("whole", "yolk", "white")}  # fmt: skip
            eggs = math.ceil(used["whole"] + max(used["yolk"], used["white"]) - 1e-6)
            more = max(0, eggs - house.get(size, 0))
            bought = bought + more if size in shop or not more else 10**6
        best = bought if bought < 10**6 and not 0 <= best <= bought else best
    return best


@st.composite
def cases(draw: st.DrawFn) -> tuple[list[EggNeed], dict[str, int], tuple[str, ...], float]:
    """Up to three small needs, some eggs of two sizes in the house, and a shop."""
    sizes = draw(st.lists(st.sampled_from(SIZES), min_size=2, max_size=2, unique=True))
    needs = [
        need(
            f"f{n}",
            draw(st.sampled_from(["whole", "yolk", "white"])),
            draw(st.integers(1, 3)),
            draw(st.sampled_from(sizes)),
            draw(st.integers(1, 2)) if n == 0 else 1,
        )
        for n in range(draw(st.integers(1, 3)))
    ]
    house = {draw(st.sampled_from(sizes)): draw(st.integers(0, 4))}
    shop = tuple(draw(st.lists(st.sampled_from(sizes), max_size=2, unique=True)))
    return needs, house, shop, draw(st.sampled_from([0.0, 0.05, 0.15]))


@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(cases())
def test_no_way_to_fill_the_bowls_buys_fewer_eggs(
    case: tuple[list[EggNeed], dict[str, int], tuple[str, ...], float],
) -> None:
    needs, house, shop, near = case
    found = crack(needs, EggStock(tuple(house.items()), shop, (), near))
    best = fewest(needs, house, shop, near)
    if found is None:
        assert best == -1
    else:
        assert sum(found.bought.values()) == best
        assert found.proven


@settings(max_examples=60, deadline=None)
@given(cases())
def test_what_is_cracked_covers_every_need_and_the_rest_is_left(
    case: tuple[list[EggNeed], dict[str, int], tuple[str, ...], float],
) -> None:
    needs, house, shop, near = case
    found = crack(needs, EggStock(tuple(house.items()), shop, (), near))
    if found is None:
        return
    left = left_over(found)
    for size in found.sizes:
        count, whole = found.count_of(size), found.used(size, "whole")
        assert count <= house.get(size, 0) + found.bought.get(size, 0)
        for part in ("yolk", "white"):
            rest = sum(x.count for x in left if x.size == size and x.part in (part, "whole"))
            assert count - whole - found.used(size, part) == pytest.approx(rest, abs=1e-5)
            assert rest >= 0


@pytest.mark.parametrize("stock", [EggStock(), EggStock(shop=("eu-m",))])
def test_nine_yolks_and_eight_whites_are_nine_eggs_and_one_white(stock: EggStock) -> None:
    needs = [need("torte", "yolk", 9), need("roll", "white", 8)]
    found = crack(needs, stock)
    assert found is not None and found.bought == {"eu-m": 9} and found.proven
    (white,) = left_over(found)
    assert (white.part, white.count) == ("white", 1.0)


@pytest.mark.source("reference-book", "twelve tortes: eggs")
def test_twelve_tortes_take_sixty_eggs_and_thirty_yolks() -> None:
    found = crack([replace(F1, batches=12.0), replace(C1, batches=6.0)])
    assert found is not None
    assert agrees(found.used("eu-m", "whole"), "60") and agrees(found.used("eu-m", "yolk"), "30")
    (white,) = left_over(found)
    assert agrees(white.count * 33.5, "1005")


def test_ten_of_one_size_in_the_house_and_another_in_the_shop() -> None:
    stock = EggStock((("eu-m", 10),), ("eu-l",), (), 0.05)
    needs = [F1, replace(C1, batches=0.5), F3, F4, F7]
    found = crack(needs, stock)
    assert found is not None and found.bought == {"eu-l": 10} and found.count_of("eu-m") == 10
    tight = crack(needs, replace(stock, near_enough_fraction=0.0))
    assert tight is not None and tight.bought["eu-l"] >= 10


def test_a_kitchen_with_enough_of_its_own_buys_nothing_and_changes_nothing() -> None:
    found = crack([F1, F4], EggStock((("eu-m", 5), ("eu-l", 6), ("eu-s", 9)), ()))
    assert found is not None and found.bought == {}
    assert {each.filling.kind for each in found.filled} == {"own"}


def test_a_pack_stands_in_only_where_it_saves_an_egg() -> None:
    stock = EggStock((("eu-m", 10),), (), (Liquid("yolk", 500.0),))
    found = crack([F1, C1], stock)
    assert found is not None and found.liquid_g == (0.0,)
    short = crack([F1, C1], replace(stock, house=(("eu-m", 5),)))
    assert short is not None and short.liquid_g == (87.5,)


def test_yolks_of_eggs_cracked_for_their_whites_go_before_a_pack() -> None:
    stock = EggStock(shop=("eu-m",), liquids=(Liquid("yolk", None),))
    found = crack([need("F5", "white", 10), C1], stock)
    assert found is not None and found.bought == {"eu-m": 10} and found.liquid_g == (0.0,)


def test_a_pack_gives_no_more_than_it_holds() -> None:
    three = replace(C1, batches=3.0)
    stock = EggStock(shop=("eu-m",), liquids=(Liquid("yolk", 180.0),))
    found = crack([three], stock)
    assert found is not None and found.liquid_g == (175.0,) and found.bought == {"eu-m": 5}


@pytest.mark.parametrize(
    ("first", "then", "days", "eggs"),
    [("yolk", "white", 4, 9), ("yolk", "white", 5, 17), ("white", "yolk", 2, 9),
     ("white", "yolk", 3, 17)],
)  # fmt: skip
def test_a_loose_part_serves_a_later_day_while_it_keeps(
    first: str, then: str, days: int, eggs: int
) -> None:
    found = crack([need("a", first, 9), need("b", then, 8, day=days)])
    assert found is not None and found.bought == {"eu-m": eggs}


def test_what_is_missing_is_counted_in_the_formulas_own_eggs() -> None:
    stock = EggStock((("eu-m", 3),), ())
    assert crack([F1, F4], stock) is None
    assert missing_eggs([F1, F4], stock) == {"eu-l": 4, "eu-m": 2}


def test_nothing_wanted_is_nothing_cracked() -> None:
    found = crack([])
    assert found is not None and found.cracked == () and found.bought == {}


def test_eggs_in_grams_without_a_size_come_from_what_there_is() -> None:
    white = EggNeed("angel", "white", 400.0)
    assert crack([white]) is None
    found = crack([white], EggStock(shop=("eu-l",), near_enough_fraction=0.05))
    assert found is not None and found.bought == {"eu-l": 10}


def test_an_answer_that_does_not_hold_is_not_given(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(cracking, "_count", lambda *_: 4)
    with pytest.raises(cracking.EggsError, match="more whole eggs are used"):
        crack([F1])


def test_the_same_question_gets_the_same_answer() -> None:
    stock = EggStock((("eu-m", 6), ("eu-s", 5)), ("eu-l",), (), 0.05)
    assert crack([F1, F3, C1], stock) == crack([F1, F3, C1], stock)
