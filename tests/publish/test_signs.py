"""No sign is ever printed as an empty box."""

from importlib.resources import files

import pytest
from fontTools.ttLib import TTFont  # type: ignore[import-untyped]
from hypothesis import given
from hypothesis import strategies as st

from krume.publish.signs import covered, missing_notice, printable

FAMILIES = (("next-400", "next-600", "next-800"), ("other-400", "other-700"))


def cmap(name: str) -> set[int]:
    path = files("krume.publish").joinpath("fonts", f"{name}.ttf")
    return set(TTFont(str(path)).getBestCmap())


def test_the_list_of_signs_is_what_every_weight_of_a_family_has() -> None:
    in_fonts = {
        sign for weights in FAMILIES for sign in set.intersection(*(cmap(name) for name in weights))
    }
    assert covered() == in_fonts


@pytest.mark.parametrize(
    "text",
    [
        "Zażółć gęślą jaźń Ő ğ ș",
        "Фундук молотый",
        "φουντούκια",
        "עוגת אגוזי לוז",
        "زبدة الفستق",
        "½ ⅓ ¼ → ≈ ≤ ≥ ✓ ⌀ Ø × ± € “ ” ’ …",
    ],
)
def test_scripts_and_marks_of_the_trade_are_all_there(text: str) -> None:
    assert printable(text).missing == ()
    assert printable(text).text == text


def test_a_sign_without_a_glyph_is_spelled_out_and_named() -> None:
    found = printable("85 g 🥜 漢")
    assert found.text == "85 g [peanuts] [U+6F22]"
    assert found.missing == ("🥜", "漢")
    assert "漢 (U+6F22)" in missing_notice(found.missing)[0].text


def test_marks_of_direction_and_controls_are_left_out_without_a_word() -> None:
    found = printable("a\u202eb\u200fc\x00d\te")
    assert (found.text, found.missing) == ("abcd e", ())


def test_no_missing_sign_is_no_notice() -> None:
    assert missing_notice(()) == ()


@given(st.text())
def test_whatever_is_typed_comes_out_in_signs_the_fonts_have(text: str) -> None:
    assert {ord(sign) for sign in printable(text).text} <= covered()
