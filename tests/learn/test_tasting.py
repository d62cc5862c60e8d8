"""The triangle test: printed critical numbers, and the exact tail."""

import math
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import OutOfRangeError
from krume.learn import triangle_test
from tests.agreement import agrees

FIVE = Fraction(5, 100)


@pytest.mark.source("iso-4120", "table at 5 %: R39, triangle test of the checks")
@pytest.mark.parametrize(
    ("n", "critical", "p", "one_less"),
    [(12, "8", "0.0188", None), (24, "13", "0.0284", "0.0677"), (36, "18", "0.0283", "0.0584"),
     (60, "27", "0.0397", "0.0680")],
)  # fmt: skip
def test_critical_numbers_are_the_printed_ones(
    n: int, critical: str, p: str, one_less: str | None
) -> None:
    found = triangle_test(n, alpha=FIVE)
    assert agrees(found.critical or -1, critical)
    assert agrees(found.p_value, p)
    if one_less is not None:
        less = triangle_test(n, alpha=FIVE, correct=int(critical) - 1)
        assert agrees(less.p_value, one_less)


@given(n=st.integers(1, 60), correct=st.integers(0, 60))
def test_the_chance_is_the_binomial_tail(n: int, correct: int) -> None:
    correct = min(correct, n)
    tail = sum(math.comb(n, k) * 2 ** (n - k) for k in range(correct, n + 1)) / 3**n
    assert triangle_test(n, alpha=FIVE, correct=correct).p_value == pytest.approx(tail)


def test_too_few_tasters_have_no_critical_number() -> None:
    found = triangle_test(2, alpha=FIVE)
    assert (found.critical, found.p_value) == (None, None)


def test_what_cannot_be_is_refused() -> None:
    for call in (
        {"n": 0}, {"n": 5000}, {"alpha": Fraction(0)}, {"alpha": Fraction(1)}, {"correct": 13},
        {"correct": -1},
    ):  # fmt: skip
        values = {"n": 12, "alpha": FIVE, "correct": None} | call
        with pytest.raises(OutOfRangeError):
            triangle_test(values["n"], alpha=values["alpha"], correct=values["correct"])  # type: ignore[arg-type]
