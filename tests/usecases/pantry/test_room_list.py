"""The list of the room as it is asked, shown and written down."""

import pytest

from krume.base import InputError, StoreError
from krume.pantry import room_sources
from krume.usecases import Asked, GlutenWish, gluten_of, load_demo, room_list_now, room_list_of
from krume.usecases.pantry.room_list import say_of_room


@pytest.fixture
def kept(tmp_path) -> Asked:  # type: ignore[no-untyped-def]
    """A request on a demo book with a database."""
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    return asked


def test_a_list_that_is_not_begun_asks_everything_and_says_so(kept: Asked) -> None:
    answer = room_list_of(kept)
    assert not answer.result.is_begun
    assert len(answer.result.things) == len(room_sources())
    assert answer.result.open_count == 0
    assert [notice.code for notice in answer.notices] == ["room-not-begun"]
    assert answer.problems == ()


def test_what_is_said_is_written_down_once_and_shuts_what_is_not_answered(kept: Asked) -> None:
    for _ in range(2):
        result = room_list_of(kept, said=("sieve=own", "wheat day = none")).result
    assert result.is_begun
    assert result.open_count == 2
    assert result.written == ("sieve: own, 2027-06-10", "wheat day: none, 2027-06-10")
    gate = gluten_of("T3", GlutenWish(), kept).result
    assert "room: wooden spoons" in gate.missing
    assert "room: sieve" not in gate.missing
    assert [each.name for each in gate.room if each.is_open] == ["wheat day", "sieve"]


def test_everything_answered_leaves_only_the_cleaning_record(kept: Asked) -> None:
    said = tuple(
        f"{each.words[0]}={'none' if each.is_work else 'own'}" for each in room_sources().values()
    )
    assert room_list_of(kept, said=said).result.open_count == len(said)
    assert gluten_of("T3", GlutenWish(), kept).result.missing == ("room: cleaning record",)


@pytest.mark.parametrize(
    ("said", "words"),
    [
        ("cellar=own", "is not on the list of the room"),
        ("sieve=perhaps", "Type one of: none, own, shared"),
        ("sieve=cleaned", "no washing frees a mesh of flour"),
        ("sieve", "Type one of"),
        ("wheat day=own", "Type one of: none, shared"),
    ],
)
def test_what_cannot_be_said_is_refused_with_what_can(kept: Asked, said: str, words: str) -> None:
    with pytest.raises(InputError, match=words):
        room_list_of(kept, said=("tins=own", said))
    assert not room_list_now(kept).is_begun


def test_a_plain_folder_refuses_and_loses_nothing(own_demo: Asked) -> None:
    with pytest.raises(StoreError, match="has no database"):
        say_of_room("sieve", "own", own_demo)


def test_a_line_nobody_understands_is_asked_and_shown(own_demo: Asked) -> None:
    assert own_demo.book is not None
    text = "source,state,date,valid_to,text\ncellar,own,2027-06-01,,\n"
    (own_demo.book / "room.csv").write_text(text, encoding="utf-8")
    answer = room_list_of(own_demo)
    assert [problem.code for problem in answer.problems] == ["room-source"]
    assert answer.result.unread == ("line 2 of its list: “cellar” is not understood",)


def test_the_page_follows_what_is_written(kept: Asked) -> None:
    assert not room_list_now(kept).is_begun
    say_of_room("cloths", "cleaned", kept)
    now = room_list_now(kept)
    assert now.is_begun
    assert [each.name for each in now.things if each.is_open] == ["cloths"]


def test_a_thing_is_said_by_the_name_the_list_shows(kept: Asked) -> None:
    said = ("mixer and bowls=own", "fat and jars=own", "open bags and scoops=own")
    assert room_list_of(kept, said=said).result.open_count == len(said)
