"""A label as plain text and as JSON: the same words, and nothing typed acts."""

import json
from dataclasses import replace

import pytest

from krume.publish import label_json, label_text
from tests.publish.labels import label, us_label, with_panel

NASTY = "=cmd|'/c calc'!A1\x1b[31m\u202egnp.exe\x00<script>alert(1)</script>\r\nBcc: all"


def test_the_text_has_every_word_of_the_label_in_its_order() -> None:
    text = label_text(replace(with_panel(), code="270610-1"))
    said = [
        "Cake",
        "Ingredients: EGG, sugar.",
        "May contain: nuts",
        "per 100 g",
        "Fat: 10 g, 8.5 g",
    ]
    said += ["Keep cold.", "Lot 270610-1", "Made by A", "balanced, not baked"]
    places = [text.index(words) for words in said]
    assert places == sorted(places)


def test_the_text_of_a_us_label_has_the_rows_of_its_box() -> None:
    lines = label_text(us_label()).splitlines()
    assert "Serving size 1/15 cake (75 g)" in lines
    assert "Calories 230" in lines
    assert "Includes 10g Added Sugars 20%" in lines
    assert "NET WT 42.1 OZ (2 LB 10.1 OZ) (1194 g)" in lines
    assert "Calories 230, 230" in label_text(us_label(columns=2)).splitlines()


def test_each_list_has_a_line_of_its_own() -> None:
    text = label_text(label(ingredients="Sponge: EGG\nCream: MILK"))
    assert "Ingredients: Sponge: EGG.\nCream: MILK.\n" in text


@pytest.mark.parametrize("field", ["name", "ingredients", "maker", "durability"])
def test_signs_of_control_and_direction_are_left_out_of_the_text(field: str) -> None:
    text = label_text(label(**{field: NASTY}))
    assert all(sign == "\n" or sign.isprintable() for sign in text)
    assert "\u202e" not in text


def test_json_comes_back_as_it_went_in_but_for_what_turns_a_line_round() -> None:
    made = label_json(label(name=NASTY))
    assert made.isascii()
    assert all(sign == "\n" or sign.isprintable() for sign in made)
    assert json.loads(made)["name"] == NASTY.replace("\u202e", "")
