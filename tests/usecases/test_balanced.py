"""A reader's guess never blocks the balance's own; a person's word always stands."""

from dataclasses import replace

import pytest

from krume.usecases import Asked
from krume.usecases.balanced import balanced
from krume.usecases.read import formula_of


@pytest.mark.parametrize(
    ("name", "family"),
    [("C1", "custard-lightened"), ("C2", "set-cream"), ("C5", "cooked-white-buttercream"),
     ("C3", "ganache"), ("C4", "jelly"), ("S1", "syrup"), ("F2", "separated")],
)  # fmt: skip
def test_every_text_of_the_demo_finds_its_family(demo: Asked, name: str, family: str) -> None:
    assert balanced(formula_of(name, demo).formula).family == family


def test_a_declared_word_that_is_no_family_stays_unknown(demo: Asked) -> None:
    formula = replace(formula_of("F2", demo).formula, family="soufflé", family_basis="declared")
    assert balanced(formula).family is None
