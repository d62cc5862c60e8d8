"""The quick sums through their usecase: listed, answered, explained."""

from dataclasses import replace

import pytest

from krume.base import InputError, Interval, NotFoundError
from krume.usecases import Asked, QuestionError, answer_sum, list_sums

CONTRACT = """
convert tin-volume tin-factor roll eggs-shelled egg-count soda-co2 powder-co2 bloom
specific-gravity overrun aw-sucrose aw-glycerol aw-mix mould-free-days tcs lethality cooling
us-amount us-daily-value us-servings eu-energy salt atwater gluten-mix quid allergens
boiling-point vapour-pressure food-properties porous-conductivity heating-series browning dial
triangle-test pace
""".split()


def test_every_sum_of_the_contract_is_listed_with_an_example() -> None:
    sums = {each.name: each for each in list_sums().result.sums}
    assert set(CONTRACT) <= set(sums)
    assert all(each.inputs and each.outputs for each in sums.values())
    assert all(each.example.startswith(f"{name} ") for name, each in sums.items())


def test_an_answer_holds_its_values_its_name_and_what_was_given() -> None:
    answer = answer_sum("egg-count", ["mass=269.6", "size=eu-m"], Asked())
    assert answer.exit_code == 0
    assert answer.result["sum"] == "egg-count"
    assert answer.result["inputs"] == {"mass": "269.6", "size": "eu-m"}
    assert answer.result["count"] == 5
    assert answer.result["make_up_g"] == pytest.approx(14.6)
    assert answer.sources


def test_an_answer_to_a_question_stands_for_the_input() -> None:
    with pytest.raises(InputError) as caught:
        answer_sum("egg-count", ["mass=51", "size=medium"], Asked())
    assert caught.value.field == "size"
    asked = replace(Asked(), answers=("size=eu-m",))
    assert answer_sum("egg-count", ["mass=51", "size=medium"], asked).result["count"] == 1


def test_a_name_that_is_none_is_answered_with_a_close_one() -> None:
    with pytest.raises(NotFoundError, match="dial"):
        answer_sum("dail", [], Asked())


def test_a_value_is_explained_by_its_meaning_and_its_sources() -> None:
    words = ["count=5", "size=eu-m"]
    found = answer_sum("eggs-shelled", words, Asked(), explain="mass").explain
    assert found is not None
    assert isinstance(found.value, Interval)
    assert found.value.best == pytest.approx(255)
    assert "What eggs weigh without their shells." in found.how
    assert found.sources


def test_a_list_is_explained_in_words() -> None:
    words = ["ingredients=butter,hazelnuts", "market=eu"]
    why = answer_sum("allergens", words, Asked(), explain="contains").explain
    assert why is not None
    assert why.value == "milk, nuts (hazelnut)"


def test_a_value_that_is_none_is_asked_back() -> None:
    with pytest.raises(QuestionError):
        answer_sum("salt", ["sodium=250"], Asked(), explain="weather")
