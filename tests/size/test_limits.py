"""The figures of this folder: each a row with a status and a source."""

import pytest

from krume.evidence import figures, source
from krume.size.limits import figure, value
from tests.agreement import agrees


def test_every_figure_has_a_source_that_exists() -> None:
    for found in figures("tins.csv").values():
        assert source(found.source).key == found.source


@pytest.mark.source("metrologia-2001-water", "density at 20 C")
def test_water_at_20_degrees_weighs_what_is_printed() -> None:
    assert agrees(value("water-density-20"), "0.998207")


def test_a_figure_keeps_its_unit_and_its_status() -> None:
    assert (figure("depth-assumed").unit, figure("depth-assumed").status) == (
        "in",
        "common practice",
    )
