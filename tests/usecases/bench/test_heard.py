"""What a page says late is kept once, in its order, and at the moment it was said."""

from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from krume.base import InputError
from krume.store import book_at, clocks_of, trials_of
from krume.usecases import (
    Asked,
    BenchSaid,
    ClockSaid,
    CupSaid,
    EndSaid,
    bench_of,
    clocks_at_bench,
    cup_at_bench,
    hear_at_bench,
    load_demo,
    moment_said,
)
from krume.usecases.bench.heard import Said, whole_typed


@pytest.fixture
def asked(tmp_path: Path) -> Asked:
    """A demo book of its own."""
    found = Asked(book=tmp_path / "book")
    load_demo(found)
    return found


def ago(minutes: float) -> str:
    """A moment so long ago, as a browser says it."""
    then = datetime.now(UTC) - timedelta(minutes=minutes)
    return then.isoformat(timespec="milliseconds").replace("+00:00", "Z")


def a_bake() -> tuple[Said, ...]:
    """A whole bake, said at once when the network is back."""
    return (
        BenchSaid("a", "tare", 0),
        BenchSaid("b", "in", 1),
        CupSaid("c", 100.0, 340.0, 215.2),
        ClockSaid("d", "foam", is_start=True, at=ago(50), is_late=True),
        BenchSaid("e", "in", 2),
        ClockSaid("f", "oven", is_start=True, at=ago(44), is_late=True),
        ClockSaid("g", "oven", is_start=False, at=ago(9), is_late=True),
        EndSaid("trial", {"centre": "49", "core": "95", "word": "good"}),
    )


def test_a_whole_bake_said_late_is_kept_once_however_often_it_comes(asked: Asked) -> None:
    said = a_bake()
    for _ in range(2):
        found = hear_at_bench("F2", "k", said, asked)
        assert found.state == "done"
    kinds = [step.kind for step in found.steps]
    assert (kinds.count("in"), kinds.count("cup"), kinds.count("tare")) == (2, 1, 1)
    (trial,) = trials_of(book_at(asked.book))
    assert (trial.key, trial.centre_mm, trial.core_c, trial.word) == ("trial", 49, 95, "good")
    assert bench_of("F2", asked).key == ""


def test_clocks_count_from_the_moment_they_were_touched(asked: Asked) -> None:
    hear_at_bench("F2", "k", a_bake()[:-1], asked)
    foam, oven = clocks_at_bench("F2", asked).clocks
    assert (foam.kind, oven.kind) == ("foam", "oven")
    assert foam.minutes == pytest.approx(6.0, abs=0.01)
    assert oven.minutes == pytest.approx(35.0, abs=0.01)
    assert (foam.reason, oven.reason) == ("", "")


def test_a_part_that_came_in_before_is_not_kept_again(asked: Asked) -> None:
    said = a_bake()
    hear_at_bench("F2", "k", said[:4], asked)
    hear_at_bench("F2", "other", said, asked)
    assert len(clocks_of(book_at(asked.book), "k")) == 2
    assert len(trials_of(book_at(asked.book))) == 1


def test_a_stop_heard_again_leaves_a_clock_that_began_after_it(asked: Asked) -> None:
    stop = ClockSaid("g", "oven", is_start=False, at=ago(9))
    hear_at_bench("F2", "k", (ClockSaid("f", "oven", is_start=True, at=ago(44)), stop), asked)
    hear_at_bench("F2", "k", (ClockSaid("h", "oven", is_start=True, at=ago(3)), stop), asked)
    running = clocks_at_bench("F2", asked).running("oven")
    assert running is not None
    assert running.minutes == pytest.approx(3.0, abs=0.01)


def test_a_foam_that_was_whipped_meanwhile_is_kept_and_one_now_is_asked(asked: Asked) -> None:
    hear_at_bench("F1", "one", (ClockSaid("1", "oven", is_start=True, at=ago(20)),), asked)
    late = ClockSaid("2", "foam", is_start=True, at=ago(2), is_late=True)
    hear_at_bench("F2", "two", (late,), asked)
    running = clocks_at_bench("F2", asked).running("foam")
    assert running is not None
    assert running.reason == "Begun while the network was gone"
    with pytest.raises(InputError, match="occupied"):
        hear_at_bench("F3", "three", (ClockSaid("3", "foam", is_start=True, at=""),), asked)


def test_the_cup_of_a_page_is_the_cup_of_the_book(asked: Asked) -> None:
    found = hear_at_bench("F2", "k", (CupSaid("c", 100.0, 340.0, 215.2),), asked)
    assert cup_at_bench(found, asked).sg == pytest.approx(0.48)
    with pytest.raises(InputError, match="empty cup"):
        hear_at_bench("F2", "k", (CupSaid("d", 100.0, 340.0, 90.0),), asked)


def test_a_number_that_cannot_be_one_stands_in_the_note(asked: Asked) -> None:
    end = EndSaid("trial", {"core": "9500", "centre": "49", "note": "late"})
    hear_at_bench("F2", "k", (BenchSaid("a", "tare", 0), end), asked)
    (trial,) = trials_of(book_at(asked.book))
    assert (trial.core_c, trial.centre_mm, trial.note) == (None, 49, "late\ncore: 9500")
    assert whole_typed({"core": "95"}) == {"core": "95"}


def test_a_moment_is_never_later_than_now_and_one_that_is_none_is_refused() -> None:
    assert moment_said("9999-01-01T00:00:00Z") <= datetime.now(UTC).isoformat()
    week = datetime.now(UTC) - timedelta(days=7, minutes=1)
    assert moment_said("2001-01-01T00:00:00Z") > week.isoformat()
    with pytest.raises(InputError):
        moment_said("half past nine")
