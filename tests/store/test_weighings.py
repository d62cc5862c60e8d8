"""Weighings are kept step by step: sent twice once, from two devices none lost."""

from pathlib import Path

import pytest

from krume.base import NotFoundError
from krume.store.book import Book
from krume.store.clocks import (
    clocks_of,
    clocks_since,
    resume_clock,
    running_clocks,
    start_clock,
    stop_clock,
    stop_clocks,
)
from krume.store.weighings import (
    KeptStep,
    KeptWeighing,
    begin_weighing,
    end_weighing,
    last_said,
    open_weighing,
    say_steps,
    steps_of,
    steps_of_each,
    weighing_at,
)
from tests.store.database_of import empty

COVERS = ("clocks",)
PLACE = "formulas/F2.txt"


@pytest.fixture
def book(tmp_path: Path) -> Book:
    """An empty book."""
    return Book(empty(tmp_path).parent)


def of(key: str, place: str = PLACE) -> KeptWeighing:
    return KeptWeighing(key, place, 1, "2027-06-10", 0.1, "open")


def said(client_id: str, kind: str = "in", **more: object) -> KeptStep:
    return KeptStep(client_id, kind, **{"position": 1, "got_g": 40.0, **more})  # type: ignore[arg-type]


def test_a_second_weighing_of_one_text_is_the_first_until_that_one_ends(book: Book) -> None:
    assert begin_weighing(book, of("a")).key == "a"
    assert begin_weighing(book, of("b")).key == "a"
    assert begin_weighing(book, of("c", "formulas/F1.txt")).key == "c"
    end_weighing(book, "a", state="done")
    assert open_weighing(book, PLACE) is None
    assert begin_weighing(book, of("a")).state == "done"
    assert begin_weighing(book, of("b")).key == "b"
    assert weighing_at(book, "a") is not None


def test_a_step_sent_twice_is_kept_once(book: Book) -> None:
    begin_weighing(book, of("a"))
    say_steps(book, "a", lambda _: (said("1"), said("2")))
    again = say_steps(book, "a", lambda _: (said("2", got_g=99.0), said("3")))
    assert [(s.client_id, s.got_g) for s in again] == [("1", 40.0), ("2", 40.0), ("3", 40.0)]


def test_what_is_made_sees_what_came_in_before(book: Book) -> None:
    begin_weighing(book, of("a"))
    say_steps(book, "a", lambda _: (said("1"),))
    seen: list[int] = []

    def make(there: tuple[KeptStep, ...]) -> tuple[KeptStep, ...]:
        seen.append(len(there))
        return ()

    say_steps(book, "a", make)
    assert seen == [1]


def test_a_step_taken_back_stays_and_is_marked(book: Book) -> None:
    begin_weighing(book, of("a"))
    say_steps(book, "a", lambda _: (said("1"), said("2")))
    kept = say_steps(book, "a", lambda _: (said("3", "undo", of="2"),))
    assert [s.is_undone for s in kept] == [False, True, False]
    assert steps_of(book, "a") == kept


def test_the_last_cup_is_found_in_the_whole_book(book: Book) -> None:
    begin_weighing(book, of("a"))
    begin_weighing(book, of("b", "formulas/F1.txt"))
    say_steps(book, "a", lambda _: (said("1", "cup", said="old"),))
    say_steps(book, "b", lambda _: (said("2", "cup", said="new"),))
    last = last_said(book, "cup")
    assert last is not None
    assert last.said == "new"
    assert last_said(book, "none") is None


def test_a_weighing_nobody_knows_is_refused(book: Book) -> None:
    with pytest.raises(NotFoundError):
        say_steps(book, "x", lambda _: ())


def test_a_clock_is_started_once_and_stopped_once(book: Book) -> None:
    begin_weighing(book, of("a"))
    for at in ("2027-06-10T06:00:00+00:00", "2027-06-10T06:05:00+00:00"):
        start_clock(book, "1", kind="foam", weighing="a", at=at)
    assert [c.started_at for c in running_clocks(book, "foam")] == ["2027-06-10T06:00:00+00:00"]
    stop_clocks(book, kind="foam", weighing="a", at="2027-06-10T06:04:00+00:00")
    stop_clocks(book, kind="foam", weighing="a", at="2027-06-10T06:09:00+00:00")
    assert running_clocks(book, "foam") == ()
    assert [c.stopped_at for c in clocks_of(book, "a")] == ["2027-06-10T06:04:00+00:00"]


def test_where_there_is_no_book_nothing_is_found(tmp_path: Path) -> None:
    none = Book(tmp_path / "none")
    assert open_weighing(none, PLACE) is None
    assert steps_of(none, "a") == ()
    assert clocks_of(none, "a") == ()
    assert running_clocks(none, "oven") == ()
    assert last_said(none, "cup") is None
    assert weighing_at(none, "a") is None


def test_a_clock_of_the_oven_alone_is_stopped_by_its_own_id_and_runs_on_when_resumed(
    book: Book,
) -> None:
    for client_id, minute in (("1", "00"), ("2", "05")):
        at = f"2027-06-10T06:{minute}:00+00:00"
        start_clock(book, client_id, kind="oven", weighing="", at=at)
    stop_clock(book, "1", at="2027-06-10T06:30:00+00:00")
    stop_clock(book, "1", at="2027-06-10T06:40:00+00:00")
    assert [c.client_id for c in running_clocks(book, "oven")] == ["2"]
    (first, second) = clocks_since(book, "oven", since="2027-06-10T06:30:00+00:00")
    assert (first.stopped_at, second.stopped_at) == ("2027-06-10T06:30:00+00:00", None)
    later = clocks_since(book, "oven", since="2027-06-10T06:31:00+00:00")
    assert [c.client_id for c in later] == ["2"]
    resume_clock(book, "1")
    assert len(running_clocks(book, "oven")) == 2
    assert clocks_since(book, "foam", since="2027-06-10T06:00:00+00:00") == ()


def test_the_steps_of_several_weighings_come_with_one_question(book: Book) -> None:
    begin_weighing(book, of("a"))
    begin_weighing(book, of("b", "formulas/F1.txt"))
    say_steps(book, "a", lambda _: (said("1"), said("2")))
    say_steps(book, "b", lambda _: (said("3"),))
    found = steps_of_each(book, ("a", "b", "nothing"))
    assert found == {"a": steps_of(book, "a"), "b": steps_of(book, "b")}
    assert steps_of_each(book, ()) == {}
