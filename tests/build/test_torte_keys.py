"""Rings, frames, waste and slices as they are typed."""

import pytest

from krume.base import Problem
from krume.build import RingLine, TortePlan
from krume.build.plain import plain_text
from krume.build.torte_keys import read_key


def key(text: str) -> object:
    """What one line with a key says."""
    plain = plain_text(f"A\n{text}\n\n1 layer of F1", what="torte", example="")
    return read_key(TortePlan("A"), plain.key_lines()[0])


def ring(text: str) -> RingLine:
    """The ring or frame of a line."""
    found = key(text)
    assert isinstance(found, TortePlan) and found.ring is not None
    return found.ring


def test_a_frame_has_two_sides_and_a_height() -> None:
    assert ring("Frame: 20 x 30 x 6 cm").outline.area_cm2 == 600.0
    assert (
        ring("Frame: square 24 x 6 cm").length_cm,
        ring("Ring: square 24 x 6 cm").height_cm,
    ) == (
        24.0,
        6.0,
    )


def test_a_ring_is_round() -> None:
    assert ring("Ring: 22 x 6 cm").outline.diameter_cm == 22.0


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("Frame: 22 x 6 cm", "ring-unread"),
        ("Ring: 0 x 6 cm", "ring-unread"),
        ("Frame: 30 x 0 x 6 cm", "ring-unread"),
        ("Waste: a lot", "waste-unread"),
        ("Waste: 90 %", "waste-unread"),
        ("Slices: many", "slices-unread"),
    ],
)
def test_what_is_no_ring_and_no_share_is_asked(text: str, code: str) -> None:
    found = key(text)
    assert isinstance(found, Problem)
    assert found.code == code


def test_a_share_of_waste_is_read() -> None:
    found = key("Waste: 7,5 %")
    assert isinstance(found, TortePlan)
    assert found.waste_pct == 7.5
