"""Lines of equal temperature: closed, on the right side, and never beyond the cake."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.publish.isotherms import Panel, Point, panels, warmer_than
from tests.publish.cakes import CUT, HOLED

TEMP = st.floats(20, 110)


def _area(loop: tuple[Point, ...]) -> float:
    pairs = zip(loop, (*loop[1:], loop[0]), strict=True)
    return sum(ax * bz - bx * az for (ax, az), (bx, bz) in pairs) / 2


def _share(panel: Panel, level: float) -> float:
    """Share of a panel inside its loops, holes taken out: the even-odd rule by areas."""
    loops = sorted((abs(_area(loop)) for loop in warmer_than(panel, level).loops), reverse=True)
    whole = (panel.x_cm[-1] - panel.x_cm[0]) * (panel.z_cm[-1] - panel.z_cm[0])
    return (loops[0] - sum(loops[1:]) if loops else 0.0) / whole


def test_a_round_cake_is_one_panel_and_a_tube_two() -> None:
    (whole,) = panels(CUT)
    assert (whole.x_cm[0], whole.x_cm[-1]) == (-10.0, 10.0)
    left, right = panels(HOLED)
    assert (left.x_cm[0], left.x_cm[-1]) == (-12.0, -3.0)
    assert (right.x_cm[0], right.x_cm[-1]) == (3.0, 12.0)
    assert left.temp_c[0] == tuple(reversed(right.temp_c[0]))


def test_every_cell_keeps_its_temperature_at_its_middle() -> None:
    (panel,) = panels(CUT)
    for row, z in enumerate((0.5, 1.5, 2.5, 3.5)):
        for ring, x in enumerate((2.0, 5.5, 8.0, 9.5)):
            at = panel.x_cm.index(pytest.approx(x)), panel.z_cm.index(pytest.approx(z))
            assert panel.temp_c[at[1]][at[0]] == pytest.approx(CUT.temp_c[row][ring])


def test_a_straight_field_is_cut_where_it_should_be() -> None:
    panel = Panel((0.0, 10.0), (0.0, 4.0), ((20.0, 120.0), (20.0, 120.0)))
    (loop,) = warmer_than(panel, 70.0).loops
    assert sorted({round(x, 6) for x, _ in loop}) == [5.0, 10.0]
    (line,) = warmer_than(panel, 70.0).lines
    assert {round(x, 6) for x, _ in line if 0 < _ < 4} <= {5.0}


def test_all_of_a_cake_is_warmer_than_nothing_of_it() -> None:
    (panel,) = panels(CUT)
    everything = warmer_than(panel, 10.0)
    assert everything.lines == ()
    assert abs(_area(everything.loops[0])) == pytest.approx(20.0 * 4.0)
    assert warmer_than(panel, 200.0).loops == ()


@given(rows=st.lists(st.lists(TEMP, min_size=3, max_size=3), min_size=3, max_size=3))
def test_less_of_a_cake_is_warmer_than_more(rows: list[list[float]]) -> None:
    section = replace(
        CUT,
        radius_cm=(0.0, 4.0, 8.0, 10.0),
        height_cm=(0.0, 1.0, 3.0, 4.0),
        temp_c=tuple(map(tuple, rows)),
    )
    (panel,) = panels(section)
    for level in (40.0, 60.0, 80.0):
        for loop in warmer_than(panel, level).loops:
            assert all(
                -10.0 - 1e-6 <= x <= 10.0 + 1e-6 and -1e-6 <= z <= 4.0 + 1e-6 for x, z in loop
            )


def test_the_cold_middle_is_a_hole_in_what_is_warmer() -> None:
    (panel,) = panels(CUT)
    shares = [_share(panel, level) for level in (55.0, 60.0, 80.0)]
    assert shares == sorted(shares, reverse=True)
    assert 0.5 < shares[0] < 1.0
    assert len(warmer_than(panel, 55.0).loops) == 2
