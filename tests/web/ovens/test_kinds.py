"""The tables of the page of ovens: each question stands beside the field it is about."""

import pytest

from krume.base import Problem
from krume.usecases.own_oven.cells import BAKES_HEAD, READINGS_HEAD
from krume.web.ovens.kinds import BAKES, READINGS, TINS
from krume.web.tables.kinds import TableKind


def test_the_forms_have_every_column_of_their_tables() -> None:
    assert set(BAKES.head) == set(BAKES_HEAD)
    assert set(READINGS.head) == set(READINGS_HEAD)


@pytest.mark.parametrize(
    ("kind", "code", "field"),
    [
        (READINGS, "reading-unread", "read_c"),
        (READINGS, "dial-unit", "dial_c"),
        (READINGS, "after-unread", "after_min"),
        (BAKES, "bake-core", "core_c"),
        (BAKES, "bake-rim", "batter_g"),
        (BAKES, "bake-order", "not_done_min"),
        (BAKES, "formula-unknown", "formula"),
        (BAKES, "tin-unread", "tin"),
        (TINS, "tin-count-unread", "count"),
    ],
)
def test_a_question_stands_beside_its_field(kind: TableKind, code: str, field: str) -> None:
    assert kind.field_of(Problem(code, "", "", "")) == field
