"""Constants: rows with papers, and the range that every sum keeps."""

import math

import pytest

from krume.base import OutOfRangeError
from krume.evidence import load, source
from krume.properties import CONSTANT_COLUMNS, constant, constants, within
from tests.agreement import agrees

FILES = ("constants.csv", "keeping.csv", "declared.csv", "ovens.csv")


@pytest.mark.parametrize("file", FILES)
def test_every_constant_has_a_source_that_exists(file: str) -> None:
    for row in load(file, CONSTANT_COLUMNS):
        assert source(row.text("source")).title
        assert row.text("status") != "from memory" or row.text("source") != "krume"


@pytest.mark.source("codata-2018", "molar gas constant, exact")
def test_the_gas_constant_is_the_exact_one() -> None:
    assert agrees(constant("gas-constant"), "8.314462618")


def test_an_unknown_constant_is_a_fault() -> None:
    with pytest.raises(KeyError):
        constant("no-such-constant")
    assert constants("keeping.csv")["cooling-start"] == 57.0


@pytest.mark.parametrize("amount", [-0.1, 90.1, math.nan, math.inf])
def test_outside_the_range_the_range_is_named(amount: float) -> None:
    with pytest.raises(OutOfRangeError) as caught:
        within("sugar", amount, 0.0, 90.0, "%")
    assert (caught.value.field, caught.value.want) == ("sugar", "0 to 90 %")


def test_an_open_range_says_or_more_and_refuses_infinity() -> None:
    assert within("mass", 0.0, 0.0, math.inf) == 0.0
    with pytest.raises(OutOfRangeError) as caught:
        within("mass", math.inf, 0.0, math.inf, "g")
    assert caught.value.want == "0 g or more"
