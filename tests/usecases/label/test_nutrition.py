"""The nutrition of a label: its columns, what stands below them, its spread, what closes it."""

from dataclasses import replace

import pytest

from krume.base import OutOfRangeError
from krume.label import PanelRow
from krume.pantry import Ingredient
from krume.usecases.label.nutrition import AS_PLANNED, NutritionWish, nutrition_of
from krume.usecases.label.result import LabelNutrition
from tests.agreement import reads
from tests.label.studio import of, product

NO_SHEETS: dict[str, Ingredient] = {}
CUP = "Small cake\nFamily: butter\nTin: round 10 x 5 cm\nBaked: 40 mm high, {grams} g\n\n{lines}\n"


def said(name: str, market: str, wish: NutritionWish = AS_PLANNED) -> LabelNutrition:
    """Nutrition of a thing of the demo studio."""
    found = nutrition_of(product(name), NO_SHEETS, market, wish).nutrition
    assert found is not None
    return found


def heads(found: LabelNutrition) -> list[str]:
    """Heads of the columns, in their order."""
    first = [] if found.panel is None else [found.panel.head]
    return [*first, *(each.head for each in found.beside)]


def test_an_eu_panel_has_its_portion_beside_and_its_own_sentence_below() -> None:
    found = said("T1", "eu")
    assert heads(found)[0] == "Per 100 g"
    assert found.portion == found.beside[0]
    assert found.intake == "Reference intake of an average adult (8 400 kJ/2 000 kcal)"
    assert "12 portions" in found.notes[0]


def test_a_us_panel_has_its_number_and_size_of_servings_apart() -> None:
    found = said("T1", "us")
    assert found.panel is not None
    assert found.panel.servings == "15 servings per container"
    assert found.panel.serving_size.startswith("1/15 cake (")
    assert (found.beside, found.notes, found.intake) == ((), (), "")


def test_a_free_column_per_100_g_stands_last() -> None:
    assert heads(said("T1", "us", NutritionWish(per_100_g=True))) == ["Per serving", "Per 100 g"]


@pytest.mark.source("us-21-cfr-101-9", "(b)(12)(i): 200 to 300 percent")
@pytest.mark.parametrize(
    ("grams", "printed"),
    [(159, "Per container"), (160, "Per serving, Per container"),
     (240, "Per serving, Per container"), (241, "Per serving")],
)  # fmt: skip
def test_a_small_cake_has_a_column_for_the_whole(grams: int, printed: str) -> None:
    made = of(CUP.format(grams=grams, lines=f"{grams / 2} g sugar\n{grams / 2} g potato starch"))
    found = nutrition_of(made, NO_SHEETS, "us", AS_PLANNED).nutrition
    assert found is not None
    assert reads(", ".join(heads(found)), printed)


def test_a_blank_that_closes_only_the_whole_cakes_column_closes_the_label() -> None:
    lines = "98.9 g sugar\n100 g butter\n0.5 g xanthan gum"
    closed = nutrition_of(of(CUP.format(grams=199, lines=lines)), NO_SHEETS, "us", AS_PLANNED)
    assert closed.nutrition is not None
    assert {each.of for each in closed.unknown} >= {"xanthan gum"}


def test_a_free_column_with_a_figure_that_is_not_known_is_left_out_and_said() -> None:
    lines = "1000 g sugar\n1000 g butter\n11 g salt\n0.04 g xanthan gum"
    made = replace(of(CUP.format(grams=1990, lines=lines)), slices=(1,))
    found = nutrition_of(made, NO_SHEETS, "eu", AS_PLANNED).nutrition
    assert found is not None
    assert found.panel is not None
    assert found.panel.is_open
    assert (found.beside, found.portion) == ((), None)
    assert found.notes == ()
    assert "left out" in found.left_out[0]


