"""The room's cleaning and its list are read strictly; what is not understood opens nothing."""

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.pantry import (
    read_cleaning,
    read_room,
    room_source_key,
    room_sources,
    room_state_key,
    room_states,
)

HEAD = "source,state,date,valid_to,text\n"


@pytest.mark.parametrize(("said", "is_clean"), [("yes", True), ("done", True), ("no", False)])
def test_the_rooms_record_is_the_word_of_its_row(said: str, is_clean: bool) -> None:
    read = read_cleaning(f"date,cleaned\n2027-06-12,{said}\n")
    assert read.problems == ()
    assert read.value[0].is_cleaned is is_clean


@pytest.mark.parametrize(
    ("row", "code", "kept"),
    [
        ("2027-06-12,perhaps", "cleaning-unread", 1),
        ("yesterday,yes", "cleaning-date", 0),
    ],
)
def test_a_rooms_record_that_is_unclear_never_counts_as_clean(
    row: str, code: str, kept: int
) -> None:
    read = read_cleaning(f"date,cleaned\n{row}\n")
    assert [problem.code for problem in read.problems] == [code]
    assert len(read.value) == kept
    assert not any(record.is_cleaned for record in read.value)


@pytest.mark.parametrize(
    ("typed", "source", "state"),
    [
        ("sieve,own", "sieve", "own"),
        ("Wooden  Spoons,kept apart", "wooden-spoons", "own"),
        ("oven,cleaned", "shared-oven", "cleaned"),
        ("wheat,used", "wheat-day", "shared"),
    ],
)
def test_a_line_is_read_by_the_words_a_baker_types(typed: str, source: str, state: str) -> None:
    read = read_room(f"{HEAD}{typed},2027-06-01,,\n")
    assert read.problems == ()
    assert (read.value[0].source, read.value[0].state) == (source, state)


@pytest.mark.parametrize(
    ("row", "code"),
    [
        ("cellar,own,2027-06-01,,", "room-source"),
        ("sieve,perhaps,2027-06-01,,", "room-state"),
        ("sieve,cleaned,2027-06-01,,", "room-not-cleanable"),
        ("sieve,own,soon,,", "room-date"),
        ("sieve,own,2027-06-01,soon,", "room-date-unread"),
        ("sieve,own,2027-06-01,2027-05-01,", "room-dates-swapped"),
    ],
)
def test_what_is_wrong_in_a_line_is_asked_and_the_line_is_kept(row: str, code: str) -> None:
    read = read_room(f"{HEAD}{row}\n")
    assert [problem.code for problem in read.problems] == [code]
    assert read.problems[0].where == "room.csv line 2"
    assert len(read.value) == 1


def test_a_last_day_that_cannot_be_read_is_not_taken_for_none() -> None:
    assert read_room(f"{HEAD}sieve,own,2027-06-01,next year,\n").value[0].state == ""


def test_a_state_is_believed_for_so_long_as_its_row_says() -> None:
    own = read_room(f"{HEAD}sieve,own,2027-06-01,,\n").value[0]
    washed = read_room(f"{HEAD}cloths,washed,2027-06-01,2027-07-01,\n").value[0]
    assert own.holds_to == date(2028, 5, 31)
    assert washed.holds_to == date(2027, 6, 1)


def test_every_way_in_says_what_it_needs_and_every_state_what_it_means() -> None:
    assert len(room_sources()) == 10
    assert all(each.needs.endswith(".") for each in room_sources().values())
    assert [each.key for each in room_states().values() if each.is_open] == [
        "none", "own", "cleaned",
    ]  # fmt: skip


@given(st.lists(st.text(max_size=10), min_size=5, max_size=5))
def test_no_line_raises_whatever_stands_in_it(cells: list[str]) -> None:
    quoted = ",".join('"' + cell.replace('"', '""').replace("\r", "") + '"' for cell in cells)
    read = read_room(f"{HEAD}{quoted}\n")
    assert len(read.value) == (1 if any(cell.strip() for cell in cells) else 0)


def test_a_yes_in_a_row_with_more_cells_than_its_table_is_none() -> None:
    read = read_cleaning("date,cleaned\n2027-06-10,yes, but the sieve not\n")
    assert [record.is_cleaned for record in read.value] == [False]
    assert [problem.code for problem in read.problems] == ["row-too-long"]


def test_a_list_that_is_there_and_cannot_be_read_is_begun() -> None:
    read = read_room("hello\n")
    assert [(record.source, record.read) for record in read.value] == [("", "hello")]
    assert read.problems
    assert read_room("source,state,date,valid_to,text\n").value == ()


def test_a_line_of_the_list_with_more_cells_than_its_table_opens_nothing() -> None:
    head = "source,state,date,valid_to,text\n"
    (record,) = read_room(f"{head}sieve,own,2027-06-01,,new, but wheat went through\n").value
    assert (record.source, record.state) == ("sieve", "")


def test_every_name_that_is_shown_is_understood() -> None:
    assert [room_source_key(each.name) for each in room_sources().values()] == list(room_sources())
    assert [room_state_key(each.name) for each in room_states().values()] == list(room_states())
