"""The ruled edges: minutes and degrees lie where they are read."""

import pytest

from krume.publish.plot import at_minute, axes, cut_to, plot_of


def test_the_last_minute_and_the_hottest_degree_lie_inside() -> None:
    plot = plot_of(34.0, 145.0, narrow=True)
    assert plot.x(34.0) < plot.x(plot.most_min) == plot.wide - 12
    assert plot.y(145.0) > plot.y(plot.most_c)


def test_minutes_too_near_to_be_told_apart_get_a_tick_every_five() -> None:
    wide = "".join(axes(plot_of(80.0, 100.0, narrow=False)))
    narrow = "".join(axes(plot_of(80.0, 100.0, narrow=True)))
    assert wide.count("v4") > 60
    assert narrow.count("v4") == 0


def test_a_curve_ends_at_the_edge_of_the_drawing() -> None:
    plot = plot_of(20.0, 100.0, narrow=True)
    shown = plot.shown((0.0, 20.0, 60.0), (20.0, 60.0, 100.0))
    assert shown[-1][0] == plot.most_min
    assert shown[-1][1] == pytest.approx(60.0 + (plot.most_min - 20.0))


@pytest.mark.parametrize(
    ("minute", "temp"), [(-1.0, 20.0), (5.0, 30.0), (15.0, 70.0), (99.0, 100.0)]
)
def test_a_curve_is_straight_between_its_points(minute: float, temp: float) -> None:
    assert at_minute(minute, (0.0, 10.0, 20.0), (20.0, 40.0, 100.0)) == temp


def test_long_words_are_cut_at_a_sign() -> None:
    assert cut_to("dark round 26 cm", 16) == "dark round 26 cm"
    assert cut_to("dark round 26 cm", 10) == "dark roun…"
