"""A temperature that is not settled, said in minutes too; its options stay what they were."""

import re
from pathlib import Path

import pytest

from krume.bake import Batter, Oven
from krume.base import Problem
from krume.design import Formula, read
from krume.evidence import packed_text
from krume.size import Tin, read_tin
from krume.usecases import Asked, BakeWish, bake_formula, load_demo, read_formula
from krume.usecases.asking.dial_minutes import (
    ConflictMinutes,
    conflict_minutes,
    conflict_words,
    fan_notices,
    with_minutes,
)
from tests.bake.cases import CASES


def _formula(oven: str, tin: str = "Tin: round 20 x 7 cm") -> tuple[Formula, tuple[Problem, ...]]:
    text = (
        f"Hazel sponge\n{tin}\n{oven}\nFamily: separated\nEggs: EU sizes\n\n"
        "50 g buckwheat flour\n12 g white rice flour\n34 g potato starch\n40 g ground hazelnuts\n"
        "5 eggs, medium\n120 g caster sugar\n1 g fine salt\n"
    )
    found = read(text, eggs_region="eu")
    return found.value, found.problems


def _tin() -> Tin:
    found = read_tin("round 20 x 7 cm").value
    assert found is not None
    return found


def test_fahrenheit_against_celsius_is_said_in_degrees_and_in_minutes() -> None:
    formula, problems = _formula("Oven: 315 F (165 C)")
    (before,) = [p for p in problems if p.code == "oven-temp-conflict"]
    (told,) = [p for p in with_minutes(problems, formula) if p.code == "oven-temp-conflict"]
    assert told.options == before.options
    assert told.ask.startswith(
        "315 °F is 157.2 °C and 165 °C is 329 °F: they are 7.8 °C apart. Which did you bake with? "
        "In round 20 x 7 cm the model bakes it "
    )
    cooler, hotter = conflict_minutes(formula, None, [(157.2, False), (165.0, False)])
    assert cooler.minutes is not None and hotter.minutes is not None
    assert 1 < cooler.minutes - hotter.minutes < 8
    assert f"{round(cooler.minutes)} min at 157 °C or {round(hotter.minutes)} min" in told.ask


@pytest.mark.parametrize(
    ("oven", "code", "words"),
    [
        ("Oven: gas 4", "oven-word", " min at 170 °C or "),
        ("Oven: 180", "oven-unit", " min at 180 °C or never at 82 °C."),
    ],
)
def test_other_open_temperatures_are_said_in_minutes_too(oven: str, code: str, words: str) -> None:
    formula, problems = _formula(oven)
    (told,) = [p for p in with_minutes(problems, formula) if p.code == code]
    assert words in told.ask


def test_without_a_tin_a_batter_or_a_conflict_the_question_stays_as_it_is() -> None:
    formula, problems = _formula("Oven: 315 F (165 C)", tin="Makes: 1")
    assert with_minutes(problems, formula) == problems
    plain, none = _formula("Oven: 170 C")
    assert with_minutes(none, plain) == none
    cream = read("Cream\nTin: round 20 x 7 cm\nOven: 180\n\n400 g milk\n80 g caster sugar\n")
    assert with_minutes(cream.problems, cream.value) == cream.problems


def test_minutes_that_are_the_same_are_said_to_be() -> None:
    found = [ConflictMinutes(170.0, fan=False, minutes=33.2),
             ConflictMinutes(171.0, fan=False, minutes=32.9)]  # fmt: skip
    assert conflict_words(found, _tin()) == (
        "In round 20 x 7 cm that makes no minute of difference."
    )


def test_a_question_is_asked_with_its_minutes_wherever_the_formula_is_read(tmp_path: Path) -> None:
    path = tmp_path / "sponge.txt"
    text = packed_text("demo/formulas/F1.txt").replace("Oven: 170 C, no fan", "Oven: 315 F (165 C)")
    path.write_text(text, encoding="utf-8")
    asked = Asked(book=tmp_path / "book")
    for answer in (read_formula(str(path), asked), bake_formula(str(path), BakeWish(), asked)):
        assert answer.exit_code == 3
        (problem,) = answer.problems
        assert problem.ask.count(" min at ") == 2
        assert len(problem.options) == 3


def test_a_tin_and_an_oven_whose_lines_are_asked_about_are_not_missed_a_second_time(
    tmp_path: Path,
) -> None:
    path = tmp_path / "sponge.txt"
    text = packed_text("demo/formulas/F1.txt").replace("Oven: 170 C, no fan", "Oven: 180")
    text = re.sub("Tin: .*", "Tin: round", text)
    path.write_text(text, encoding="utf-8")
    answer = bake_formula(str(path), BakeWish(), Asked(book=tmp_path / "book"))
    assert [problem.code for problem in answer.problems] == ["tin-size-missing", "oven-unit"]


def test_the_rule_of_thumb_for_the_fan_stands_beside_the_model() -> None:
    batter: Batter = CASES[0].batter
    (notice,) = fan_notices(batter, CASES[0].tin, Oven(170))
    assert notice.code == "fan-rule"
    assert "at 170 °C without the fan" in notice.text
    assert "at 155 and " in notice.text and "at 150 °C with the fan" in notice.text
    assert notice.text.endswith("Setting the fan 15 to 20 °C lower is common practice.")
    assert fan_notices(batter, CASES[0].tin, Oven(115)) == ()


def test_a_fan_that_the_formula_does_not_name_brings_the_rule_along(tmp_path: Path) -> None:
    asked = Asked(book=tmp_path / "book")
    load_demo(asked)
    codes = [n.code for n in bake_formula("F3", BakeWish(fan=True), asked).notices]
    assert "fan-rule" in codes
    assert "fan-rule" not in [n.code for n in bake_formula("F3", BakeWish(), asked).notices]
