"""`krume.keep.moisture.slabs`: a torte as slabs, with every gram where it lies."""

from dataclasses import replace

import pytest

from krume.keep.moisture.slabs import Column, column_of, rate_of
from tests.build.studio import C3, torte_of
from tests.keep.moisture.studio import FAMILIES, holds, torte


def column(name: str, soak_mm: float = 6.0) -> Column:
    found = column_of(torte(name), holds(), FAMILIES, soak_mm=soak_mm)
    assert found is not None
    return found


def test_t1_is_nine_slabs_its_discs_parted_by_how_deep_the_syrup_stands() -> None:
    slabs = column("T1").slabs
    rates = [each.rate for each in slabs]
    assert rates == ["sponge", "sponge", "cream"] * 2 + ["sponge", "sponge", "fat"]
    assert [round(1e3 * each.thick_m, 6) for each in slabs[:3]] == [8.0, 6.0, 10.0]


def test_slabs_weigh_what_lies_over_their_area() -> None:
    whole = torte("T1")
    found = column("T1")
    grams = sum(each.mass for each in found.slabs) * found.area_cm2 / 10
    under = [x for x in whole.layers if x.role != "coat"]
    coat = whole.layers[-1]
    lid = (coat.mass_g or 0.0) / (coat.volume_ml or 1.0) * 0.4 * found.area_cm2
    assert grams == pytest.approx(sum(x.mass_g or 0.0 for x in under) + lid, rel=1e-9)


@pytest.mark.parametrize("soak_mm", [3.0, 9.0, 14.0, 50.0])
def test_how_deep_a_syrup_stands_moves_no_water_away(soak_mm: float) -> None:
    one, other = column("T1"), column("T1", soak_mm)
    for part in ("water", "sugar", "starch", "fat"):
        sums = [sum(getattr(each, part) for each in c.slabs) for c in (one, other)]
        assert sums[0] == pytest.approx(sums[1], rel=1e-12)


def test_a_tart_is_its_floor_and_what_is_poured_in() -> None:
    floor, ganache = column("TART").slabs
    assert (floor.rate, ganache.rate) == ("tart", "fat")
    assert floor.thick_m == pytest.approx(0.003)
    assert floor.mass == pytest.approx(10 * 214.0 / (452.389 + 188.496), rel=1e-4)


def test_a_roll_is_as_many_piles_as_it_has_turns() -> None:
    found = column("T2")
    assert len(found.slabs) == 2 * 3
    assert found.area_cm2 == pytest.approx(688.78 / 2, abs=0.2)


def test_chocolate_between_is_a_film_and_no_slab() -> None:
    choc = replace(C3, name="K1", family=None, density_g_ml=1.3)
    plan = "1 shell of F7\n30 g K1 in the shell\n380 g C3 in the shell"
    held = {
        **holds(),
        "K1": replace(holds()["C3"], water=0.01, sugar=0.4, starch_share=0.2, fat=0.39),
    }
    found = column_of(torte_of(plan, K1=choc), held, FAMILIES, soak_mm=6.0)
    assert found is not None
    ganache = found.slabs[1]
    assert ganache.film_mm == pytest.approx(30 / 1.3 / 430.053 * 10, rel=1e-3)


def test_what_is_not_known_leaves_no_column() -> None:
    less = {name: each for name, each in holds().items() if name != "C1"}
    assert column_of(torte("T1"), less, FAMILIES, soak_mm=6.0) is None
    whole = torte("T1")
    layers = (replace(whole.layers[0], mass_g=None), *whole.layers[1:])
    assert column_of(replace(whole, layers=layers), holds(), FAMILIES, soak_mm=6.0) is None


def test_a_family_that_is_not_known_goes_by_what_it_is_drawn_as() -> None:
    layers = {x.material: x for x in torte("T3").layers}
    assert rate_of(layers["jelly"], None) == "jelly"
    assert rate_of(layers["nut-sponge"], None) == "sponge"
    assert rate_of(layers["set-cream"], None) == "cream"
