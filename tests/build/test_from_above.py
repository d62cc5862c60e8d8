"""The torte from above: as many slices as written, a tier inside the tier below."""

import re
from dataclasses import replace

import pytest

from krume.build.from_above import deep_mm, from_above
from tests.build.studio import demo, torte_of


def test_there_are_as_many_cuts_as_slices() -> None:
    drawing = "".join(from_above(demo("T3"), "x"))
    (knife,) = re.findall(r'<path d="([^"]+)" fill="none" stroke="#2a2138" stroke-width=".5"',
                          drawing)  # fmt: skip
    assert knife.count("M") == 14
    assert 'fill="url(#x-jelly)"' in drawing


def test_a_roll_looks_from_above_as_from_the_side_and_is_not_drawn_twice() -> None:
    assert deep_mm(demo("T2")) == 0.0
    assert deep_mm(demo("T1")) == pytest.approx(203.0)


def test_decorations_are_drawn_as_many_as_they_are() -> None:
    torte = torte_of("1 layer of F1, 14 mm\n14 x 6 g C5 on top, piped")
    assert "".join(from_above(torte, "x")).count("<circle cx") == 14


def test_a_torte_without_slices_has_no_cuts() -> None:
    whole = replace(demo("T1"), slices=())
    assert 'stroke-width="1.2"' not in "".join(from_above(whole, "x"))
