"""Quick sums on the day and the tasters: pace of tasks, triangle test."""

from fractions import Fraction

from krume.base import InputError
from krume.calc.declaring import Input, Output, Values
from krume.calc.given import Given
from krume.calc.summing import Sum
from krume.calc.units import wrong_unit
from krume.calc.values import items, number
from krume.learn import triangle_test
from krume.plan import ThreePoint, pace


def _triangle(given: Given) -> Values:
    tasters = given.count("n")
    if tasters is None:
        raise given.missing("n")
    alpha = _chance(given)
    found = triangle_test(tasters, alpha=alpha, correct=given.count("correct"))
    if found.critical is None:
        given.note("too-few", "Not even all correct answers would do: ask more tasters.")
    return {"critical": found.critical, "p": found.p_value}


def _chance(given: Given) -> Fraction:
    read = given.quantity("alpha")
    if read.unit in ("%", "pct", "percent"):
        return Fraction(read.exact) / 100
    if read.unit:
        raise wrong_unit("alpha", read.value, read.unit, "")
    return Fraction(read.exact)


def _pace(given: Given) -> Values:
    found = pace([_task(item) for item in given.items("tasks", marks=";")])
    given.note("independent", "Tasks that do not depend on each other; the sum is an estimate.")
    return {"mean_min": found.mean_min, "sd_min": found.sd_min}


def _task(item: object) -> ThreePoint:
    guesses = items(item, field="tasks", marks=",")
    if len(guesses) != 3:
        raise InputError(
            f"'{item}' is no task. Type optimistic,likely,pessimistic in minutes, for example "
            "8,10,18; tasks are separated by ';'.",
            field="tasks", got=str(item), want="optimistic,likely,pessimistic",
        )  # fmt: skip
    low, likely, high = (number(guess, field="tasks", unit="min") for guess in guesses)
    return ThreePoint(low, likely, high)


PLAN_SUMS = (
    Sum(
        "triangle-test",
        "How many tasters must find the odd one out.",
        (
            Input("n", "tasters", kind="count"),
            Input("alpha", "accepted chance of a false alarm, such as 0.05", kind="quantity"),
            Input("correct", "correct answers that were given", kind="count", required=False),
        ),
        (
            Output("critical", "correct answers needed; null when none would do"),
            Output("p", "chance of as many by guessing"),
        ),
        _triangle,
        ("iso-4120",),
        (("n", "24"), ("alpha", "0.05")),
    ),
    Sum(
        "pace",
        "How long a chain of tasks takes, from three guesses for each.",
        (Input("tasks", "optimistic,likely,pessimistic of each; separated by ;", kind="parts"),),
        (Output("mean_min", "mean of the chain"), Output("sd_min", "its standard deviation")),
        _pace,
        ("malcolm-1959",),
        (("tasks", "8,10,18;4,5,9;20,25,36"),),
    ),
)
