"""Figures of building."""

import pytest

from krume.base import NotFoundError
from krume.build import figure


def test_layers_are_usually_10_to_15_mm() -> None:
    assert (figure("layer-least").value, figure("layer-most").value) == (10.0, 15.0)
    assert figure("layer-least").status == "common practice"


def test_a_figure_that_is_not_there_is_named() -> None:
    with pytest.raises(NotFoundError, match="no-such-figure"):
        figure("no-such-figure")