@pytest.mark.parametrize("market", ["us", "eu"])
@pytest.mark.parametrize("name", ["T1", "T2", "T3", "TART", "F1", "F4"])
def test_no_free_column_has_an_empty_cell_where_the_first_has_a_figure(
    name: str, market: str
) -> None:
    found = said(name, market, NutritionWish(slices=7, per_100_g=True))
    assert found.panel is not None
    for column in found.beside:
        for row, beside in zip(found.panel.rows, column.rows, strict=True):
            assert row.text is None or beside.text is not None or column.is_required


def test_the_united_kingdom_prints_the_same_panel_as_the_union() -> None:
    assert said("T1", "uk") == said("T1", "eu")


@pytest.mark.parametrize("market", ["ca", "au-nz"])
def test_a_market_whose_panel_is_not_made_here_is_closed_by_name(market: str) -> None:
    found = nutrition_of(product("T1"), NO_SHEETS, market, AS_PLANNED)
    assert found.nutrition is None
    (only,) = found.unknown
    assert only.closes == "panel"
    assert market.upper() in only.text


def test_a_spread_is_told_only_where_it_is_asked_for() -> None:
    plain, wide = said("T1", "eu"), said("T1", "eu", NutritionWish(with_spread=True))
    assert plain.panel is not None
    assert wide.panel is not None
    assert all(row.spread is None for row in plain.panel.rows)
    for row in wide.panel.rows:
        assert row.spread is not None
        assert row.spread.low <= row.low <= row.high <= row.spread.high
    portion, share = wide.beside[0], wide.beside[0].basis_g / 100
    for row, whole in zip(portion.rows, wide.panel.rows, strict=True):
        assert row.spread is not None
        assert whole.spread is not None
        assert row.spread.best == pytest.approx(whole.spread.best * share)


@pytest.mark.parametrize("slices", [0, -12, 401, 10**12])
def test_a_number_of_slices_that_cannot_be_is_refused(slices: int) -> None:
    with pytest.raises(OutOfRangeError):
        said("T1", "eu", NutritionWish(slices=slices))


def test_a_slice_sold_on_its_own_has_its_own_panel() -> None:
    found = said("T1", "us", NutritionWish(by_slice=True))
    assert found.panel is not None
    assert found.panel.serving_size.startswith("1 slice (")
    assert found.panel.head == "Per container"


def test_of_a_slice_whose_number_is_not_known_there_is_no_panel_and_it_says_what_opens_it() -> None:
    found = nutrition_of(product("F1"), NO_SHEETS, "us", NutritionWish(by_slice=True))
    assert found.nutrition is not None
    assert found.nutrition.panel is None
    assert "--slices" in found.unknown[0].opens


def test_slices_that_are_asked_for_go_before_the_plans() -> None:
    found = said("T1", "eu", NutritionWish(slices=16))
    assert found.carbohydrate is not None
    assert [each.count for each in found.carbohydrate.slices] == [16]
    assert "16 portions" in found.notes[0]


def test_us_energy_counts_the_alcohol_of_what_is_in_it() -> None:
    made = of("Syrup\nFamily: syrup\n\n100 g sugar\n100 g water\n50 g rum\n")
    whole = replace(made, finished_g=250.0, finished_status="measured")
    found = nutrition_of(whole, NO_SHEETS, "us", AS_PLANNED).nutrition
    assert found is not None
    assert found.carbohydrate_g is not None
    assert found.energy_kcal is not None
    assert found.energy_kcal > 4 * found.carbohydrate_g + 7 * 6


def test_without_a_finished_mass_there_is_no_nutrition_and_it_says_what_opens_it() -> None:
    found = nutrition_of(replace(product("F1"), finished_g=None), NO_SHEETS, "eu", AS_PLANNED)
    assert found.nutrition is None
    assert "Baked:" in found.unknown[0].opens


def test_every_row_of_a_panel_comes_out_as_it_went_in() -> None:
    found = said("F1", "us")
    assert found.panel is not None
    kept = {"key", "label", "unit", "low", "high", "text", "percent", "level", "is_mandatory"}
    assert kept <= set(PanelRow.__slots__)
    assert [row.level for row in found.panel.rows[:4]] == [0, 0, 1, 1]
