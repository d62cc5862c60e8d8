"""Every number of cooling has its papers."""

import pytest

from krume.bake.cooling.rows import cooling_doubt, cooling_figures, cooling_value
from krume.base import DataError
from tests.agreement import agrees


def test_no_figure_of_cooling_is_without_status_and_source() -> None:
    assert all(f.status and f.source and f.unit for f in cooling_figures().values())


def test_habits_put_into_figures_do_not_claim_to_be_measured() -> None:
    habits = ("split-most", "fill-most", "wrap-most", "roll-hottest", "roll-coldest")
    assert {cooling_figures()[key].status for key in habits} == {"assumed"}
    assert cooling_value("roll-coldest") < cooling_value("roll-hottest")
    assert cooling_value("fill-most") < cooling_value("split-most")


def test_a_doubt_that_its_row_does_not_give_is_never_taken_for_none() -> None:
    assert cooling_doubt("humidity") == 15.0
    with pytest.raises(DataError, match=r"cooling\.csv, row cloth"):
        cooling_doubt("cloth")


@pytest.mark.source("mcadams-1954", "warm plate facing up, laminar")
def test_the_plate_facing_up_has_the_handbooks_constant() -> None:
    assert agrees(cooling_value("plate-up"), "0.54")


@pytest.mark.source("mcadams-1954", "warm plate facing down")
def test_the_plate_facing_down_has_the_handbooks_constant() -> None:
    assert agrees(cooling_value("plate-down"), "0.27")
