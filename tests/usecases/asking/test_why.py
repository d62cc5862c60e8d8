"""Finding the figure a person means, and the papers behind it."""

import pytest

from krume.usecases import QuestionError
from krume.usecases.asking.answer import ExplainInput
from krume.usecases.asking.why import doubt_of, key_meant, source_rows

KEYS = ("percent.egg", "percent.sugar", "per_egg.egg_g", "line 4", "egg", "total_g")


@pytest.mark.parametrize(
    ("asked", "key"),
    [
        ("percent.egg", "percent.egg"),
        ("egg", "egg"),
        ("Sugar", "percent.sugar"),
        ("egg-g", "per_egg.egg_g"),
        ("LINE 4", "line 4"),
        ("total", "total_g"),
    ],
)
def test_the_whole_key_comes_before_its_last_part(asked: str, key: str) -> None:
    assert key_meant(asked, KEYS) == key


def test_a_key_like_no_other_is_answered_with_what_there_is() -> None:
    with pytest.raises(QuestionError) as caught:
        key_meant("zzz", KEYS)
    problem = caught.value.problem
    assert problem.where == "--explain"
    assert [option.line for option in problem.options] == list(KEYS[:4])


def test_doubt_names_what_is_missing_before_what_is_loose() -> None:
    inputs = (
        ExplainInput(4, "5 eggs", 255, 20, "common practice"),
        ExplainInput(5, "salt", None, None, "declared"),
        ExplainInput(6, "1 g salt", 1, None, "declared"),
    )
    assert doubt_of(inputs) == ("line 5 has no mass; line 4 is 255.0 g ± 20.0 (common practice)")
    assert doubt_of(inputs[2:]) is None


def test_a_source_has_its_title_and_a_word_that_is_none_has_not() -> None:
    found = source_rows(("common-practice", "", None, "common-practice", "no-such-key"))
    assert [each.key for each in found] == ["common-practice", "no-such-key"]
    assert found[0].title
    assert found[1].title is None
