"""The words of tins: every word leads to a shape, a material or a meaning that exists."""

from krume.size import MATERIALS, SHAPES
from krume.size.words import (
    ADJECTIVES,
    CUP_WORDS,
    FLUTED,
    IGNORED,
    MATERIAL_WORDS,
    NOUNS,
    PHRASES,
    SHAPE_WORDS,
)


def test_every_shape_word_means_a_shape_and_every_shape_has_a_word() -> None:
    assert set(SHAPE_WORDS.values()) == set(SHAPES)


def test_every_material_word_means_a_material_and_every_material_has_a_word() -> None:
    assert set(MATERIAL_WORDS.values()) == set(MATERIALS)


def test_no_word_means_two_things() -> None:
    kinds = (set(SHAPE_WORDS), set(MATERIAL_WORDS), set(ADJECTIVES), set(NOUNS), set(CUP_WORDS))
    assert sum(map(len, kinds)) == len(set().union(*kinds))
    assert not set(IGNORED) & (set(SHAPE_WORDS) | set(MATERIAL_WORDS))


def test_phrases_end_in_words_that_are_known() -> None:
    known = set(SHAPE_WORDS) | set(MATERIAL_WORDS) | IGNORED | {"ungreased"}
    assert {word for _, word in PHRASES} <= known
    assert set(SHAPE_WORDS) >= FLUTED
