"""The triangle test: whether tasters can tell two cakes apart."""

import math
from dataclasses import dataclass
from fractions import Fraction

from krume.base import OutOfRangeError

_THIRD = Fraction(1, 3)
_MOST = 2000


@dataclass(frozen=True, slots=True)
class Triangle:
    """Correct answers needed, and the chance of as many by guessing.

    `critical` is None where not even all correct answers would do. `p_value` belongs to the correct
    answers given, else to `critical`.
    """

    critical: int | None
    p_value: float | None


def triangle_test(n: int, *, alpha: Fraction, correct: int | None = None) -> Triangle:
    """Correct answers a triangle test needs, and the probability of guessing them.

    smallest k with P(X >= k) <= alpha, X binomial (n, 1/3)

    Parameters
    ----------
    n : tasters, each tells the odd one of three
    alpha : accepted chance of a false alarm, exact
    correct : correct answers that were given; None: the critical number is taken

    Returns
    -------
    critical number and probability

    Raises
    ------
    OutOfRangeError : n is outside 1 to 2000, alpha outside 0 to 1, correct outside 0 to n

    Valid for
    ---------
    Independent answers, a forced choice.

    Source
    ------
    `iso-4120`

    Examples
    --------
    >>> found = triangle_test(12, alpha=Fraction(5, 100))
    >>> found.critical, round(found.p_value, 4)
    (8, 0.0188)
    """
    _check(n, alpha, correct)
    tails = _tails(n)
    critical = next((k for k in range(n + 1) if tails[k] <= alpha), None)
    counted = critical if correct is None else correct
    return Triangle(critical, None if counted is None else float(tails[counted]))


def _tails(n: int) -> list[Fraction]:
    """P(X >= k) for every k, exactly."""
    tails = [Fraction(0)] * (n + 2)
    for k in range(n, -1, -1):
        chance = math.comb(n, k) * _THIRD**k * (1 - _THIRD) ** (n - k)
        tails[k] = tails[k + 1] + chance
    return tails


def _check(n: int, alpha: Fraction, correct: int | None) -> None:
    if not 1 <= n <= _MOST:
        raise OutOfRangeError(
            f"n is {n}; a test has 1 to {_MOST} tasters.",
            field="n", got=str(n), want=f"1 to {_MOST}",
        )  # fmt: skip
    if not 0 < alpha < 1:
        raise OutOfRangeError(
            f"alpha is {float(alpha):g}; type a chance between 0 and 1, for example 0.05.",
            field="alpha", got=f"{float(alpha):g}", want="between 0 and 1",
        )  # fmt: skip
    if correct is not None and not 0 <= correct <= n:
        raise OutOfRangeError(
            f"{correct} correct answers of {n} are not possible.",
            field="correct", got=str(correct), want=f"0 to {n}",
        )  # fmt: skip
