"""Planned values are named when they are missing; figures of cost are rows of the table."""

from dataclasses import fields
from decimal import Decimal

import pytest

from krume.base import NotFoundError
from krume.cost import PLANNED, Planned, figure, missing_plans


def test_every_planned_value_has_its_question() -> None:
    assert [f.name for f in fields(Planned)] == [*PLANNED, "status"]
    assert all(question.endswith("?") for question, _ in PLANNED.values())


def test_what_is_not_said_is_named_and_nothing_else() -> None:
    assert missing_plans(Planned()) == tuple(PLANNED)
    assert "boxes" not in missing_plans(Planned(boxes=Decimal(0)))


def test_a_figure_without_a_row_is_not_found() -> None:
    assert figure("egg-part").value == 0.5
    with pytest.raises(NotFoundError, match=r"cost\.csv has no figure 'love'"):
        figure("love")
