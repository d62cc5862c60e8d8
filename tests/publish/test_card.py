"""The card as plain values: words beside numbers, nothing invented."""

import pytest

from krume.design import weigh_out
from krume.publish import Fact, bench_card, card_dict, missing_signs
from tests.design.studio import C1, C2, F1, F3, F5, S1, formula, item
from tests.publish.bench import IMPRINT, card, named


def test_the_head_of_the_hazel_card_is_tin_dial_and_shelled_eggs() -> None:
    assert card(F1, dial_c=182).facts == (
        Fact("tin", "round Ø 20 × 7 cm"),
        Fact("dial (oven 170 °C, no fan)", "182", "°C"),
        Fact("5 eggs EU M, shelled", "255", "g", "± 20"),
    )


def test_rows_print_running_totals_and_leave_the_eggs_to_the_scale() -> None:
    rows = {row.number: (row.take, row.add, row.display) for row in card(F1).rows}
    assert rows[5] == ("ground hazelnuts, toasted", "40", "144")
    assert rows[6] == ("yolks of 5 eggs", "about 87.5", "weigh")
    assert rows[12] == ("caster sugar, for the whites", "75", "75")


def test_the_sum_on_the_card_is_the_batter() -> None:
    assert card(F1).sum_text == ("last displays and eggs: 144 + 87.5 + 63 + 167.5 + 5 + 75 = 542 g")
    assert card(S1).sum_text == "last displays: 220 g"


def test_an_unknown_mass_is_named_in_the_sum_and_asked_in_its_row() -> None:
    made = formula("Pinch", (item(40, "white rice flour"), item(None, "xanthan gum")))
    found = card(made)
    assert found.sum_text == "last displays: 40 g, without xanthan gum (no mass)"
    assert (found.rows[-1].add, found.rows[-1].display) == ("not known", "ask")


def test_a_quarter_gram_is_added_as_written_and_shown_as_the_scale_can() -> None:
    row = next(row for row in card(F3).rows if row.take == "xanthan gum")
    assert (row.add, row.display, row.display_g) == ("0.25", "70.3", 70.25)


def test_a_formula_without_a_name_gets_a_word_for_it() -> None:
    assert card(named(F1, "\x1f")).name == "Formula without a name"


def test_signs_no_font_has_are_named_before_printing() -> None:
    assert missing_signs(card(F1)) == ()
    assert "🥜" in missing_signs(card(named(F1, "🥜")))[0].text


def test_notices_of_the_weighing_stand_on_the_card() -> None:
    assert card(S1).hints == ("No steps are written: the bowls are chosen by kind of ingredient.",)


@pytest.mark.parametrize("made", [F1, F3, F5, C1, C2, S1], ids=lambda made: made.name)
def test_every_line_is_on_the_card_and_no_gluten_sentence_is(made: object) -> None:
    found = bench_card(made, weigh_out(made), IMPRINT)  # type: ignore[arg-type]
    assert "No gluten sentence: evidence not judged yet." in found.cautions
    assert "gluten-free" not in str(card_dict(found)).casefold()
    assert "Local law decides." in found.cautions


def test_lines_to_weigh_twice_are_marked_in_each_of_their_rows_and_named_once() -> None:
    found = card(F3)
    marked = [(row.take, row.again) for row in found.rows if row.again]
    assert marked == [
        ("xanthan gum", "twice"),
        ("yolks of 4 eggs", "weigh"),
        ("caster sugar", "twice"),
        ("whites of 4 eggs", "weigh"),
        ("caster sugar, for the whites", "twice"),
    ]
    assert found.weigh_twice == (
        "Weigh twice: xanthan gum, caster sugar. Weigh the eggs (by count ± 16 g)."
    )


def test_a_card_where_nothing_matters_has_no_mark_and_no_line_for_it() -> None:
    found = card(C2)
    assert not any(row.again for row in found.rows)
    assert found.weigh_twice == ""
    assert card_dict(found)["weigh_twice"] == ""
