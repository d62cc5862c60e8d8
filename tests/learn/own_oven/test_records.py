"""Readings and their figures."""

import pytest

from krume.learn import Prior, Reading
from krume.learn.own_oven.records import SHELVES, TESTS, Flag, figure


def test_a_reading_knows_its_mean_its_offset_and_its_rise() -> None:
    reading = Reading("r", 160.0, (148.0, 152.0, 144.0))
    assert (reading.mean_c, reading.offset_c, reading.rise_c) == (148.0, -12.0, -4.0)


def test_every_number_is_a_row_with_its_value() -> None:
    assert figure("odd") == 0.4
    with pytest.raises(KeyError):
        figure("nothing")


def test_the_words_for_tests_and_shelves_are_few() -> None:
    assert TESTS == ("probe", "skewer", "colour")
    assert SHELVES == ("low", "middle", "high")


def test_records_are_values_that_may_be_compared() -> None:
    assert Flag("a", "b", "c") == Flag("a", "b", "c")
    assert hash(Prior(0, 0.25, 5, 2)) == hash(Prior(0, 0.25, 5, 2))
