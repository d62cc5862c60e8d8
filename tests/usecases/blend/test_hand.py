"""The flours that may be at hand, as a page lists them before anything is chosen."""

from dataclasses import replace

from krume.usecases import Asked, BlendWish, choose_blend
from krume.usecases.blend.hand import flours_at_hand


def test_what_is_taken_is_what_a_blend_without_a_list_takes(demo: Asked) -> None:
    rows = flours_at_hand("F2", demo)
    taken = [row.ingredient for row in rows if row.is_taken]
    answer = choose_blend(BlendWish(match="F2"), demo)
    assert sorted(taken) == sorted(answer.result.composition)


def test_a_lot_whose_record_ran_out_is_shown_and_not_taken(demo: Asked) -> None:
    (millet,) = [row for row in flours_at_hand("F2", demo) if row.name == "millet flour"]
    assert (millet.lot, millet.state, millet.is_taken) == ("L-004", "expired", False)


def test_the_formulas_own_flours_come_with_their_grams(demo: Asked) -> None:
    grams = {row.name: row.was_g for row in flours_at_hand("F2", demo) if row.was_g is not None}
    assert sum(grams.values()) == 105
    assert all(row.was_g is None for row in flours_at_hand(None, demo))


def test_no_book_has_only_what_the_formula_has(bare: Asked) -> None:
    assert flours_at_hand(None, bare) == ()
    typed = replace(bare, typed=b"Cake\n\n60 g white rice flour\n40 g potato starch\n")
    rows = flours_at_hand("-", typed)
    assert [(row.name, row.lot, row.is_taken) for row in rows] == [
        ("white rice flour", None, True),
        ("potato starch", None, True),
    ]
