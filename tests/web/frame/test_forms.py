"""Forms keep what was typed, and say what is wrong beside its field."""

from krume.base import Problem
from krume.web.frame.forms import Form


def test_a_field_left_empty_is_nothing() -> None:
    form = Form({"name": "F1", "seen": " 3 ", "bad": "3x"})
    assert (form.get("name"), form.get("other")) == ("F1", "")
    assert (form.whole("seen"), form.whole("bad"), form.whole("other")) == (3, None, None)


def test_a_question_stands_beside_the_field_its_place_means() -> None:
    problems = (Problem("tin", "--tin", "x", "Which tin?"), Problem("a", "line 2", "x", "Which?"))
    form = Form({"tin": "x"}).with_problems(problems, {"--tin": "tin"})
    assert form.wrong == {"tin": "Which tin?"}
    assert form.values == {"tin": "x"}
