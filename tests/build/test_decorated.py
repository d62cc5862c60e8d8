"""Decorations: their grams count, their height is only told, and what is not said is asked."""

import pytest

from krume.base import Infeasible
from krume.build import ComponentFormula, build_torte
from tests.build.studio import PARTS, plan_of, torte_of

NUT = ComponentFormula("walnut halves", "walnut halves", total_g=42.0, goods_role="nut")
FRUIT = ComponentFormula("raspberries", "raspberries", total_g=200.0, goods_role="fruit")
MORE = {"walnut halves": NUT, "raspberries": FRUIT}
CAKE = "2 layers of F1, 14 mm\n"


def test_counted_decorations_weigh_and_add_no_height() -> None:
    torte = torte_of(f"{CAKE}14 x 3 g walnut halves on top, 12 mm high", **MORE)
    nuts = torte.layers[-1]
    assert (nuts.role, nuts.count, nuts.mass_g, nuts.over_mm) == ("decoration", 14, 42.0, 12.0)
    assert (torte.height_mm, torte.plate_mm) == (28.0, 40.0)
    batch = torte.batches[-1]
    assert (batch.kind, batch.batches, batch.over_g) == ("goods", 1.0, 0.0)


def test_a_height_that_is_not_written_is_in_no_height_and_said() -> None:
    torte = torte_of(f"{CAKE}14 x 3 g walnut halves on top", **MORE)
    assert torte.over_mm is None and torte.height_mm == 28.0
    assert [n.code for n in torte.notices if n.code == "decoration-height"]


def test_piped_cream_is_a_decoration_and_a_share_of_it_stays_in_the_bag() -> None:
    torte = torte_of(f"{CAKE}12 x 8 g C5 on top, piped, 20 % waste")
    batch = torte.batches[-1]
    assert torte.layers[-1].mass_g == 96.0
    assert batch.needed_g == 96.0
    assert batch.waste_g == pytest.approx(24.0)
    assert (batch.made_g or 0) == pytest.approx(96.0 + 24.0 + (batch.over_g or 0))


def test_fruit_between_layers_is_as_high_as_it_is_said_to_lie() -> None:
    torte = torte_of(f"{CAKE}200 g raspberries between the layers, 15 mm", **MORE)
    assert torte.height_mm == 43.0
    assert torte.layers[1].mass_g == 200.0
    assert torte.layers[1].material == "fruit"


def asked_codes(text: str) -> list[str]:
    """Codes of what is asked about a torte."""
    read = build_torte(plan_of(f"A\n\n{text}"), {**PARTS, **MORE})
    assert not isinstance(read, Infeasible)
    return [problem.code for problem in read.problems]


def test_fruit_without_a_height_is_asked() -> None:
    assert asked_codes(f"{CAKE}200 g raspberries between the layers") == ["fruit-height-missing"]


def test_nuts_pressed_to_the_side_stand_over_nothing() -> None:
    torte = torte_of(f"{CAKE}60 g walnut halves around", **MORE)
    assert torte.over_mm == 0.0
    assert torte.mass_g == pytest.approx(torte_of(CAKE).mass_g + 60.0)  # type: ignore[operator]


def test_a_dome_takes_a_coat_and_decorations_and_asks_about_all_else() -> None:
    assert asked_codes(f"{CAKE}40 mm C1 on top, domed\n8 mm C4 on top") == ["dome-covered"]
    assert asked_codes(f"{CAKE}40 mm C1 on top, domed\n8 x 5 g C5 on top, piped") == []


def test_a_rectangle_is_not_domed() -> None:
    assert asked_codes("1 sheet of F3, 12 mm\n40 mm C1 on top, domed") == ["dome-not-round"]


def test_a_dome_of_more_than_half_a_ball_is_refused_with_its_most() -> None:
    answer = build_torte(plan_of(f"A\n\n{CAKE}120 mm C1 on top, domed"), PARTS)
    assert isinstance(answer, Infeasible)
    assert "Nearest: 100 mm." in answer.clashes[0].said


def test_a_dome_by_its_grams_is_as_high_as_one_of_that_height_weighs() -> None:
    by_height = torte_of(f"{CAKE}40 mm C1 on top, domed")
    grams = by_height.layers[-1].mass_g
    by_mass = torte_of(f"{CAKE}{grams:.6f} g C1 on top, domed")
    assert by_mass.layers[-1].dome_mm == pytest.approx(40.0, abs=1e-5)
