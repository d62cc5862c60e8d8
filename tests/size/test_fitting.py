"""The size job on the demo formulas: factors, whole eggs, depth, grams, words."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import Infeasible, InputError, OutOfRangeError
from krume.size import Fit, SizeLine, SizeOption, SizeRequest, Tin, fit, read_tin
from tests.agreement import agrees, reads

EU_M = {"whole": 51.0, "yolk": 17.5, "white": 33.5}


def tin(text: str) -> Tin:
    read = read_tin(text)
    assert read.value is not None
    return read.value


def eggs(key: str, mass: float, part: str = "whole") -> SizeLine:
    return SizeLine(key, mass, "egg", key, EU_M[part], "eu-m", part)


def flours(**masses: float) -> tuple[SizeLine, ...]:
    return tuple(SizeLine(key, mass, "flour", key) for key, mass in masses.items())


def others(**masses: float) -> tuple[SizeLine, ...]:
    return tuple(SizeLine(key, mass, "other", key) for key, mass in masses.items())


F2 = (
    *flours(rice=40, teff=20, potato=30, sweet=9, maize=6),
    eggs("eggs", 255.0),
    *others(sugar=130, butter=20, salt=1, lemon=4, vanilla=4),
)
F5 = (
    *flours(rice=42, millet=12, potato=28, sweet=8),
    *others(powder=2.7),
    eggs("yolk", 70.0, "yolk"),
    eggs("white", 167.5, "white"),
    *others(sugar=108, oil=45, juice=65, zest=4, salt=1),
)
ROUND_20 = tin("round 20 x 7 cm")
TUBE_20 = tin("tube 20 x 10 cm, hole 6 cm")


def fitted(request: SizeRequest) -> Fit:
    found = fit(request)
    assert isinstance(found, Fit), found
    return found


def masses(option: SizeOption) -> dict[str, float | None]:
    return {line.key: line.mass_g for line in option.lines}


def f2_into(*targets: str, **wish: object) -> SizeRequest:
    return SizeRequest(F2, tuple(map(tin, targets)), ROUND_20, 0.48, **wish)  # type: ignore[arg-type]


@pytest.mark.source("reference-book", "F2 into round 8 x 3 in")
def test_f2_into_eight_inches_says_change_nothing_first() -> None:
    found = fitted(f2_into("round 8in x 3in"))
    assert agrees(found.factor.by_area, "1.0323")
    assert agrees(found.factor.by_volume, "1.1237")
    first, second = found.options[:2]
    assert agrees(first.depth_cm, "3.33")
    assert agrees(second.factor, "1.2")
    assert agrees(second.depth_cm, "4.00")
    assert reads(first.text, "Change nothing: 3.3 cm deep instead of 3.4.")
    assert (first.kind, first.eggs[0].count, first.eggs[0].make_up_g) == ("as-is", 5, 0)


@pytest.mark.source("reference-book", "F2 onto sheet 13 x 9 in, 11 mm deep")
def test_f2_onto_a_sheet_takes_four_eggs() -> None:
    found = fitted(f2_into("sheet 13x9 in", depth_cm=1.1))
    assert agrees(found.wanted_factor, "0.768")
    best = found.options[0]
    assert agrees(best.factor, "0.8")
    printed = {"rice": "32", "teff": "16", "potato": "24", "sweet": "7.2", "maize": "4.8",
               "sugar": "104", "butter": "16"}  # fmt: skip
    for key, mass in printed.items():
        assert agrees(masses(best)[key], mass)
    assert agrees((best.depth_cm or 0) * 10, "11.5")
    assert (best.eggs[0].count, best.eggs[0].make_up_g) == (4, 0)
    roll = next(n for n in best.notices if n.code == "roll-binder")
    assert "0.25-0.42 g xanthan on 84 g flour" in roll.text


@pytest.mark.source("reference-book", "F2 onto sheet 13 x 9 in, exact")
def test_any_eggs_reach_the_wished_depth_exactly() -> None:
    best = fitted(f2_into("sheet 13x9x1 in", depth_cm=1.1, eggs="any")).options[0]
    assert agrees(best.eggs[0].mass_g, "195.8")
    assert agrees(best.eggs[0].make_up_g, "−8.2")
    assert best.depth_cm == pytest.approx(1.1)
    assert best.text == (
        "4 eggs less 8.2 g, everything x 0.768: 11 mm deep, as wanted, 120 g less batter."
    )


def test_the_own_tin_changes_nothing() -> None:
    found = fitted(f2_into("round 20 x 7 cm"))
    assert found.wanted_factor == pytest.approx(1.0)
    assert found.options[0].kind == "as-is"
    assert masses(found.options[0]) == {line.key: line.mass_g for line in F2}


def test_typed_amounts_are_not_rounded_when_nothing_changes() -> None:
    lines = (*F2[:-1], SizeLine("vanilla", 4.037, "other"))
    found = fitted(SizeRequest(lines, (ROUND_20,), ROUND_20, 0.48, step_g=1.0))
    assert masses(found.options[0])["vanilla"] == 4.037


def test_yolks_and_whites_are_whole_together_or_a_part_egg_is_said() -> None:
    request = SizeRequest(F5, (tin("tube 25 x 10 cm, hole 6 cm"),), TUBE_20, 0.50)
    found = fitted(request)
    assert [(o.kind, round(o.factor, 3)) for o in found.options] == [
        ("whole", 2.0), ("as-is", 1.0), ("exact", 1.618)]  # fmt: skip
    assert [e.count for e in found.options[0].eggs] == [8, 10]
    assert found.options[0].text.startswith("8 yolks and 10 whites, everything x 2:")
    assert "6 yolks + 8.3 g of one more, 8 whites + 3 g of one more" in found.options[2].text


def test_a_formula_without_eggs_takes_the_exact_factor() -> None:
    found = fitted(SizeRequest(flours(rice=100), (tin("round 24 x 7 cm"),), ROUND_20, 0.5))
    assert found.options[0].factor == pytest.approx(1.44)
    assert found.options[0].eggs == ()
    assert found.options[0].text.startswith("Everything x 1.44")


def test_two_tins_share_the_batter_at_one_depth() -> None:
    found = fitted(SizeRequest(F5, (TUBE_20, TUBE_20), TUBE_20, 0.50))
    best = found.options[0]
    assert best.factor == 2.0
    assert best.shares_g == pytest.approx((553.2, 553.2))


@given(across=st.floats(12.0, 40.0), bottom=st.floats(0.7, 1.0))
def test_shares_add_up_to_the_batter(across: float, bottom: float) -> None:
    other = Tin("", "round", diameter_cm=across * bottom, top_cm=across, height_cm=30.0)
    deep = tin("round 20 cm, 30 cm high")
    found = fitted(SizeRequest(F2, (deep, other), ROUND_20, 0.48))
    for option in found.options:
        assert sum(option.shares_g) == pytest.approx(519 * option.factor, rel=1e-6)


@given(across=st.floats(14.0, 34.0))
def test_whole_options_have_whole_eggs_and_come_nearest_first(across: float) -> None:
    target = Tin("", "round", diameter_cm=across, height_cm=12.0)
    found = fitted(SizeRequest(F2, (target,), ROUND_20, 0.48))
    whole = [o for o in found.options if o.kind != "exact"]
    assert all(o.eggs[0].make_up_g == pytest.approx(0, abs=1e-9) for o in whole)
    off = [abs((o.depth_cm or 0) / (found.wanted_depth_cm or 1) - 1) for o in whole]
    assert off[0] <= min(off) + 0.06


def test_a_wished_depth_above_the_rim_names_depth_and_height() -> None:
    found = fit(f2_into("sheet 13x9x1 in", depth_cm=4.0))
    assert isinstance(found, Infeasible)
    (clash,) = found.clashes
    assert (clash.limit, clash.needs) == ("at most 2.5 cm", "batter 4.0 cm deep")
    assert "sheet" in clash.name


def test_a_lower_tin_is_aimed_below_its_rim_and_said() -> None:
    found = fitted(f2_into("sheet 13x9x1 in"))
    assert [n.code for n in found.notices] == ["depth-lowered"]
    assert found.wanted_depth_cm == pytest.approx(0.75 * 2.54)
    assert all((o.depth_cm or 0) <= 2.54 for o in found.options)


def test_a_tin_for_less_than_one_egg_gets_a_part_egg() -> None:
    tiny = Tin("", "round", diameter_cm=4.0, height_cm=1.0)
    found = fitted(SizeRequest(F2, (tiny,), ROUND_20, 0.48))
    assert [o.kind for o in found.options] == ["exact"]
    assert found.options[0].eggs[0].count == 0
    assert "g of one egg, everything x" in found.options[0].text


def test_an_unknown_density_leaves_depth_unknown_and_goes_by_area() -> None:
    found = fitted(SizeRequest(F2, (tin("round 24 x 7 cm"),), ROUND_20))
    assert found.wanted_factor == pytest.approx(1.44)
    assert [o.depth_cm for o in found.options] == [None, None, None]
    assert [o.factor for o in found.options] == [1.4, 1.6, 1.2]
    assert "density-unknown" in [n.code for n in found.notices]


def test_a_wished_depth_without_density_is_asked() -> None:
    found = fitted(SizeRequest(F2, (tin("sheet 13x9x1 in"),), ROUND_20, depth_cm=1.1))
    assert found.options == ()
    assert found.problems[0].code == "density-missing"
    assert found.problems[0].options[0].line == "Density: 0.48 g/ml"


def test_without_an_own_tin_amounts_stay_and_it_is_said() -> None:
    found = fitted(SizeRequest(F2, (tin("round 24 x 7 cm"),), None, 0.48))
    assert found.options[0].kind == "as-is"
    assert found.factor.by_area is None
    assert [n.code for n in found.notices] == ["own-tin-missing"]


def test_a_line_without_grams_stays_unknown() -> None:
    lines = (*F2, SizeLine("zest", None, "other", "lemon zest"))
    found = fitted(SizeRequest(lines, (tin("round 24 x 7 cm"),), ROUND_20, 0.48))
    assert all(masses(option)["zest"] is None for option in found.options)
    assert all(option.total_g is None for option in found.options)
    assert any("lemon zest" in n.text for n in found.notices)
    asked = fitted(SizeRequest(lines, (tin("round 24 x 7 cm"),), ROUND_20, 0.48, depth_cm=3.0))
    assert asked.problems[0].code == "mass-missing"


def test_a_tin_without_a_size_is_asked_for_a_wished_depth() -> None:
    found = fitted(SizeRequest(F2, (tin("tube 2366 ml"),), ROUND_20, 0.48, depth_cm=3.0))
    assert found.problems[0].code == "tin-size-missing"


@pytest.mark.parametrize(
    ("change", "error"),
    [
        ({"eggs": "some"}, InputError),
        ({"targets": ()}, InputError),
        ({"depth_cm": 0.0}, OutOfRangeError),
        ({"density_g_ml": -1.0}, OutOfRangeError),
        ({"step_g": 0.0}, OutOfRangeError),
        ({"lines": (SizeLine("rice", -1.0),)}, OutOfRangeError),
    ],
)
def test_what_no_size_can_be_reckoned_from_is_refused(
    change: dict[str, object], error: type[InputError]
) -> None:
    values = {"lines": F2, "targets": (ROUND_20,), "own": ROUND_20, "density_g_ml": 0.48} | change
    with pytest.raises(error):
        fit(SizeRequest(**values))  # type: ignore[arg-type]


def test_what_would_stand_above_the_rim_is_no_option() -> None:
    found = fitted(f2_into("round 20 x 3.6 cm"))
    assert [option.factor for option in found.options] == [1.0, 0.8]


def test_whole_eggs_are_not_rounded_to_the_scale() -> None:
    lines = (*flours(rice=100), eggs("yolk", 70.0, "yolk"))
    found = fitted(SizeRequest(lines, (tin("round 17.3 x 7 cm"),), ROUND_20, 0.5, step_g=1.0))
    assert found.options[0].factor == 0.75
    assert masses(found.options[0])["yolk"] == 52.5
