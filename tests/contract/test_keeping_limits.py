"""The limits of keeping, each exactly at its edge: acidity, water, hours, degrees."""

from itertools import product
from typing import Any

import pytest

from krume.calc import run
from tests.contract.conftest import Many

# FDA Food Code 2022, 1-201.10(B), tables A and B; n: need not be kept cold by these two, a: assess.
PACKED = ("nnn", "nna", "naa")
OPEN = ("nnnn", "nnna", "nnaa", "naaa")
WATER = (0.5, 0.85, 0.8799, 0.88, 0.8801, 0.90, 0.9001, 0.92, 0.9201, 0.95, 0.9501, 1.0)
ACID = (3.0, 4.1999, 4.2, 4.2001, 4.6, 4.6001, 5.0, 5.0001, 5.6, 5.6001, 7.0)


def _above(value: float, ends: tuple[float, ...]) -> int:
    return sum(value > end for end in ends)


def _table(aw: float, ph: float, packed: bool) -> str:
    if packed:
        return PACKED[_above(aw, (0.92, 0.95))][_above(ph, (4.6, 5.6))]
    row = 0 if aw < 0.88 else 1 + _above(aw, (0.90, 0.92))
    return OPEN[row][0 if ph < 4.2 else 1 + _above(ph, (4.6, 5.0))]


@pytest.mark.parametrize("packed", [True, False])
def test_each_edge_of_acidity_and_water_lies_where_the_table_puts_it(packed: bool) -> None:
    word = {"n": "non-tcs", "a": "assess"}
    for aw, ph in product(WATER, ACID):
        got = run("tcs", aw=aw, ph=ph, heat_treated_packaged="yes" if packed else "no")
        assert got["verdict"] == word[_table(aw, ph, packed)], (aw, ph)


# FDA Food Code 2022, 3-501.14(A): 57 to 21 °C within 2 h, to 5 °C within 6 h in all.
COOLED: list[tuple[str, str, str, str]] = [
    ("0,2,6", "57,21,5", "pass", ""),
    ("0,2.001,6", "57,21,5", "fail", "not-shown"),
    ("0,1,2.001,4,6", "57,30,21,9,4", "fail", "stage-1"),
    ("0,2,6.001", "57,21,5", "fail", "total"),
    ("0,2,6", "57,21,5.001", "fail", "total"),
    ("0,1,2,3,4,5,6,7", "60,57,40,21,15,10,7,5", "pass", ""),
    ("0,1,2,4,6", "57,21,23,9,4", "fail", "stage-1"),
    ("0,1,2,3,4,5,6", "50,33,20,15,10,6,5", "fail", "not-shown"),
    ("0,1,2", "57,30,20", "fail", "not-shown"),
]


@pytest.mark.parametrize(("times", "temps", "verdict", "reason"), COOLED)
def test_two_hours_and_six_hours_pass_and_a_moment_more_does_not(
    times: str, temps: str, verdict: str, reason: str
) -> None:
    got = run("cooling", times=times, temps=temps)
    assert (got["verdict"], got["reason"]) == (verdict, reason)


def _fridge_verdict(hours: float, food: float | None, air: float | None, before: bool) -> str:
    """The table of docs/models/fridge-off.md, its first line that holds."""
    if food is not None and (food <= 5 or hours > 2):
        return "keep" if food <= 5 else "discard"
    cool_air = food is None and air is not None and air <= 5
    if not before:
        return "discard" if food is None and not cool_air and hours > 4 else "not-shown"
    if hours <= 2 or cool_air:
        return "keep"
    return "not-shown" if hours <= 4 else "discard"


def test_exactly_five_degrees_two_and_four_hours_lie_on_the_side_of_the_rule(
    many: Many, book: Any
) -> None:
    ends = {2.0: "03:00", 2.02: "03:01", 4.0: "05:00", 4.02: "05:01"}
    cases = list(product(ends, (None, 5.0, 5.01), (None, 5.0, 5.01), (True, False)))
    calls = []
    for hours, food, air, before in cases:
        words = ["fridge", "C1", "--since", "01:00", "--until", ends[hours]]
        words += [] if food is None else ["--food", str(food)]
        words += [] if air is None else ["--air", str(air)]
        words += ["--before", "5"] if before else []
        calls.append([*words, "--json", "--book", str(book)])
    for case, said in zip(cases, many(calls), strict=True):
        assert said.answer["result"]["verdict"] == _fridge_verdict(*case), case
