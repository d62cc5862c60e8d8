"""How long something keeps, as the command answers it."""

from collections.abc import Callable
from dataclasses import replace
from datetime import date

import pytest

from krume.usecases import Asked, keep_of


def test_a_torte_keeps_as_long_as_its_hardest_component(demo: Asked) -> None:
    answer = keep_of("T1", demo)
    kept = answer.result
    assert answer.exit_code == 0
    assert kept.cold_hours is not None
    assert (kept.cold_hours.low, kept.cold_hours.high) == (72.0, 120.0)
    assert kept.days == 3
    assert kept.reasons[0].startswith("C1 ")
    assert {part.name for part in kept.components} == {"F1", "C1", "C5", "S1"}


@pytest.mark.parametrize("name", ["T1", "T2", "T3", "TART", "C1", "C2", "C3", "C4", "C5", "102"])
def test_nothing_is_called_safe_and_the_law_is_deferred_to(demo: Asked, name: str) -> None:
    answer = keep_of(name, demo)
    kept = answer.result
    words = " ".join(
        [*kept.reasons, *kept.cautions, *kept.limits, *(n.text for n in answer.notices)]
    )
    assert "safe" not in words.casefold()
    assert "local-law" in [notice.code for notice in answer.notices]
    assert "common-practice" in [notice.code for notice in answer.notices]


def test_the_last_day_counts_the_day_of_making_as_the_first(demo: Asked) -> None:
    made = keep_of("T1", replace(demo, on=date(2027, 6, 10))).result
    assert made.on == "2027-06-10"
    assert made.use_by == "2027-06-12"


def test_an_order_says_its_hours_without_cooling(demo: Asked) -> None:
    kept = keep_of("102", demo).result
    assert "2.5 h" in kept.cautions[0]
    assert kept.on == "2027-06-11"


def test_what_nobody_knows_promises_nothing(bare: Asked, write: Callable[[str], str]) -> None:
    answer = keep_of(write("Blue wobble\n\n100 g water\n3 g salt\n"), bare)
    assert answer.result.cold_hours is None
    assert answer.result.room_hours is None
    assert answer.result.use_by is None
    assert "Nothing is promised" in answer.result.limits[0]


def test_a_question_in_a_formula_is_asked(bare: Asked, write: Callable[[str], str]) -> None:
    text = "Cream\nFamily: set-cream\n\n200 g whipping cream\n2 eggs\n"
    answer = keep_of(write(text), bare)
    assert answer.exit_code == 3
    assert answer.result.cold_hours is not None
