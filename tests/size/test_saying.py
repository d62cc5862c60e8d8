"""What an option says, in a baker's words."""

from dataclasses import replace

import pytest

from krume.size import SizedEggs, SizeOption
from krume.size.saying import length_text, option_text

WHOLE = SizeOption("whole", 1.2, (), (SizedEggs("e", 6, "eu-m", "whole", 306.0, 0.0),), 622.8,
                   4.003, 0.5, (), "")  # fmt: skip


@pytest.mark.parametrize(
    ("cm", "text"), [(1.15, "11.5 mm"), (1.1, "11 mm"), (2.0, "2.0 cm"), (3.333, "3.3 cm")]
)
def test_thin_is_said_in_millimetres(cm: float, text: str) -> None:
    assert length_text(cm) == text


def test_depth_comes_before_grams() -> None:
    assert option_text(WHOLE, wanted_cm=3.44, before_g=519.0) == (
        "6 eggs, everything x 1.2: 4.0 cm deep instead of 3.4, 104 g more batter."
    )


def test_less_batter_is_said_as_less() -> None:
    option = replace(WHOLE, factor=0.8, total_g=415.2, depth_cm=1.15)
    assert option_text(option, wanted_cm=3.44, before_g=519.0) == (
        "6 eggs, everything x 0.8: 11.5 mm deep instead of 3.4 cm, 104 g less batter."
    )


@pytest.mark.parametrize(
    ("count", "part", "make_up", "words"),
    [
        (1, "whole", 0.0, "1 egg,"),
        (5, "whole", 8.2, "5 eggs + 8.2 g of one more,"),
        (4, "whole", -8.2, "4 eggs less 8.2 g,"),
        (0, "whole", 20.0, "20 g of one egg,"),
        (4, "yolk", 0.0, "4 yolks,"),
    ],
)
def test_eggs_are_counted_and_the_rest_is_grams(
    count: int, part: str, make_up: float, words: str
) -> None:
    option = replace(WHOLE, kind="exact", eggs=(SizedEggs("e", count, "", part, 0.0, make_up),))
    assert option_text(option, wanted_cm=None, before_g=None).startswith(words)


def test_unknown_depth_and_mass_are_left_out() -> None:
    bare = replace(WHOLE, kind="as-is", depth_cm=None, total_g=None)
    assert option_text(bare, wanted_cm=3.0, before_g=519.0) == "Change nothing."
    assert option_text(replace(WHOLE, eggs=(), depth_cm=3.0), wanted_cm=None, before_g=None) == (
        "Everything x 1.2: 3.0 cm deep."
    )
