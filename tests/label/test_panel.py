"""Panels: printed rows, servings by the reference amounts, and what keeps a row closed."""

import pytest

from krume.label import (
    NutrientSum,
    Span,
    eu_columns,
    eu_panel,
    nutrient_sums,
    panel_unknowns,
    servings_of,
    us_columns,
    us_panel,
    us_servings,
)
from tests.agreement import agrees, reads
from tests.label.studio import of, product


def printed(name: str) -> dict[str, str | None]:
    """Rows of the EU panel by key."""
    sums = nutrient_sums(product(name), market="eu")
    assert sums is not None
    return {row.key: row.text for row in eu_panel(sums).rows}


def test_the_eu_panel_of_a_torte_whose_unknowns_move_no_digit_is_open() -> None:
    sums = nutrient_sums(product("T1"), market="eu")
    assert sums is not None
    panel = eu_panel(sums)
    assert panel.is_open
    assert any(row.open_goods for row in panel.rows)


def test_energy_is_computed_from_the_grams_in_each_unit() -> None:
    sums = nutrient_sums(product("C1"), market="eu")
    assert sums is not None
    grams = {key: sums[key].span.low for key in ("fat", "carbohydrate", "fibre", "protein")}
    kj = 37 * grams["fat"] + 17 * (grams["carbohydrate"] + grams["protein"])
    kj += 8 * grams["fibre"] + 13 * sums["organic-acids"].span.low
    row = next(row for row in eu_panel(sums).rows if row.key == "energy-kj")
    assert row.low == pytest.approx(kj, rel=1e-9)


def test_salt_is_all_sodium_times_2_5() -> None:
    sums = nutrient_sums(product("C1"), market="eu")
    assert sums is not None
    row = next(row for row in eu_panel(sums).rows if row.key == "salt")
    assert row.low == pytest.approx(sums["sodium"].span.low * 2.5 / 1000)


def test_a_portion_is_the_same_panel_on_another_mass() -> None:
    sums = nutrient_sums(product("T1"), market="eu")
    assert sums is not None
    whole, half = eu_panel(sums), eu_panel(sums, basis_g=50.0)
    for one, other in zip(whole.rows, half.rows, strict=True):
        assert other.high == pytest.approx(one.high / 2)


def test_the_us_panel_is_per_serving() -> None:
    servings = servings_of(product("T1"))
    sums = nutrient_sums(product("T1"), market="us")
    assert servings is not None
    assert sums is not None
    assert servings.servings_per_container == 15
    rows = {row.key: row for row in us_panel(sums, servings).rows}
    assert rows["sodium"].low == pytest.approx(sums["sodium"].span.low * servings.serving_g / 100)
    assert rows["trans"].text is None


def test_a_closed_panel_names_the_goods_and_what_opens_them() -> None:
    sums = nutrient_sums(product("T3"), market="eu")
    assert sums is not None
    unknown = {each.of: each for each in panel_unknowns(eu_panel(sums))}
    assert "blackcurrants" in unknown
    assert unknown["blackcurrants"].closes == "panel"
    assert "supplier's sheet" in unknown["blackcurrants"].opens


def test_a_row_that_need_not_stand_there_closes_nothing() -> None:
    made = of("Jelly\nFamily: jelly\n\n300 g whipping cream\n20 g sugar\n")
    sums = nutrient_sums(made, market="eu")
    assert sums is not None
    assert eu_panel(sums).is_open
    assert printed("C1")["fibre"] == "<0.5 g"


def sums(**amounts: float) -> dict[str, NutrientSum]:
    """Nutrients per 100 g, those not named being none."""
    keys = (
        "fat", "saturated", "trans", "cholesterol", "sodium", "carbohydrate", "fibre", "sugars",
        "added-sugars", "protein", "vitamin-d", "calcium", "iron", "potassium", "alcohol",
        "polyols", "organic-acids",
    )  # fmt: skip
    given = {key.replace("_", "-"): amount for key, amount in amounts.items()}
    return {k: NutrientSum(k, Span(given.get(k, 0.0), given.get(k, 0.0)), ()) for k in keys}


@pytest.mark.source("us-21-cfr-101-9", "(b)(12)(i): a second column for the whole package")
def test_a_small_cake_is_printed_per_serving_and_per_container() -> None:
    columns = us_columns(sums(fat=10.0, sodium=100.0), us_servings(240.0, reference_g=80.0))
    assert [each.head for each in columns] == ["Per serving", "Per container"]
    serving, whole = ({row.key: row.text for row in each.rows} for each in columns)
    assert reads(str(serving["fat"]), "8 g")
    assert reads(str(whole["fat"]), "24 g")
    assert reads(str(serving["sodium"]), "80 mg")
    assert reads(str(whole["sodium"]), "240 mg")
    assert all(each.is_required for each in columns)


