"""`krume.build.standing.figures`: the table of standing."""

import pytest

from krume.build.standing.figures import value


def test_gravity_is_the_defined_one() -> None:
    assert value("gravity") == 9.80665


def test_a_name_that_is_not_there_is_no_zero() -> None:
    with pytest.raises(KeyError):
        value("lightness")
