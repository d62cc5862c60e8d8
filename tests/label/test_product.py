"""What goes into a product at mixing, and what it weighs finished."""

from dataclasses import replace

import pytest

from krume.base import Infeasible
from krume.build import Batch, build_torte, read_torte
from krume.label import Product, product_of_torte
from tests.agreement import agrees
from tests.label.studio import of, product


def grams(name: str, words: str) -> float:
    """Grams at mixing of one of the goods."""
    found = next(u for u in product(name).used if u.label_name == words)
    assert found.mass_g is not None
    return found.mass_g


@pytest.mark.source("demo-studio", "what the tortes come to")
def test_the_finished_mass_is_the_tortes_own() -> None:
    for name, printed in (("T1", "1194.9"), ("T2", "753.1"), ("T3", "1574.8"), ("TART", "594.0")):
        assert agrees(product(name).finished_g, printed)


@pytest.mark.source("demo-studio", "F7: what its shell weighs raw")
def test_a_shell_takes_only_the_dough_that_its_sheet_weighs() -> None:
    assert agrees(product("F7").mixed_g, "240.3")


def test_a_torte_takes_of_a_sponge_only_the_pieces_that_go_in() -> None:
    share = 384.9 / 482
    assert grams("T1", "hazelnuts") == pytest.approx(40 * share, rel=1e-4)


def test_goods_of_several_formulas_are_one_and_say_where_they_come_from() -> None:
    sugar = next(u for u in product("T1").used if u.label_name == "sugar")
    assert set(sugar.of) == {"F1", "S1", "C1", "C5"}


def test_goods_stand_by_mass_the_heaviest_first() -> None:
    masses = [u.mass_g or 0.0 for u in product("T1").used]
    assert masses == sorted(masses, reverse=True)


def test_a_line_without_a_mass_makes_its_goods_unknown() -> None:
    made = of("Cream\n\n200 g whipping cream\n20 g sugar\nsugar to taste\n")
    assert next(u for u in made.used if u.label_name == "sugar").mass_g is None
    assert made.mixed_g is None


def test_a_bake_without_a_planned_mass_has_no_finished_mass() -> None:
    made = of("Sponge\nTin: round 20 x 5 cm\nOven: 170 C\n\n100 g potato starch\n100 g sugar\n")
    assert made.finished_g is None
    assert made.finished_status == "unknown"


def test_a_cream_weighs_what_goes_in() -> None:
    assert product("C1").finished_g == pytest.approx(941.5)


@pytest.mark.parametrize(("baked", "is_known"), [("201", False), ("200", True), ("79", False)])
def test_a_baked_mass_that_cannot_be_is_not_known(baked: str, is_known: bool) -> None:
    text = f"Loaf\nFamily: butter\nTin: round 20 x 5 cm\nBaked: 10 mm high, {baked} g\n\n"
    made = of(f"{text}100 g potato starch\n100 g butter\n")
    assert (made.finished_g is not None) is is_known


def test_the_shell_of_a_tart_takes_no_more_dough_than_its_sheet() -> None:
    assert product("TART").mixed_g == pytest.approx(240.3 + 380.0, abs=0.1)


@pytest.mark.parametrize("name", ["T1", "T2", "T3", "TART"])
def test_the_parts_of_a_torte_weigh_what_the_torte_weighs(name: str) -> None:
    made = product(name)
    assert made.finished_g is not None
    assert sum(part.finished_g or 0.0 for part in made.parts) == pytest.approx(
        made.finished_g, abs=0.1
    )
    assert sum(part.mixed_g or 0.0 for part in made.parts) == pytest.approx(made.mixed_g)


def test_a_formula_alone_is_one_part() -> None:
    made = product("F4")
    assert [(part.name, part.used) for part in made.parts] == [("F4", made.used)]
    assert made.parts[0].finished_g == made.finished_g


def test_what_is_not_eaten_is_no_ingredient_and_needs_no_grams() -> None:
    made = of("Cream\nFamily: set-cream\n\n200 g whipping cream\n12 cake picks\n1 ribbon\n")
    assert [used.label_name for used in made.used] == ["whipping cream"]
    assert made.not_food == ("picks", "ribbon")
    assert made.mixed_g == 200.0


def test_gold_and_flowers_are_no_things_beside_the_food() -> None:
    made = of("Cream\nFamily: set-cream\n\n200 g whipping cream\n1 gold leaf\n3 fresh flowers\n")
    assert made.not_food == ()
    assert len(made.used) == 3
    assert made.mixed_g is None


def test_goods_of_a_torte_that_no_formula_makes_are_in_it() -> None:
    made = bought(Batch("hazelnuts", "hazelnuts", "goods", 36.0, None, None, None, 36.0, 0.0))
    assert [(used.key, used.mass_g) for used in made.used] == [("hazelnuts", 36.0)]


def test_goods_of_a_torte_that_nobody_knows_are_never_left_out() -> None:
    made = bought(Batch("zorb", "zorb", "goods", 5.0, None, None, None, 5.0, 0.0))
    assert [(used.name, used.key) for used in made.used] == [("zorb", None)]
    assert made.finished_g == 100.0


def test_what_is_not_eaten_is_no_part_of_what_a_torte_weighs_as_food() -> None:
    picks = Batch("cake picks", "cake picks", "goods", 12.0, None, None, None, 12.0, 0.0)
    made = bought(picks)
    assert (made.used, made.not_food, made.finished_g) == ((), ("cake picks",), 88.0)


def bought(batch: Batch) -> Product:
    """A torte that holds one thing bought as it is."""
    plan = read_torte("Torte\nSlices: 8\n\n380 g C3 in the shell\n").value
    built = build_torte(plan, {})
    torte = built.value if not isinstance(built, Infeasible) else None
    assert torte is not None
    return product_of_torte(replace(torte, batches=(batch,), mass_g=100.0), {}, status="assumed")
