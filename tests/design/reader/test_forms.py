"""The forms of a line, and the grammar that tells them."""

import pytest

from krume.design.reader.forms import FORMS, form_of, shape_of
from krume.design.reader.tokens import tokens
from krume.evidence import packed_text


def form(line: str) -> str:
    return form_of(shape_of(tokens(line, 0, len(line))).signs).kind


@pytest.mark.parametrize(
    ("line", "kind"),
    [
        ("1 (8-ounce) package cream cheese", "packaged"),
        ("2 400 g tins cherries", "packaged"),
        ("2 packets (8 g each) vanilla sugar", "packaged"),
        ("2 x 100 g sugar", "times"),
        ("1/2 inch piece cinnamon", "sized"),
        ("1 cup plus 2 tbsp flour", "added"),
        ("1 lb 2 oz honey", "joined"),
        ("3 oz (85 g) flour", "doubled"),
        ("1 cup / 120 g flour", "doubled"),
        ("85 g flour", "measured"),
        ("25-30 g flour", "measured"),
        ("few grains salt", "vague"),
        ("pinch of salt", "pinched"),
        ("scant cup sugar", "pinched"),
        ("40 % rice flour", "share"),
        ("rice flour 40 %", "share"),
        ("5 eggs, medium", "counted"),
        ("flour: 85 g", "named"),
        ("flour ..... 85 g", "named"),
        ("butter (85 g)", "named"),
        ("xantan a pinch", "named"),
        ("Whites 3 eggs", "of_some"),
        ("eggs 4", "of_some"),
        ("powdered sugar", "bare"),
    ],
)
def test_a_line_takes_the_form_it_is_written_in(line: str, kind: str) -> None:
    assert form(line) == kind


def test_every_form_is_a_rule_of_the_grammar_in_the_order_it_is_tried() -> None:
    rules = [
        line.partition(":")[0]
        for line in packed_text("forms.lark").splitlines()
        if ":" in line[:12]
    ]
    assert [rule for rule in rules if rule in FORMS] == list(FORMS)


@pytest.mark.parametrize("signs", ["", "(", "))", "N", "NN", "-", "N-N-N", "%" * 120, "(" * 120])
def test_a_shape_that_fits_nothing_is_bare_or_counted(signs: str) -> None:
    assert form_of(signs).kind in FORMS
