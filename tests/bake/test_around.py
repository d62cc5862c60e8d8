"""Figures of what stands round the tin: each with its doubt and its status."""

from krume.bake.around import around_figures, around_value


def test_every_figure_has_a_doubt_a_status_and_a_reason() -> None:
    for key, figure in around_figures().items():
        assert figure.half_width is not None and figure.half_width > 0, key
        assert figure.basis and figure.status in ("assumed", "from memory", "derived"), key


def test_a_value_is_its_rows() -> None:
    assert around_value("warming") == around_figures()["warming"].value == 240
