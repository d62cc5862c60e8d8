"""Event and party pieces: whole pieces of the full area, never more than there is."""

import math

from hypothesis import given
from hypothesis import strategies as st

from krume.build.cutting import cuts_of, pieces_of
from krume.build.outline import Outline
from tests.build.studio import demo, torte_of


@given(st.floats(5, 60), st.floats(1, 6), st.floats(1, 8))
def test_pieces_of_a_round_torte_never_need_more_than_its_area(
    across: float, wide: float, deep: float
) -> None:
    count = pieces_of(Outline(across), wide_cm=wide, deep_cm=deep)
    assert count * wide * deep <= math.pi / 4 * across**2 + 1e-6


def test_a_rectangle_is_cut_the_better_way_round() -> None:
    sheet = Outline(length_cm=30.0, width_cm=20.0)
    assert pieces_of(sheet, wide_cm=2.5, deep_cm=5.0) == 48
    assert pieces_of(Outline(length_cm=10.0, width_cm=4.0), wide_cm=4.0, deep_cm=5.0) == 2


def test_a_torte_comes_with_event_and_party_pieces_and_their_grams() -> None:
    torte = torte_of("2 layers of F1, 14 mm")
    event, party = cuts_of(torte)
    assert (event.count, party.count) == (24, 14)
    assert torte.mass_g is not None and event.mass_g is not None
    assert event.mass_g * math.pi * 100 / 12.5 == torte.mass_g
    assert event.status == "common practice"


def test_a_roll_is_not_cut_in_rows() -> None:
    assert demo("T2").cuts == ()
