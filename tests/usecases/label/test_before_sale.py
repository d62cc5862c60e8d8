"""What is told before a sale from afar: allergens, traces, what is not known, no promise."""

from dataclasses import replace
from pathlib import Path

import pytest

from krume.usecases import Asked, LabelOf, LabelWish, label_of
from krume.usecases.label.before_sale import before_sale


@pytest.fixture
def walnut(demo: Asked) -> LabelOf:
    """The label of the demo's walnut torte."""
    return label_of("T3", LabelWish(market="eu"), demo).result.labels[0]


def test_it_names_allergens_traces_and_the_list(walnut: LabelOf) -> None:
    text = walnut.before_sale
    assert text.startswith("Net-loft ring torte: before you order\n")
    assert "Allergens in it: egg, milk, nuts (walnut)." in text
    assert "Made where nuts are used: hazelnut." in text
    assert "gelatine (beef)" in text
    assert text.endswith("Local law decides what else must be told before a sale.")


def test_a_closed_gate_promises_nothing_about_gluten(walnut: LabelOf) -> None:
    assert "Nothing is promised about gluten." in walnut.before_sale
    assert "gluten-free" not in walnut.before_sale.casefold()


def test_the_open_gate_alone_brings_its_sentence(walnut: LabelOf) -> None:
    opened = replace(walnut.gluten, claim_allowed=True, sentence="Gluten-free")
    assert "Gluten-free." in before_sale(replace(walnut, gluten=opened))


def test_what_is_not_known_is_named_and_never_read_as_none(demo: Asked) -> None:
    label = label_of("T1", LabelWish(market="eu"), demo).result.labels[0]
    assert "Of part of it that is not known yet" in label.before_sale
    assert "Not known yet:" in label.before_sale


def test_no_traces_on_paper_are_no_promise(walnut: LabelOf) -> None:
    text = before_sale(replace(walnut, may_contain=()))
    assert "that is no promise that there are none" in text


def test_nothing_is_called_safe_or_free_from_anything(walnut: LabelOf) -> None:
    for word in ("safe", "free from", "free of"):
        assert word not in walnut.before_sale.casefold()


def test_a_text_nobody_can_read_says_so(demo: Asked, tmp_path: Path) -> None:
    file = tmp_path / "odd.txt"
    file.write_text("Odd\n\n100 g moon dust\n", encoding="utf-8")
    text = label_of(str(file), LabelWish(market="eu"), demo).result.labels[0].before_sale
    assert "not known yet" in text
