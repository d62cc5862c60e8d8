"""Loads in the book: in and out by one tap, each once, with what is awaited beside them."""

from pathlib import Path

import pytest

from krume.base import NotFoundError
from krume.store import book_at, clocks_since, running_clocks, start_clock
from krume.usecases import (
    Asked,
    BakeWish,
    bake_formula,
    load_demo,
    loads_now,
    probe_load,
    put_back,
    put_in,
    take_out,
    time_load,
)

LONG_AGO = "2020-01-01T00:00:00.000+00:00"


@pytest.fixture
def asked(tmp_path: Path) -> Asked:
    found = Asked(book=tmp_path / "book")
    load_demo(found)
    return found


def test_a_load_goes_in_once_with_its_minutes_and_the_oven_is_occupied(asked: Asked) -> None:
    put_in("one", "F1", "", asked)
    put_in("one", "F1", "", asked)
    (load,) = loads_now(asked)
    assert load.tin == "round 20 x 7 cm"
    minutes = bake_formula("F1", BakeWish(), asked).result.minutes
    assert minutes is not None
    assert (load.check_min, load.latest_min, load.dial_c) == (minutes.low, minutes.high, 182)
    assert len(running_clocks(book_at(asked.book), "oven")) == 1


def test_another_tin_has_other_minutes(asked: Asked) -> None:
    put_in("one", "F1", "", asked)
    put_in("two", "F1", "round 26 x 7 cm", asked)
    first, second = loads_now(asked)
    assert (first.number, second.number) == (1, 2)
    assert first.latest_min is not None and second.latest_min is not None
    assert second.latest_min < first.latest_min


def test_a_load_without_minutes_is_in_all_the_same_and_says_why(asked: Asked) -> None:
    put_in("one", "", "", asked)
    put_in("two", "F1", "round 16 x 4 cm", asked)
    first, second = loads_now(asked)
    assert "No formula was named" in first.said
    assert "in a tin of 4 cm" in second.said
    assert second.check_min is None
    with pytest.raises(NotFoundError):
        put_in("three", "F99", "", asked)
    assert len(loads_now(asked)) == 2


def test_out_is_said_once_and_taken_back(asked: Asked) -> None:
    put_in("one", "F1", "", asked)
    take_out("one", asked)
    out = loads_now(asked)[0].out_at
    take_out("one", asked)
    assert out is not None
    assert loads_now(asked)[0].out_at == out
    assert running_clocks(book_at(asked.book), "oven") == ()
    put_back("one", asked)
    assert loads_now(asked)[0].out_at is None
    with pytest.raises(NotFoundError):
        take_out("nothing", asked)


def test_the_probe_is_kept_with_the_minutes_that_are_left(asked: Asked) -> None:
    book = book_at(asked.book)
    start_clock(book, "one", kind="oven", weighing="", at="2027-06-10T08:00:00.000+00:00")
    put_in("two", "F1", "", asked)
    two = next(load for load in loads_now(asked) if load.client_id == "two")
    later = two.in_at[:11] + "23:59:59.000+00:00"
    probe_load("two", 70.0, asked, at=later)
    kept = next(load for load in loads_now(asked) if load.client_id == "two")
    assert kept.core_c == 70.0
    assert kept.core_at == later
    assert kept.left_best_min is not None
    assert kept.check_min == two.check_min
    assert "to 95: about" in kept.said


def test_a_load_of_no_formula_is_probed_without_minutes(asked: Asked) -> None:
    put_in("one", "", "", asked)
    probe_load("one", 88.0, asked)
    (load,) = loads_now(asked)
    assert load.core_c == 88.0
    assert load.left_best_min is None
    assert "the probe alone decides" in load.said


def test_a_clock_of_the_bench_is_a_load_whose_minutes_are_worked_out_when_asked(
    asked: Asked,
) -> None:
    start_clock(book_at(asked.book), "bench", kind="oven", weighing="")
    (load,) = loads_now(asked)
    assert (load.formula, load.check_min, load.said) == ("", None, "")
    time_load("bench", asked)
    assert "No formula was named" in loads_now(asked)[0].said


def test_what_came_out_long_ago_is_no_longer_shown(asked: Asked) -> None:
    put_in("one", "F1", "", asked)
    take_out("one", asked)
    assert loads_now(asked, at="2099-01-01T00:00:00.000+00:00") == ()
    assert len(clocks_since(book_at(asked.book), "oven", since=LONG_AGO)) == 1
