"""Needs, packs and bowls by their own arithmetic."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.plan import EggStock, Liquid, bowls, each_g
from tests.plan.eggs.needs import C1, MASSES


@pytest.mark.parametrize(("key", "mass_g"), MASSES.items())
def test_planning_masses_are_those_of_the_studio(key: tuple[str, str], mass_g: float) -> None:
    assert each_g(*key) == mass_g


@given(st.floats(0.05, 60.0).map(lambda x: round(x, 2)))
def test_the_bowls_of_a_need_hold_all_its_batches(batches: float) -> None:
    need = replace(C1, batches=batches)
    found = bowls(need)
    assert sum(b.times * b.mass_g for b in found) == pytest.approx(need.total_g, rel=1e-6)
    assert sum(b.times * (b.count or 0) for b in found) == pytest.approx(5 * batches, rel=1e-6)


def test_nothing_is_filled_for_no_batch() -> None:
    assert bowls(replace(C1, batches=0.0)) == ()


def test_sugared_yolk_is_yolk_and_sugar() -> None:
    pack = Liquid("yolk", 300.0, sugar_pct=10.0)
    assert pack.pack_g(87.5) == pytest.approx(97.222, abs=5e-4)
    assert pack.sugar_g(87.5) == pytest.approx(9.722, abs=5e-4)
    assert pack.name == "sugared yolk"
    assert Liquid("whole", None).name == "pasteurised whole egg"


def test_eggs_of_a_size_in_the_house_are_added_up() -> None:
    stock = EggStock(house=(("eu-m", 4), ("eu-l", 2), ("eu-m", 3)))
    assert (stock.in_house("eu-m"), stock.in_house("eu-s")) == (7, 0)
    assert not stock.is_plain and EggStock().is_plain
