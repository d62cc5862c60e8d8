"""A load put in while others are in: all their minutes move, and it stands in the oven as it is."""

from datetime import datetime, timedelta
from pathlib import Path

import pytest

from krume.base import InputError
from krume.store import book_at, start_clock
from krume.usecases import (
    Asked,
    Load,
    delete_text,
    load_demo,
    loads_now,
    probe_load,
    put_in,
    save_text,
    take_out,
    text_now,
)
from krume.usecases.asking.clock import moment
from krume.usecases.oven.loads import if_it_went_in
from krume.usecases.oven.neighbours import standing_oven, timed, wish_of, with_neighbours


@pytest.fixture
def asked(tmp_path: Path) -> Asked:
    found = Asked(book=tmp_path / "book")
    load_demo(found)
    return found


def _ago(minutes: float) -> str:
    then = datetime.fromisoformat(moment()) - timedelta(minutes=minutes)
    return then.isoformat(timespec="milliseconds")


def test_a_second_load_moves_the_first_and_meets_its_oven(asked: Asked) -> None:
    put_in("one", "F4", "", asked)
    (alone,) = loads_now(asked)
    assert not alone.is_moved
    looked = if_it_went_in("F3", "", asked)
    assert loads_now(asked) == (alone,)
    put_in("two", "F3", "", asked)
    one, two = loads_now(asked)
    assert one.is_moved and two.is_moved
    assert one.alone == alone.alone
    assert one.check_min is not None and alone.check_min is not None
    assert one.check_min > alone.check_min
    assert one.why.endswith("less heat between the tins.")
    assert (two.oven, two.oven_c, two.dial_c) == ("170 C", 170, 182)
    assert two.said == "F3 wants 190 °C; the oven stands at 170 °C."
    assert [each.latest_min for each in looked] == [one.latest_min, two.latest_min]


def test_two_tins_are_later_than_one_and_a_load_must_be_some(asked: Asked) -> None:
    put_in("one", "F3", "", asked, tins=2)
    (load,) = loads_now(asked)
    assert load.tins == 2
    assert load.is_moved
    for tins in (0, 25):
        with pytest.raises(InputError, match="1 to 24 tins"):
            put_in("two", "F3", "", asked, tins=tins)


def test_a_load_without_minutes_moves_nobody(asked: Asked) -> None:
    put_in("one", "F3", "", asked)
    put_in("two", "", "", asked)
    put_in("three", "F3", "sheet 20x15x0.5 cm", asked)
    assert not any(load.is_moved for load in loads_now(asked))


def test_a_load_that_came_out_counts_for_its_time_only(asked: Asked) -> None:
    put_in("one", "F3", "", asked)
    put_in("two", "F3", "", asked)
    take_out("one", asked)
    one, two = loads_now(asked)
    assert one.out_at is not None
    (left,) = with_neighbours((one, two), asked)
    assert left.check_min is not None and two.check_min is not None
    assert left.check_min <= two.check_min
    (lone,) = with_neighbours((two,), asked)
    assert (lone.check_min, lone.why) == (two.alone_check_min, "")


def test_a_load_whose_formula_is_gone_stops_nobody(asked: Asked) -> None:
    text = text_now("formula", "F3", asked)
    kept = save_text("formula", "OLD", text.text, asked, seen=None)
    put_in("one", "OLD", "", asked)
    assert kept.revision is not None
    delete_text("formula", "OLD", asked, seen=kept.revision)
    put_in("two", "F3", "", asked)
    one, two = loads_now(asked)
    assert one.check_min is not None
    assert two.check_min == two.alone_check_min


def test_the_probe_goes_by_the_oven_the_load_stands_in(asked: Asked) -> None:
    put_in("one", "F4", "", asked)
    put_in("two", "F3", "", asked)
    assert wish_of(loads_now(asked)[1]).oven == "170 C"
    probe_load("two", 60.0, asked)
    assert loads_now(asked)[1].core_c == 60


def test_the_oven_stands_as_the_first_load_has_it(asked: Asked) -> None:
    assert standing_oven((), asked) == ""
    start_clock(book_at(asked.book), "bench", kind="oven", weighing="", at=_ago(3))
    assert standing_oven(loads_now(asked), asked) == ""
    fan = Load("x", 1, "F3", "", _ago(5), None, oven="fan 150 C")
    own = timed(Load("y", 2, "F3", "", _ago(1), None), asked)
    assert standing_oven((own, fan), asked) == "fan 150 C"
    assert standing_oven((own,), asked) == "190 C"
