"""The balance of a formula: the demo's own figures, the basis, the unknown, the laws."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import Interval
from krume.design.balance import Balance, balance
from krume.design.formula import Formula
from krume.design.ratios import Value, best_of
from tests.agreement import agrees
from tests.design import planned as p

MASSES = st.floats(1.0, 1000.0)


def number(value: Value) -> float:
    best = best_of(value)
    assert best is not None
    return best


def codes(found: Balance) -> list[str]:
    return [each.code for each in found.findings]


@pytest.mark.source("krume", "reference sum R35: flours and starches are the 100")
@pytest.mark.parametrize(
    ("key", "printed"), [("egg", "150"), ("sugar", "105"), ("added_fat", "35"),
                         ("baking_powder", "3")]
)  # fmt: skip
def test_bakers_percent_counts_flours_and_starches_as_the_hundred(key: str, printed: str) -> None:
    made = p.formula(
        (p.RICE, 100), (p.POTATO, 40), (p.MAIZE, 20), (p.EGG, 240), (p.SUGAR, 168), (p.OIL, 56),
        (p.POWDER, 4.8),
    )  # fmt: skip
    found = balance(made)
    assert agrees(number(found.percent[key]), printed)
    assert agrees(100 * number(found.total_g) / number(found.basis_g), "393")


@pytest.mark.source("demo-studio", "the sums printed under each formula")
@pytest.mark.parametrize(
    ("made", "key", "printed"),
    [
        (p.F1, "total_g", "542.0"), (p.F1, "flour_g", "104"), (p.F1, "egg", "245.2"),
        (p.F1, "sugar", "129.8"), (p.F1, "nut", "38.5"), (p.F1, "added_fat", "0"),
        (p.F1, "sugar_per_egg", "0.529"), (p.F1, "starch", "32.7"), (p.F1, "sweet_rice", "7.7"),
        (p.F2, "total_g", "519.0"), (p.F2, "flour_g", "105"), (p.F2, "egg", "242.9"),
        (p.F2, "sugar", "123.8"), (p.F2, "added_fat", "15.6"), (p.F2, "sugar_per_egg", "0.510"),
        (p.F2, "starch", "34.3"), (p.F2, "sweet_rice", "8.6"),
        (p.F3, "total_g", "398.0"), (p.F3, "flour_g", "70"), (p.F3, "egg", "291.4"),
        (p.F3, "sugar", "142.9"), (p.F3, "added_fat", "14.3"), (p.F3, "sugar_per_egg", "0.490"),
        (p.F3, "starch", "31.4"), (p.F3, "sweet_rice", "8.6"), (p.F3, "xanthan", "0.36"),
        (p.F3, "batter_g_cm2", "0.527"),
        (p.F4, "total_g", "522.0"), (p.F4, "basis_g", "155"), (p.F4, "egg", "154.8"),
        (p.F4, "sugar", "77.4"), (p.F4, "nut", "74.2"), (p.F4, "sugar_per_egg", "0.500"),
        (p.F4, "nut_fat", "48"),
        (p.F5, "total_g", "553.2"), (p.F5, "flour_g", "90"), (p.F5, "egg_yolk", "77.8"),
        (p.F5, "egg_white", "186.1"), (p.F5, "sugar", "120.0"), (p.F5, "added_fat", "50.0"),
        (p.F5, "liquid", "72.2"), (p.F5, "baking_powder", "3.0"), (p.F5, "starch", "31.1"),
        (p.F5, "sweet_rice", "8.9"),
        (p.F6, "total_g", "643.7"), (p.F6, "flour_g", "150"), (p.F6, "butter", "100"),
        (p.F6, "added_fat", "82.0"), (p.F6, "sugar", "100"), (p.F6, "egg", "102"),
        (p.F6, "liquid", "20"), (p.F6, "baking_powder", "3.2"), (p.F6, "xanthan", "0.27"),
        (p.F6, "binder", "0.27"), (p.F6, "starch", "34.7"), (p.F6, "sweet_rice", "8.0"),
        (p.F7, "total_g", "431.5"), (p.F7, "flour_g", "200"), (p.F7, "butter", "55"),
        (p.F7, "sugar", "32.5"), (p.F7, "egg", "25.5"), (p.F7, "psyllium", "2.0"),
        (p.F7, "starch", "25.0"),
        (p.C1, "total_g", "941.5"), (p.C1, "gelatine_g_kg", "8.5"), (p.C2, "total_g", "853.0"),
        (p.C2, "gelatine_g_kg", "9.4"), (p.C3, "total_g", "380"), (p.C4, "total_g", "390"),
        (p.C4, "gelatine_g_l", "13.8"), (p.C5, "total_g", "615"),
        (p.C5, "sugar_per_white", "1.58"), (p.C5, "butter_per_white", "2.50"),
        (p.S1, "total_g", "220"),
    ],
)  # fmt: skip
def test_the_demo_balances_as_printed(made: Formula, key: str, printed: str) -> None:
    found = balance(made)
    fields = {"total_g", "flour_g", "basis_g", "sugar_per_egg"}
    value = getattr(found, key) if key in fields else (found.percent | found.figures)[key]
    assert agrees(number(value), printed)


@pytest.mark.parametrize(
    "made",
    [p.F1, p.F2, p.F3, p.F4, p.F5, p.F6, p.F7, p.C1, p.C2, p.C3, p.C4, p.C5, p.S1],
)
def test_the_demo_lies_inside_its_bands(made: Formula) -> None:
    assert codes(balance(made)) == []


@pytest.mark.parametrize(
    ("made", "code"),
    [
        (p.C1, "gelatine_g_kg-near-high"),
        (p.F3, "starch-near-low"),
        (p.F5, "starch-near-low"),
        (p.S1, "sugar_per_water-near-low"),
    ],
)
def test_what_is_near_an_edge_is_remarked_apart(made: Formula, code: str) -> None:
    assert code in [each.code for each in balance(made).near]


def test_a_blend_held_at_its_total_after_a_slip_is_low_in_starch() -> None:
    made = p.formula(
        (p.RICE, 40), (p.TEFF, 26), (p.POTATO, 26.0), (p.SWEET_RICE, 7.8), (p.MAIZE, 5.2),
        p.eggs(8, 5), (p.SUGAR, 130), (p.BUTTER, 20),
    )  # fmt: skip
    (finding,) = balance(made).findings
    assert finding.code == "starch-low"
    assert finding.text == (
        "Starch 29.7 %; usual is 30 to 50. "
        "0.43 g more starch, the rest as it is, comes back inside."
    )


def test_larger_eggs_in_the_same_roll_are_found_twice() -> None:
    lines = [each for each in p.F3.lines if each.unit != "each"]
    made = p.formula(*lines, p.eggs(14, 4, size="eu-l", each_g=60.0), family="roulade", tin=p.SHEET)
    found = {each.code: each.value for each in balance(made).findings}
    assert set(found) == {"egg-high", "sugar_per_egg-low"}
    assert found["egg-high"] == pytest.approx(342.857, abs=0.001)
    assert found["sugar_per_egg-low"] == pytest.approx(0.41667, abs=0.00001)


def test_a_roll_that_baked_too_thick_is_found() -> None:
    lines = p.F3.lines
    made = p.formula(*lines, family="roulade", tin=p.SHEET, baked_mm=15.3)
    assert codes(balance(made)) == ["baked_mm-high"]


def test_many_nuts_are_judged_on_flour_and_nut_and_the_basis_is_named() -> None:
    found = balance(p.F4)
    assert (found.family, found.basis, found.basis_g) == ("nut", "flour and nut", 155.0)
    assert number(found.percent["starch"]) == 40.0
    assert "basis-flour-and-nut" in [each.code for each in found.notices]


def test_few_nuts_stand_apart_and_flour_stays_the_basis() -> None:
    found = balance(p.F1)
    assert (found.basis, found.basis_g) == ("flour", 104.0)
    assert number(found.nut_share_pct) == pytest.approx(27.78, abs=0.005)


@pytest.mark.parametrize(
    ("walnut_g", "basis"), [(52.0, "flour"), (53.84, "flour"), (53.85, "flour and nut")]
)
def test_the_basis_changes_at_thirty_five_percent_of_nut(walnut_g: float, basis: str) -> None:
    lines = ((p.RICE, 100), (p.WALNUT, walnut_g), p.eggs(5, 5), (p.SUGAR, 120))
    for family in ("separated", "butter", None):
        assert balance(p.formula(*lines, family=family)).basis == basis


def test_a_sponge_stated_as_separated_with_many_nuts_is_judged_as_a_nut_sponge() -> None:
    found = balance(replace(p.F4, family="separated"))
    assert (found.family, found.basis, codes(found)) == ("nut", "flour and nut", [])
    assert "judged-as-nut" in [each.code for each in found.notices]


def test_a_chiffon_is_judged_by_the_parts_of_its_eggs() -> None:
    found = balance(p.F5)
    assert (found.basis, found.basis_g) == ("parts", 90.0)
    assert number(found.sugar_per_egg) == pytest.approx(108 / 237.5, abs=1e-9)


def test_an_angel_cake_counts_sugar_on_its_white() -> None:
    made = p.formula(
        (p.RICE, 50), (p.POTATO, 50), p.parts(5, 9, "white", 33.5), (p.SUGAR, 270),
        (p.TARTAR, 4), family="angel",
    )  # fmt: skip
    found = balance(made)
    assert codes(found) == []
    assert number(found.sugar_per_egg) == pytest.approx(270 / 301.5, abs=1e-9)
    assert found.per_egg is not None
    assert found.per_egg.egg_g == 33.5


def test_a_yolk_in_an_angel_cake_does_not_count_as_white() -> None:
    white, yolk = p.parts(3, 9, "white", 33.5), p.parts(4, 1, "yolk", 17.5)
    made = p.formula((p.RICE, 100), white, yolk, (p.SUGAR, 270), family="angel")
    found = balance(made)
    assert number(found.sugar_per_egg) == pytest.approx(270 / 301.5, abs=1e-9)
    assert number(found.percent["egg"]) == pytest.approx(319.0, abs=1e-9)


def test_a_flourless_formula_has_no_percent_but_its_figures_per_egg() -> None:
    found = balance(p.formula(p.eggs(3, 5), (p.SUGAR, 135), (p.CHOCOLATE, 200), family="separated"))
    assert (found.basis, found.basis_g, found.percent["egg"]) == ("none", None, None)
    assert "flourless" in [each.code for each in found.notices]
    assert found.per_egg is not None
    assert number(found.per_egg.sugar_g) == pytest.approx(27.0, abs=1e-9)
    assert number(found.sugar_per_egg) == pytest.approx(135 / 255, abs=1e-9)


def test_a_flourless_nut_cake_is_judged_on_its_nuts() -> None:
    found = balance(p.formula((p.WALNUT, 150), p.eggs(4, 5), (p.SUGAR, 120)))
    assert (found.family, found.basis, found.basis_g) == ("nut", "flour and nut", 150.0)


def test_per_egg_follows_the_size_at_hand() -> None:
    medium, large = balance(p.F2).per_egg, balance(p.F4).per_egg
    assert medium is not None
    assert large is not None
    assert (medium.size, large.size) == ("eu-m", "eu-l")
    assert medium.egg_g == pytest.approx(51.0, abs=1e-9)
    assert number(medium.flour_g) == pytest.approx(21.0, abs=1e-9)
    assert number(medium.sugar_g) == pytest.approx(26.0, abs=1e-9)
    assert large.egg_g == pytest.approx(60.0, abs=1e-9)


def test_eggs_without_a_size_are_planned_at_one_and_it_is_said() -> None:
    found = balance(p.formula((p.RICE, 100), (p.EGG, 255), (p.SUGAR, 120), family="separated"))
    assert found.per_egg is not None
    assert (found.per_egg.size, found.per_egg.basis) == ("eu-m", "planning size")


def test_eggs_of_one_size_or_another_give_intervals() -> None:
    either = p.line(3, p.EGG, Interval(220.0, 255.0, 255.0), amount=5, unit="each")
    made = p.formula(either, (p.RICE, 70), (p.POTATO, 30), (p.SUGAR, 130), family="separated")
    found = balance(made)
    assert found.percent["egg"] == Interval(220.0, 255.0, 255.0)
    assert found.sugar_per_egg == Interval(130 / 255, 130 / 255, 130 / 220)
    assert found.percent["sugar"] == 130.0
    assert found.total_g == Interval(450.0, 485.0, 485.0)


def test_a_line_without_a_mass_blanks_its_own_figure_only() -> None:
    made = p.formula((p.RICE, 70), (p.POTATO, 30), p.eggs(5, 5), (p.SUGAR, None))
    found = balance(made)
    assert found.percent["sugar"] is None
    assert found.sugar_per_egg is None
    assert found.total_g is None
    assert found.percent["egg"] == 255.0
    assert [each.where for each in found.notices if each.code == "mass-unknown"] == ["line 6"]


def test_a_line_of_unknown_class_widens_what_it_could_move_and_is_named() -> None:
    made = p.formula(
        (p.RICE, 70), (p.POTATO, 30), p.eggs(5, 5), (p.SUGAR, 130), (None, 40), family="separated"
    )
    found = balance(made)
    share = found.percent["sugar"]
    assert isinstance(share, Interval)
    assert share.best == 130.0
    assert share.low == pytest.approx(100 * 130 / 140, abs=1e-9)
    assert share.high == pytest.approx(170.0, abs=1e-9)
    assert [each.where for each in found.notices if each.code == "class-unknown"] == ["line 7"]


def test_a_family_nobody_knows_judges_nothing_and_says_what_to_type() -> None:
    found = balance(p.formula((p.RICE, 100), (p.MILK, 300)))
    assert (found.family, found.findings) == (None, ())
    (notice,) = [each for each in found.notices if each.code == "family-unknown"]
    assert "Family: separated" in notice.text


def test_a_filling_beside_a_batter_is_left_out_and_said_so() -> None:
    cream = p.line(12, p.CREAM, 300.0, section="Filling")
    flour = p.line(3, p.RICE, 100.0, section="Sponge")
    made = p.formula(flour, p.eggs(4, 5), (p.SUGAR, 130), cream)
    found = balance(made)
    assert found.total_g == 485.0
    assert "“Filling”" in next(n.text for n in found.notices if n.code == "left-out")


def test_the_packed_fat_is_shown_where_it_would_print_another_figure() -> None:
    made = p.formula((p.RICE, 100), p.eggs(4, 5), (p.SUGAR, 130), ("butter-unsalted", 30))
    (said,) = [each for each in balance(made).notices if each.code == "packed-composition"]
    assert said.text == (
        "Added fat 24.6 % takes each fat at its planning share; by the packed compositions it is "
        "24.3 %."
    )


def test_of_a_formula_without_lines_no_total_is_known() -> None:
    found = balance(Formula(None))
    assert (found.family, found.basis) == (None, "none")
    assert (found.total_g, found.flour_g) == (None, None)


@given(flour=MASSES, starch=MASSES, egg=MASSES, sugar=MASSES, butter=MASSES,
       factor=st.floats(0.05, 20.0))  # fmt: skip
def test_making_it_larger_moves_no_figure_and_no_finding(
    flour: float, starch: float, egg: float, sugar: float, butter: float, factor: float
) -> None:
    masses = (
        (p.RICE, flour), (p.POTATO, starch), (p.EGG, egg), (p.SUGAR, sugar), (p.BUTTER, butter)
    )  # fmt: skip
    once = balance(p.formula(*masses, family="butter"))
    more = balance(p.formula(*((k, g * factor) for k, g in masses), family="butter"))
    for key, value in once.percent.items():
        assert number(more.percent[key]) == pytest.approx(number(value), rel=1e-9, abs=1e-9)
    assert number(more.total_g) == pytest.approx(factor * number(once.total_g), rel=1e-9)


@given(flour=MASSES, starch=MASSES, egg=MASSES, sugar=MASSES, oil=MASSES, salt=MASSES)
def test_the_percents_of_all_lines_add_up_to_the_total_over_the_basis(
    flour: float, starch: float, egg: float, sugar: float, oil: float, salt: float
) -> None:
    masses = (
        (p.RICE, flour), (p.POTATO, starch), (p.EGG, egg), (p.SUGAR, sugar), (p.OIL, oil),
        (p.SALT, salt),
    )  # fmt: skip
    found = balance(p.formula(*masses, family="separated"))
    keys = ("egg", "sugar", "added_fat", "salt")
    share = 100 + sum(number(found.percent[key]) for key in keys)
    whole = 100 * number(found.total_g) / number(found.basis_g)
    assert share == pytest.approx(whole, rel=1e-9)


@given(masses=st.lists(MASSES, min_size=5, max_size=5))
def test_the_order_of_the_lines_does_not_matter(masses: list[float]) -> None:
    keys = (p.RICE, p.POTATO, p.EGG, p.SUGAR, p.HAZELNUT)
    lines = list(zip(keys, masses, strict=True))
    once = balance(p.formula(*lines, family="separated"))
    other = balance(p.formula(*lines[::-1], family="separated"))
    assert codes(once) == codes(other)
    for key, value in once.percent.items():
        assert number(other.percent[key]) == pytest.approx(number(value), rel=1e-9, abs=1e-9)
