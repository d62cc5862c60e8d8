"""Questions about one tin text: where they stand and which options they keep."""

from krume.size import Tin
from krume.size.asking import Asking


def test_an_open_question_withholds_the_tin() -> None:
    asking = Asking("x", "line 2", "Tin: ")
    tin = Tin("x", "round", diameter_cm=20.0)
    assert asking.answer(tin).value is tin
    asking.ask("code", "Which?", "round 20 cm", ("twenty", "square 20 cm"))
    read = asking.answer(tin)
    assert read.value is None
    assert [(o.label, o.line) for o in read.problems[0].options] == [
        ("round 20 cm", "Tin: round 20 cm"),
        ("twenty", "Tin: square 20 cm"),
    ]


def test_options_that_lead_to_another_question_are_left_out() -> None:
    asking = Asking("x", "tin")
    asking.ask("code", "Which?", "good", "bad")
    read = asking.answer(None, question_of=lambda line: "" if line == "good" else "again")
    assert [o.line for o in read.problems[0].options] == ["good"]
    none = asking.answer(None, question_of="again {}".format)
    assert [o.line for o in none.problems[0].options] == ["round 20 x 5 cm", "sheet 13 x 9 x 1 in"]


def test_a_long_text_is_shown_cut() -> None:
    assert len(Asking("y" * 500, "tin").shown()) == 80
    assert Asking("a  b", "tin").shown() == "a b"
