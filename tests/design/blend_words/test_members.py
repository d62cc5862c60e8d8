"""Which flours at hand a word means: by its own words first, then by the pantry's."""

import pytest

from krume.design import AtHand, Members, members_of
from krume.design.blend_words.members import keys_meant

HAND = (
    AtHand("brown rice flour", "flour-rice-brown", "flour"),
    AtHand("Hirsemehl", "flour-millet", "flour"),
    AtHand("tapioca starch", "starch-tapioca", "starch"),
    AtHand("sweet rice flour", "flour-rice-sweet-shiratama", "flour", is_sweet_rice=True),
    AtHand("ground almonds", "almonds-blanched", "nut"),
)


@pytest.mark.parametrize(
    ("words", "places"),
    [
        ("starch", (2,)),
        ("flour", (0, 1, 3)),
        ("nuts", (4,)),
        ("rice", (0,)),
        ("flour-rice-sweet-shiratama", (3,)),
        ("sweet rice", (3,)),
        ("glutinous rice flour", (3,)),
        ("millet", (1,)),
        ("millet flour", (1,)),
        ("tapioca", (2,)),
        ("the rice", (0,)),
        ("rice + sweet rice", (0, 3)),
        ("rice and millet", (0, 1)),
    ],
)
def test_a_word_finds_its_flours(words: str, places: tuple[int, ...]) -> None:
    assert members_of(words, HAND).places == places


def test_a_known_flour_that_is_not_there_is_told_from_a_word_nobody_knows() -> None:
    assert members_of("teff", HAND) == Members("teff")
    assert members_of("teff", HAND).is_known
    assert not members_of("blarg", HAND).is_known


def test_two_that_fit_are_both_given_and_neither_is_taken() -> None:
    hand = (*HAND, AtHand("white rice flour", "flour-rice-white", "flour"))
    found = members_of("rice", hand)
    assert (found.places, found.others) == ((), (0, 5))


def test_a_name_that_is_asked_gives_all_that_it_may_mean() -> None:
    assert set(keys_meant("rice flour")) >= {"flour-rice-white", "flour-rice-brown"}
    assert keys_meant("blarg") == ()
