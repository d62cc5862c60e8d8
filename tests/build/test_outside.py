"""What goes on top and around is put on in the order of the text."""

import pytest

from tests.build.studio import torte_of


def test_a_crumb_coat_lies_under_the_coat_and_both_are_weighed() -> None:
    torte = torte_of(
        "2 layers of F1, 14 mm\n1 mm C5 around and on top, crumb coat\n3 mm C5 around and on top"
    )
    whole = torte_of("2 layers of F1, 14 mm\n4 mm C5 around and on top")
    crumb, coat = torte.layers[-2:]
    assert (crumb.word, coat.word) == ("crumb coat", "coat")
    assert (crumb.mass_g or 0) + (coat.mass_g or 0) == pytest.approx(whole.layers[-1].mass_g)
    assert (crumb.top_mm, coat.top_mm) == (29.0, 32.0)


def test_a_decoration_between_two_coats_moves_neither() -> None:
    torte = torte_of(
        "2 layers of F1, 14 mm\n2 mm C5 around and on top\n5 x 4 g C5 on top, piped\n"
        "2 mm C5 around and on top"
    )
    assert torte.height_mm == pytest.approx(32.0)
    assert torte.mass_g == pytest.approx(sum(layer.mass_g or 0 for layer in torte.layers))
