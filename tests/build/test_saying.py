"""Sentences about a torte: what is there is said, what is not known is named."""

from krume.build import said_of
from tests.build.studio import demo, torte_of


def test_the_cakes_say_what_is_cut_and_what_is_left() -> None:
    said = said_of(demo("T1"))
    assert said.cakes == ("F1: 14 + 14 + 14 mm of 50 mm, 8 mm for hump, crust and crumbs",)
    assert said.surface == "Surface: top 324 cm², side 421 cm², together 745 cm²"


def test_a_second_layer_that_would_come_is_told() -> None:
    said = said_of(torte_of("1 layer of F1, 14 mm"))
    assert said.cakes[0].endswith("3 layers of 14 mm would come from it")


def test_small_pieces_are_told_with_their_grams_and_status() -> None:
    said = said_of(demo("T3"))
    assert said.cuts[0] == "29 event pieces of 2.5 × 5 cm, 51.8 g each (common practice)"


def test_waste_and_the_height_with_decorations_are_told() -> None:
    said = said_of(
        torte_of("2 layers of F1, 14 mm\n10 x 8 g C5 on top, piped, 20 mm high, 20 % waste")
    )
    assert said.plate == "With what stands on it 48 mm high"
    assert said.waste == ("Cooked-white buttercream: 20.0 g stay in bag, bowl and on the board",)


def test_a_roll_has_a_round_and_two_ends() -> None:
    assert said_of(demo("T2")).surface.startswith("Surface: round 771 cm²")
