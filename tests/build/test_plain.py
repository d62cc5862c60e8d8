"""Names, key lines and body of a plain text."""

import pytest

from krume.build.plain import PlainText, plain_text, unread


def split(text: str) -> PlainText:
    return plain_text(text, what="line of an order", example="1 T1")


def test_the_first_line_is_the_name_and_a_colon_makes_a_key() -> None:
    found = split("Order 7\nHand-over: 14:00, pick-up\n\n1 T1\n2 T2")
    assert found.name == "Order 7"
    assert [(line.key, line.value) for line in found.key_lines()] == [
        ("hand-over", "14:00, pick-up")
    ]
    assert [(line.number, line.text) for line in found.body_lines()] == [(4, "1 T1"), (5, "2 T2")]
    assert [line.kind for line in found.lines] == ["name", "key", "blank", "line", "line"]


def test_a_text_may_start_with_keys_or_blank_lines() -> None:
    found = split("\n\nDate: 2027-06-12\nOrder 7\n1 T1")
    assert (found.name, len(found.body_lines())) == ("Order 7", 1)


@pytest.mark.parametrize(
    "words", ["14:00 sharp", "1 T1: the big one", ": nothing", "a" * 30 + ": x"]
)
def test_a_colon_after_a_number_or_too_late_makes_no_key(words: str) -> None:
    found = split(f"Order 7\n{words}\n1 T1")
    assert found.key_lines() == ()
    assert found.body_lines()[0].text == words


def test_a_mark_at_the_start_of_a_file_is_no_part_of_the_name() -> None:
    assert split("\ufeffOrder 7\n1 T1").name == "Order 7"


def test_a_text_without_a_body_asks_for_one_line() -> None:
    (problem,) = split("Order 7\nDate: soon").problems
    assert (problem.code, problem.where) == ("empty", "after line 1")
    assert problem.ask == "No line of an order was found. Type one a line, such as: 1 T1"


def test_the_limits_are_named_with_the_line() -> None:
    found = split("Order 7\n" + "x" * 1001 + "\n" + "1 T1\n" * 600)
    assert [(p.code, p.where) for p in found.problems] == [
        ("line-too-long", "line 2"), ("too-long", "line 501"),
    ]  # fmt: skip
    assert len(found.lines) == 500


def test_what_was_not_understood_may_be_kept_as_a_note() -> None:
    line = split("Order 7\nplease with candles").body_lines()[0]
    problem = unread(line, code="order-line-unread", ask="How many of what?")
    assert problem.options[0].line == "Note: please with candles"
    assert split(f"Order 7\n{problem.options[0].line}").key_lines()[0].value == line.text


def test_a_name_holds_no_sign_that_turns_its_letters_round() -> None:
    assert split("Order \u202e7\u2066\n\n1 T1").name == "Order 7"
