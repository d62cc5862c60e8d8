"""Running a sum: names, notices, and plain values."""

import pytest

from krume.base import InputError, NotFoundError
from krume.calc import answer, describe, parse_inputs, run, sum_named
from krume.calc.running import _plain


def test_a_name_may_carry_underscores_and_capitals() -> None:
    assert sum_named("Tin_Volume").name == "tin-volume"


def test_an_unknown_sum_offers_the_close_ones() -> None:
    with pytest.raises(NotFoundError) as caught:
        run("tin-volum", shape="round")
    assert caught.value.message == "No sum is called 'tin-volum'. Did you mean tin-volume?"
    with pytest.raises(NotFoundError, match="lists them all"):
        run("xyzzy")


def test_words_become_inputs_and_the_value_may_hold_an_equals_sign() -> None:
    assert parse_inputs(["a=1", " b = x=y "]) == {"a": "1", "b": "x=y"}


@pytest.mark.parametrize("words", [["a"], ["=3"], ["a=1", "a=2"]])
def test_words_that_are_no_inputs_are_refused(words: list[str]) -> None:
    with pytest.raises(InputError):
        parse_inputs(words)


def test_an_answer_carries_notices_and_sources() -> None:
    found = answer("bloom", {"mass": 10, "from": 160, "to": 200})
    assert [n.code for n in found.notices] == ["two-rules"]
    assert found.sources == ("common-practice",)


def test_describing_an_unknown_sum_is_refused() -> None:
    with pytest.raises(NotFoundError):
        describe("xyzzy")


def test_dust_of_binary_sums_is_wiped_off_at_every_depth() -> None:
    assert _plain({"a": [0.1 + 0.2], "b": None, "c": True}) == {"a": [0.3], "b": None, "c": True}
    with pytest.raises(InputError, match="finite"):
        _plain(float("nan"))
