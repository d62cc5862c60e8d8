"""What a variation may begin with: each choice is one that is understood."""

import pytest

from krume.usecases import Asked, VaryWish, vary_formula
from krume.usecases.vary.choices import choices_of


@pytest.mark.parametrize("name", ["F1", "F5", "F6"])
def test_every_line_may_be_named_and_every_wish_is_known(demo: Asked, name: str) -> None:
    choices = choices_of(name, demo)
    for word, _ in choices.wishes:
        codes = {p.code for p in vary_formula(name, VaryWish(wishes=(word,)), demo).problems}
        assert "wish-unknown" not in codes
    for line in choices.lines:
        answer = vary_formula(name, VaryWish(cuts=(f"{line} 10 %",)), demo)
        assert {p.code for p in answer.problems} <= {"line-twice", "egg-carries"}


def test_every_fat_that_is_offered_is_taken(demo: Asked) -> None:
    for fat in choices_of("F1", demo).fats:
        wish = VaryWish(swaps=("hazelnut=sunflower",), fat=fat)
        assert vary_formula("F1", wish, demo).exit_code == 0
