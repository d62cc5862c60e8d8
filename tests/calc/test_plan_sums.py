"""Pace and triangle test as people and checks call them."""

import pytest

from krume.base import InputError, OutOfRangeError
from krume.calc import answer, run
from tests.agreement import agrees


@pytest.mark.source("iso-4120", "R39 as a quick sum")
@pytest.mark.parametrize(
    ("n", "critical", "p"), [(12, "8", "0.0188"), ("24", "13", "0.0284"), (60, "27", "0.0397")]
)
def test_critical_numbers_are_the_printed_ones(n: object, critical: str, p: str) -> None:
    for alpha in (0.05, "0.05", "5%"):
        found = run("triangle-test", n=n, alpha=alpha)
        assert agrees(found["critical"], critical) and agrees(found["p"], p)  # type: ignore[arg-type]


@pytest.mark.source("malcolm-1959", "R77 as a quick sum")
def test_a_chain_is_the_printed_one_in_every_way_of_typing() -> None:
    for tasks in (
        "8,10,18;4,5,9;20,25,36", [(8, 10, 18), (4, 5, 9), (20, 25, 36)],
        ["8,10,18", "4,5,9", "20,25,36"], "8 min,10,0.3 h;4,5,9;20,25,36",
    ):  # fmt: skip
        found = run("pace", tasks=tasks)
        assert agrees(found["mean_min"], "42.5") and agrees(found["sd_min"], "3.253")  # type: ignore[arg-type]


def test_given_answers_have_their_own_chance() -> None:
    assert run("triangle-test", n=24, alpha=0.05, correct=12)["p"] == pytest.approx(
        0.0677, abs=5e-5
    )


def test_too_few_tasters_are_told() -> None:
    found = answer("triangle-test", {"n": 2, "alpha": 0.05})
    assert found.values == {"critical": None, "p": None}
    assert found.notices[0].code == "too-few"


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(InputError, match="whole number"):
        run("triangle-test", n=12.5, alpha=0.05)
    with pytest.raises(InputError):
        run("triangle-test", n=12, alpha="5 g")
    with pytest.raises(OutOfRangeError):
        run("triangle-test", n=12, alpha=5)
    with pytest.raises(InputError, match="no task"):
        run("pace", tasks="8,10")
    with pytest.raises(InputError, match="needs n"):
        run("triangle-test", n="?", alpha=0.05)
