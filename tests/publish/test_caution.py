"""The caution says what is known and what is not, and promises nothing."""

from dataclasses import replace

from krume.label import Statement, product_of_formula, statement
from krume.pantry import Lot
from krume.publish.caution import cautions, torte_cautions
from tests.design.studio import C1, C2, F1, F5, S1, eggs, formula, item

GANACHE = formula("C3", (item(160, "dark chocolate, 60 %"), item(160, "whipping cream")))
CHOCOLATE = Lot(
    "L-012",
    "dark chocolate, 60 %",
    "specification",
    notes="soya lecithin; may contain milk, nuts",
)


def declared(*lots: Lot, market: str = "eu") -> Statement:
    """What the lots declare of the ganache."""
    return statement(product_of_formula("C3", GANACHE), lots, market=market)


def test_allergens_are_named_by_the_markets_own_words() -> None:
    assert "Contains nuts (hazelnut), egg." in cautions(F1, "eu")
    assert "Contains tree nut (hazelnut), egg." in cautions(F1, "us")


def test_what_only_the_supplier_knows_is_asked() -> None:
    assert "Ask the supplier about baking powder." in cautions(F5, "eu")
    odd = formula("Odd", (item(10, "fonio"), item(10, "caster sugar")))
    assert "Ask the supplier about fonio." in cautions(odd, "eu")


def test_no_allergen_is_not_called_free_of_any() -> None:
    assert cautions(S1, "eu")[0] == "No declared allergen known in it."


def test_a_batter_is_not_for_tasting_and_a_boiled_custard_says_nothing_of_raw_egg() -> None:
    assert "Raw batter is not for tasting." in cautions(F1, "eu")
    assert not any("Raw" in text for text in cautions(C1, "eu"))


def test_a_cream_with_egg_that_no_step_heats_names_who_should_not_eat_it() -> None:
    raw = formula("Mousse", (eggs(2), item(90, "caster sugar")), ("Whisk eggs and sugar.",))
    assert any("pregnant" in text for text in cautions(raw, "eu"))


def test_gelatine_without_a_stated_animal_is_said() -> None:
    assert "Gelatine: its animal is not stated." in cautions(C2, "eu")


def test_a_spirit_is_not_for_children() -> None:
    spiked = replace(S1, lines=(*S1.lines, item(20, "rum")))
    assert "Contains alcohol: not for children." in cautions(spiked, "eu")


def test_what_the_lot_in_use_declares_stands_on_the_card() -> None:
    said = cautions(GANACHE, "eu", declared=declared(CHOCOLATE))
    assert said[:2] == ("Contains milk, soybean.", "May contain nuts.")
    assert not any("Ask the supplier" in text for text in said)
    whole = torte_cautions(
        (GANACHE, F1), "eu", keep=None, gelatine=None, declared=declared(CHOCOLATE)
    )
    assert whole[:2] == ("Contains milk, nuts (hazelnut), egg, soybean.", "May contain nuts.")


def test_without_a_lot_of_it_the_supplier_is_still_asked() -> None:
    said = cautions(GANACHE, "eu", declared=declared())
    assert said == cautions(GANACHE, "eu")
    assert "Ask the supplier about dark chocolate." in said
