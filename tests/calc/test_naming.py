"""Names of inputs: with and without their unit, and what is refused."""

import pytest

from krume.base import InputError
from krume.calc import run
from krume.calc.naming import matched, nearest
from krume.calc.registry import SUMS


@pytest.mark.parametrize(
    ("key", "value", "expected"),
    [
        ("cake", 1120, 1120), ("cake_g", 1120, 1120), ("cake-g", 1120, 1120),
        ("cake_kg", 1.12, "1.12 kg"), ("CAKE", 1120, 1120),
    ],
)  # fmt: skip
def test_a_name_may_carry_its_unit_or_another_of_its_kind(
    key: str, value: object, expected: object
) -> None:
    found = matched(SUMS["us-servings"], {key: value, "reference": 80})
    assert found == {"cake": expected, "reference": 80}


def test_from_is_written_with_and_without_its_underscore() -> None:
    assert run("bloom", mass=10, from_=160, to=200) == run("bloom", **{
        "mass": 10, "from": 160, "to": 200})  # fmt: skip


def test_a_list_in_another_unit_is_converted_item_by_item() -> None:
    hours = run("cooling", times_h="0,1,2,4,6", temps_c="57,33,20,9,4")
    minutes = run("cooling", times_min=[0, 60, 120, 240, 360], temps="57,33,20,9,4")
    text = run("cooling", times_min="0,60,120,240,360", temps="57,33,20,9,4")
    assert minutes == hours == text


def test_an_empty_value_is_not_given() -> None:
    assert matched(SUMS["salt"], {"sodium": " "}) == {}
    assert matched(SUMS["salt"], {"sodium": None}) == {}


def test_twice_given_or_unknown_names_are_refused() -> None:
    with pytest.raises(InputError, match="given twice"):
        run("salt", sodium=3, sodium_mg=4)
    with pytest.raises(InputError, match="Did you mean sodium") as caught:
        run("salt", sodum=3)
    assert caught.value.want == "sodium"
    with pytest.raises(InputError, match="no input 'sodium_ml'"):
        run("salt", sodium_ml=3)


def test_close_names_are_found() -> None:
    assert nearest("boilng_point", ["boiling-point", "salt"]) == ["boiling-point"]
