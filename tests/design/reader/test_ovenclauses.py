"""krume.design.reader.ovenclauses: a temperature belongs to the oven, or to something else."""

import re

import pytest

from krume.design.reader.ovenclauses import clause_before, in_other_unit, is_left


@pytest.mark.parametrize(
    ("text", "keyed", "left"),
    [
        ("Bake at 170", False, False),
        ("Bake to a core of 95", False, True),
        ("Melt at 45", False, True),
        ("170 C, core 95", True, True),
        ("fan 150", True, False),
    ],
)
def test_the_last_figure_of_a_clause_is_the_ovens_or_is_left(
    text: str, keyed: bool, left: bool
) -> None:
    match = re.search(r"\d+$", text)
    assert match is not None
    assert is_left(text, match, keyed=keyed) == left


def test_a_bracket_right_behind_says_the_same_once_more() -> None:
    text = "core 95 C (203 F)"
    match = re.search("203 F", text)
    assert match is not None
    assert in_other_unit(text, 9, match)
    assert not in_other_unit(text, -1, match)


def test_a_clause_begins_behind_a_comma() -> None:
    assert clause_before("170 C, core 95", 12) == " core "
