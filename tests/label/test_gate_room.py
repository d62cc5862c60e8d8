"""The room's list: each thing opens by its own word, and what is not answered keeps shut."""

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.label import gluten_gate, room_list
from krume.label.gate_room import room_standings
from krume.pantry import RoomRecord, read_room, room_sources
from tests.label.studio import CLEAN, DAY, lots, product

HEAD = "source,state,date,valid_to,text\n"
ALL_GOOD = (
    "wheat,none;air,none;oven,none;sieve,own;spoons,own;mixer,own;tins,own;cloths,own;fat,own;"
    "bags,own"
).split(";")


def room(*rows: str) -> tuple[RoomRecord, ...]:
    """The list with these lines: what, how, since when, until when."""
    return read_room(HEAD + "".join(f"{row},\n" for row in rows)).value


def whole(*changed: str) -> tuple[RoomRecord, ...]:
    """A list on which everything is answered well, and these lines beside."""
    return room(*(f"{each},2027-06-01," for each in ALL_GOOD), *changed)


def missing(records: tuple[RoomRecord, ...], on: date = DAY, today: date = DAY) -> set[str]:
    """What of the list keeps a gate shut."""
    return {each.missing for each in room_standings(records, (on,), today) if not each.is_open}


def test_a_list_that_is_not_begun_asks_nothing_and_the_gate_says_so() -> None:
    gate = gluten_gate(product("T3"), lots(), CLEAN, on=DAY, market="eu")
    assert gate.claim_allowed
    assert gate.room == ()
    assert any("is not begun" in note for note in gate.notes)


def test_a_list_once_begun_misses_whatever_is_not_answered() -> None:
    gate = gluten_gate(
        product("T3"), lots(), CLEAN, on=DAY, market="eu", room=room("sieve,own,2027-06-01,")
    )
    assert not gate.claim_allowed
    assert len(gate.missing) == len(room_sources()) - 1
    assert "room: sieve" not in gate.missing
    assert "room: wooden spoons" in gate.missing
    assert len(gate.opens) == len(gate.missing)


def test_a_list_that_is_answered_well_leaves_the_gate_open() -> None:
    gate = gluten_gate(product("T3"), lots(), CLEAN, on=DAY, market="eu", room=whole())
    assert gate.claim_allowed
    assert not any("is not begun" in note for note in gate.notes)


def test_the_list_alone_is_no_cleaning_record() -> None:
    gate = gluten_gate(product("T3"), lots(), (), on=DAY, market="eu", room=whole())
    assert gate.missing == ("room: cleaning record",)


@pytest.mark.parametrize(
    ("line", "is_missing"),
    [
        ("sieve,shared,2027-06-02,", True),
        ("sieve,shared,2027-05-01,", False),
        ("sieve,cleaned,2027-06-10,", True),
        ("cloths,cleaned,2027-06-10,", False),
        ("cloths,cleaned,2027-06-09,", True),
        ("cloths,shared,2027-06-10,", True),
        ("sieve,own,2027-06-05,2027-06-09", True),
        ("sieve,own,2027-06-05,2027-06-10", False),
        ("sieve,own,2027-06-05,soon", True),
        ("sieve,perhaps,2027-06-05,", True),
        ("sieve,own,soon,", True),
    ],
)
def test_the_last_word_about_a_thing_decides(line: str, is_missing: bool) -> None:
    name = room_sources()[line.partition(",")[0]].name
    assert (f"room: {name}" in missing(whole(line))) is is_missing
    assert missing(whole(line)) <= {f"room: {name}"}


def test_of_two_words_of_one_day_the_worse_counts() -> None:
    assert missing(whole("sieve,shared,2027-06-05,", "sieve,own,2027-06-05,")) == {"room: sieve"}


@pytest.mark.parametrize(
    ("day", "is_missing"),
    [("2027-06-09", False), ("2027-06-10", True), ("2027-06-11", True), ("2027-06-12", True),
     ("2027-06-13", False)],
)  # fmt: skip
def test_a_wheat_day_from_today_to_the_day_asked_closes(day: str, is_missing: bool) -> None:
    found = missing(whole(f"wheat,used,{day},"), on=date(2027, 6, 12))
    assert ("room: wheat day" in found) is is_missing


def test_a_wheat_day_that_is_past_leaves_the_word_to_the_cleaning_record() -> None:
    rows = [f"{each},2027-06-01," for each in ALL_GOOD if not each.startswith("wheat")]
    standings = room_standings(room(*rows, "wheat,used,2027-06-08,"), (DAY,), DAY)
    wheat = next(each for each in standings if each.source == "wheat-day")
    assert wheat.is_open
    assert "last handled here on 2027-06-08" in wheat.text


def test_a_good_word_of_a_day_that_has_not_come_opens_nothing() -> None:
    rows = [f"{each},2027-06-01," for each in ALL_GOOD if not each.startswith("sieve")]
    later = date(2027, 6, 12)
    records = room(*rows, "sieve,own,2027-06-12,")
    assert missing(records, on=later, today=DAY) == {"room: sieve"}
    assert missing(records, on=later, today=later) == set()


def test_a_line_that_is_not_understood_is_missed_by_its_number() -> None:
    assert missing(whole("cellar,own,2027-06-01,")) == {"room: line 12 of its list"}


@given(st.sets(st.sampled_from(ALL_GOOD)), st.sampled_from(["gone", "shared", "old", "unread"]))
def test_each_thing_taken_off_the_list_is_missed_and_no_other(lost: set[str], how: str) -> None:
    change = {
        "shared": lambda each: f"{each.partition(',')[0]},shared,2027-06-10,",
        "old": lambda each: f"{each},2026-06-01,2027-06-09",
        "unread": lambda each: f"{each}?,2027-06-01,",
    }
    rows = [f"{each},2027-06-01," for each in ALL_GOOD if each not in lost]
    rows += [] if how == "gone" else [change[how](each) for each in sorted(lost)]
    found = missing(room(*rows)) if rows else {"all"}
    assert len(found) == (1 if not rows else len(lost))


@given(st.integers(0, 800))
def test_a_word_is_believed_for_a_year_and_not_longer(days: int) -> None:
    on = date(2027, 6, 1) + timedelta(days=days)
    assert bool(missing(whole(), on=on, today=on)) is (days > 365)


def test_the_whole_list_can_be_read_before_it_is_begun() -> None:
    questions = room_list((), (DAY,), DAY)
    assert [each.source for each in questions] == list(room_sources())
    assert not any(each.is_open for each in questions)
