"""One label on its way to a browser."""

import pytest

from krume.base import InputError, NotFoundError
from krume.usecases import Asked, LabelWish, PrintWish, label_bytes, layout_names

BARE = LabelWish(market="eu", with_panel=False)


@pytest.mark.parametrize("format_", ["pdf", "html", "txt", "json"])
def test_a_label_is_drawn_in_the_form_asked_for(demo: Asked, format_: str) -> None:
    more = PrintWish(code="270611-1")
    made = label_bytes("T3", "T3", format_, BARE, demo, more=more)
    assert made.is_as_written
    assert made.media.split(";")[0].split("/")[1] in ("pdf", "html", "plain", "json")
    if format_ != "pdf":
        assert b"270611-1" in made.data


def test_a_held_label_is_refused_with_what_holds_it(demo: Asked) -> None:
    with pytest.raises(InputError, match="L-016"):
        label_bytes("T1", "T1", "pdf", BARE, demo)


def test_a_label_too_long_for_its_paper_is_refused_with_the_height_it_needs(demo: Asked) -> None:
    us = LabelWish(market="us")
    with pytest.raises(InputError, match="mm of height") as raised:
        label_bytes("F4", "F4", "pdf", us, demo, layout="single-62x100")
    assert raised.value.field == "labels"


@pytest.mark.parametrize(("of", "format_"), [("T9", "pdf"), ("T3", "exe"), ("", "")])
def test_a_label_nobody_has_is_not_found(demo: Asked, of: str, format_: str) -> None:
    with pytest.raises(NotFoundError):
        label_bytes("T3", of, format_, BARE, demo)


def test_each_layout_is_named_in_words() -> None:
    names = {each.key: each.words for each in layout_names()}
    assert "endless roll" in names["roll-62"]
    assert "A4" in names["a4-2x4"]