def test_a_column_per_100_g_is_free_and_closes_nothing() -> None:
    blank = sums() | {"sodium": NutrientSum("sodium", Span(4.5, 6.0), ("gum",))}
    servings = us_servings(800.0, reference_g=80.0)
    serving, hundred = us_columns(blank, servings, per_100_g=True)
    assert (serving.is_open, hundred.is_open) == (True, False)
    assert not hundred.is_required
    assert panel_unknowns(serving, hundred) == ()


def test_a_whole_cake_in_one_serving_is_headed_by_its_container() -> None:
    (only,) = us_columns(sums(), us_servings(120.0, reference_g=80.0))
    assert (only.head, only.basis_g) == ("Per container", 120.0)


@pytest.mark.source("us-21-cfr-101-9", "(d)(7)(ii): percent from the declared amount")
@pytest.mark.parametrize(
    ("key", "amount", "text", "printed"),
    [("fat", 0.45, "0 g", "0"), ("cholesterol", 1.9, "0 mg", "0"), ("fat", 0.5, "0.5 g", "1"),
     ("cholesterol", 3.0, "less than 5 mg", "1")],
)  # fmt: skip
def test_what_is_declared_as_nothing_is_0_percent_of_a_day(
    key: str, amount: float, text: str, printed: str
) -> None:
    one = us_servings(100.0, reference_g=80.0)
    row = next(row for row in us_panel(sums(**{key: amount}), one).rows if row.key == key)
    assert reads(str(row.text), text)
    assert row.percent is not None
    assert agrees(row.percent, printed)


def test_calories_count_the_alcohol_of_a_soaked_cake() -> None:
    one = us_servings(100.0, reference_g=80.0)
    row = us_panel(sums(carbohydrate=30.0, alcohol=4.0), one).rows[0]
    assert row.low == pytest.approx(4 * 30.0 + 7 * 4.0)


def test_an_eu_portion_stands_beside_the_100_g_and_is_not_required() -> None:
    hundred, portion = eu_columns(sums(fat=12.0), portion_g=80.0)
    assert (hundred.head, portion.head) == ("Per 100 g", "Per portion (80 g)")
    assert (hundred.is_required, portion.is_required) == (True, False)
    assert eu_columns(sums()) == (eu_panel(sums()),)


@pytest.mark.parametrize(
    ("low", "high", "text"),
    [(9.5, 10.4, None), (9.95, 10.4, "10 g"), (10.5, 11.4, "11 g"), (10.4, 10.5, None)],
)
def test_a_row_is_open_only_where_both_ends_print_the_same(
    low: float, high: float, text: str | None
) -> None:
    blank = sums() | {"fat": NutrientSum("fat", Span(low, high), ("gum",))}
    row = next(row for row in eu_panel(blank).rows if row.key == "fat")
    assert row.text == text


def test_rows_are_indented_inside_what_they_are_part_of() -> None:
    servings = us_servings(100.0, reference_g=80.0)
    levels = {row.key: row.level for row in us_panel(sums(), servings).rows}
    assert (levels["fat"], levels["saturated"], levels["added-sugars"]) == (0, 1, 2)
    assert {row.key for row in eu_panel(sums()).rows if row.level} == {"saturated", "sugars"}


def test_a_percentage_that_is_free_closes_no_row_and_one_that_must_stand_there_does() -> None:
    blank = sums() | {"fat": NutrientSum("fat", Span(9.95, 10.4), ("gum",))}
    eu = next(row for row in eu_panel(blank).rows if row.key == "fat")
    one = us_servings(100.0, reference_g=80.0)
    wider = sums() | {"fat": NutrientSum("fat", Span(9.6, 10.4), ("gum",))}
    us = next(row for row in us_panel(wider, one).rows if row.key == "fat")
    assert (eu.text, eu.percent) == ("10 g", None)
    assert us.text is None
    assert "fat" in panel_unknowns(us_panel(wider, one))[0].what


def test_a_portion_of_nearly_100_g_does_not_call_itself_100_g() -> None:
    portion = eu_columns(sums(fat=12.0), portion_g=99.574)[1]
    assert portion.head == "Per portion (99.6 g)"
