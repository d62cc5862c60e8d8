"""Each head is rounded to the cent; a sum is the sum of rounded heads, or not known."""

from dataclasses import replace
from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.cost import Heads, Need, Planned, added, component, heads, missing_beside
from tests.cost.lists import prices, weighed

PLANNED = Planned(
    fixed_a_month=Decimal(620),
    tortes_a_month=Decimal(24),
    own_work_h=Decimal("2.2"),
    own_work_rate=Decimal(24),
    energy_kwh=Decimal("1.8"),
    boxes=Decimal(1),
    labels=Decimal(1),
)
CAKE = component(Need("F", "F", "cake", (weighed(1000, "butter"),), 1.0, 9.0, 9.0), prices())


def test_the_heads_of_one_torte() -> None:
    assert heads((CAKE,), PLANNED, prices(), tortes=1) == Heads(
        *(Decimal(n) for n in ("9.20", "52.80", "0.61", "2.46", "25.83"))
    )


def test_the_share_of_fixed_of_an_order_is_rounded_once() -> None:
    assert heads((CAKE,), PLANNED, prices(), tortes=4).fixed_share == Decimal("103.33")


def test_a_cream_alone_has_its_material_and_nothing_else() -> None:
    found = heads((CAKE,), PLANNED, prices(), tortes=0)
    assert (found.material, found.labour, found.direct, found.full) == (
        *(Decimal("9.20"), None, None, None),
    )


@pytest.mark.parametrize(
    ("name", "heads_without"),
    [
        ("fixed_a_month", {"fixed_share"}),
        ("tortes_a_month", {"fixed_share"}),
        ("own_work_h", {"labour"}),
        ("own_work_rate", {"labour"}),
        ("energy_kwh", {"energy"}),
        ("boxes", {"packaging"}),
        ("labels", {"packaging"}),
    ],
)
def test_a_planned_value_that_is_not_said_leaves_its_head_and_the_sums_unknown(
    name: str, heads_without: set[str]
) -> None:
    said: dict[str, Any] = {name: None}
    found = heads((CAKE,), replace(PLANNED, **said), prices(), tortes=1)
    names = ("material", "labour", "energy", "packaging", "fixed_share")
    assert {head for head in names if getattr(found, head) is None} == heads_without
    assert found.full is None


def test_a_box_without_a_price_is_asked_unless_none_is_taken() -> None:
    bare = prices(text="item,price,per\nbutter,9.20,kg\n")
    assert heads((CAKE,), PLANNED, bare, tortes=1).packaging is None
    assert [m.item for m in missing_beside(PLANNED, bare)] == [
        *("box and board", "label", "electricity")
    ]
    none = replace(PLANNED, boxes=Decimal(0), labels=Decimal(0), energy_kwh=Decimal(0))
    assert heads((CAKE,), none, bare, tortes=1).packaging == 0
    assert missing_beside(none, bare) == ()


def test_power_by_the_piece_is_no_price_of_power() -> None:
    odd = prices(text="item,price,per\nelectricity,0.34,each\n")
    assert heads((CAKE,), PLANNED, odd, tortes=1).energy is None


def test_no_formula_is_no_material() -> None:
    assert heads((), PLANNED, prices(), tortes=1).material is None


CENTS = st.integers(0, 10**6).map(lambda n: Decimal(n) / 100)


@given(st.tuples(CENTS, CENTS, CENTS, CENTS, CENTS))
def test_full_is_direct_and_fixed_and_never_less_than_any_head(
    found: tuple[Decimal, Decimal, Decimal, Decimal, Decimal],
) -> None:
    made = Heads(*found)
    assert made.direct is not None
    assert made.full == made.direct + found[4] == sum(found)
    assert made.full >= max(found)
    assert added(*found, None) is None


@given(st.integers(1, 50), st.integers(1, 10**5), st.integers(1, 10**4))
def test_labour_is_hours_times_rate_to_half_a_cent(tortes: int, hours: int, rate: int) -> None:
    planned = replace(PLANNED, own_work_h=Decimal(hours) / 1000, own_work_rate=Decimal(rate) / 100)
    found = heads((CAKE,), planned, prices(), tortes=tortes).labour
    assert found is not None
    wanted = Fraction(tortes * hours * rate, 100_000)
    assert abs(Fraction(found) - wanted) <= Fraction(1, 200)
