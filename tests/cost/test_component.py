"""A cake is paid whole, a cream by the grams that go in, and each is rounded once."""

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction

from hypothesis import given
from hypothesis import strategies as st

from krume.cost import Need, component
from tests.cost.lists import eggs, prices, weighed

LINES = (weighed(500, "caster sugar"), weighed(500, "whole milk"))
CAKE = Need("F", "Cake", "cake", LINES, 1.0, 700.0, 900.0)
CREAM = Need("C", "Cream", "cream", LINES, 1.0, 300.0, 1000.0)


def test_a_cake_is_paid_whole_and_its_trim_is_part_of_that() -> None:
    made = component(CAKE, prices())
    assert (made.cost, made.over_g) == (Decimal("1.30"), 200.0)
    assert made.over_cost == Decimal("0.29")  # 1.30 x 200 / 900


def test_a_cream_is_paid_by_what_goes_in_and_the_rest_of_the_half_batch_is_beside_it() -> None:
    made = component(CREAM, prices())
    assert (made.cost, made.over_g) == (Decimal("0.39"), 200.0)
    assert made.over_cost == Decimal("0.26")  # 1.30 x 200 / 1000


def test_a_cream_that_is_used_up_leaves_nothing() -> None:
    made = component(replace(CREAM, needed_g=500.0), prices())
    assert (made.cost, made.over_g, made.over_cost) == (Decimal("0.65"), 0.0, Decimal("0.00"))


def test_what_is_not_known_of_it_leaves_no_head() -> None:
    assert component(replace(CAKE, batches=None), prices()).cost is None
    assert component(replace(CREAM, needed_g=None), prices()).cost is None
    assert component(replace(CREAM, batch_g=None), prices()).over_cost is None
    assert component(replace(CAKE, lines=()), prices()).cost is None
    unpriced = replace(CAKE, lines=(*LINES, weighed(1, "millet flour")))
    assert component(unpriced, prices()).cost is None


def test_a_whole_cake_has_a_head_though_nobody_knows_what_it_weighs_baked() -> None:
    made = component(replace(CAKE, needed_g=None, batch_g=None), prices())
    assert (made.cost, made.over_g, made.over_cost) == (Decimal("1.30"), None, None)


def test_an_open_line_leaves_no_head_and_asks_no_price() -> None:
    lines = (*LINES, weighed(1, "millet flour", number=7))
    made = component(replace(CAKE, lines=lines, open_lines=frozenset({7})), prices())
    assert made.cost is None
    assert [costed.missing for costed in made.lines] == [None, None, None]


def test_a_line_with_a_question_on_it_leaves_no_head_though_it_has_a_price() -> None:
    lines = (*LINES, weighed(20, "butter", number=7))
    assert component(replace(CAKE, lines=lines), prices()).cost == Decimal("1.48")
    open_line = replace(CAKE, lines=lines, open_lines=frozenset({7}))
    assert component(open_line, prices()).cost is None


def test_the_lines_of_a_cream_add_up_to_its_head() -> None:
    made = component(replace(CREAM, lines=(*LINES, eggs(3))), prices())
    shares = [made.line_share(costed.line) for costed in made.lines]
    assert None not in shares
    total = sum((share for share in shares if share is not None), Fraction(0))
    assert made.cost is not None
    assert abs(Fraction(made.cost) - total) <= Fraction(1, 200)


@given(st.integers(1, 10**6), st.integers(1, 10**5))
def test_double_prices_double_the_material_to_the_rounding(grams: int, cents: int) -> None:
    head = "item,price,per\n"
    need = replace(CAKE, lines=(weighed(float(grams), "butter"),))
    once, twice = (
        component(need, prices(text=f"{head}butter,{Decimal(n * cents) / 100},kg\n")).cost
        for n in (1, 2)
    )
    assert once is not None
    assert twice is not None
    assert abs(2 * once - twice) <= Decimal("0.01")


@given(st.floats(0.001, 5000, allow_nan=False))
def test_what_is_made_is_enough_and_less_than_half_a_batch_over(needed_g: float) -> None:
    over_g = component(replace(CREAM, needed_g=needed_g), prices()).over_g
    assert over_g is not None
    assert -1e-6 <= over_g < 1000 if needed_g < 500 else -1e-6 <= over_g < 500
