"""Frozen values become plain JSON values, and nothing else does."""

import json
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import Interval, Notice
from krume.usecases import plain


@dataclass(frozen=True, slots=True)
class Inner:
    """Something inside something."""

    name: str | None
    amounts: tuple[float | Interval, ...]


def test_a_frozen_value_becomes_an_object_of_its_fields() -> None:
    value = {"a": Inner(None, (1.5, Interval(2, 2.5, 3))), "b": (Notice("x", "y"),)}
    assert plain(value) == {
        "a": {"name": None, "amounts": [1.5, {"low": 2, "best": 2.5, "high": 3}]},
        "b": [{"code": "x", "text": "y", "where": ""}],
    }


def test_days_and_paths_become_their_text() -> None:
    assert plain((date(2027, 6, 10), Path("a/b"))) == ["2027-06-10", "a/b"]


def test_dust_of_the_binary_sum_is_brushed_off() -> None:
    assert plain(0.1 + 0.2) == 0.3
    assert plain(7.2 * 3) == 21.6


@pytest.mark.parametrize("value", [float("nan"), float("inf"), float("-inf")])
def test_what_is_no_number_is_a_fault_and_never_a_null(value: float) -> None:
    with pytest.raises(ValueError, match="no number an answer may hold"):
        plain({"mass_g": value})


def test_what_has_no_plain_form_is_a_fault() -> None:
    with pytest.raises(TypeError, match="set has no plain form"):
        plain({1, 2})


@given(st.floats(allow_nan=False, allow_infinity=False))
def test_a_number_keeps_twelve_digits_and_survives_json(value: float) -> None:
    kept = plain(value)
    assert isinstance(kept, float)
    assert kept == pytest.approx(value, rel=1e-11, abs=0)
    assert json.loads(json.dumps(kept)) == kept


@pytest.mark.parametrize("written", ["6.76", "52.80", "0.1", "1194.94", "-0.63"])
def test_money_is_the_number_it_is_written_as(written: str) -> None:
    assert json.dumps(plain(Decimal(written))) == repr(float(written))


def test_no_text_of_an_answer_turns_a_line_round() -> None:
    assert plain({"a\u202eb": Inner("\u2067teff\u202e flour", ())}) == {
        "ab": {"name": "teff flour", "amounts": []}
    }
