"""Questions on pages: each answer is an address of the same page that says more."""

from urllib.parse import parse_qsl, urlsplit

from starlette.requests import Request

from krume.base import Option, Problem
from krume.web.frame.asking import answered, asks_of

ASKED = Problem("which", "--swap", "rice", "Which rice?", (Option("white", "white rice=teff"),))


def _request(query: str) -> Request:
    scope = {"type": "http", "path": "/vary/F1", "query_string": query.encode(), "headers": []}
    return Request(scope)


def test_an_answer_keeps_what_is_said_and_says_more() -> None:
    (ask,) = asks_of(_request("of=rice&to=teff"), (ASKED,))
    (choice,) = ask.choices
    parts = urlsplit(choice.address)
    assert (ask.text, choice.label, parts.path) == ("Which rice?", "white", "/vary/F1")
    assert parse_qsl(parts.query) == [
        ("of", "rice"),
        ("to", "teff"),
        ("answer", "--swap=white rice=teff"),
    ]


def test_a_second_answer_to_one_place_takes_the_first_one_s_place() -> None:
    first = answered((), "--swap", "a=b")
    assert answered(first, "--swap", "c=d") == (("answer", "--swap=c=d"),)
    assert answered(first, "--swap 2", "c=d") == (*first, ("answer", "--swap 2=c=d"))


def test_signs_of_an_answer_do_not_break_the_address() -> None:
    problem = Problem("x", "line 3", "", "?", (Option("odd", "50 % & more #1"),))
    (choice,) = asks_of(_request(""), (problem,))[0].choices
    assert parse_qsl(urlsplit(choice.address).query) == [("answer", "line 3=50 % & more #1")]
