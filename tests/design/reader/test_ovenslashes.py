"""krume.design.reader.ovenslashes: of two temperatures with a stroke between, none is taken."""

import pytest

from krume.design import read, read_oven

CAKE = (
    "Butter cake\nFamily: butter\n{}\n100 g butter\n100 g caster sugar\n2 eggs, EU M\n"
    "100 g white rice flour\n\n{}\n"
)


@pytest.mark.parametrize(
    ("text", "lines", "settings"),
    [
        ("180/160 C", ["180 C", "fan 160 C", "160 C"],
         [(180.0, None), (160.0, True), (160.0, None)]),
        ("160 / 180 °C fan", ["180 C", "fan 160 C", "160 C"],
         [(180.0, None), (160.0, True), (160.0, None)]),
        ("180/160 °C (O/U, Umluft)", ["180 C", "fan 160 C", "160 C"],
         [(180.0, None), (160.0, True), (160.0, None)]),
        ("180/160", ["180 C", "fan 160 C", "160 C"],
         [(180.0, None), (160.0, True), (160.0, None)]),
        ("350/325 F", ["350 F", "fan 325 F", "325 F"],
         [(176.7, None), (162.8, True), (162.8, None)]),
        ("350/160 C", ["350 F", "160 C"], [(176.7, None), (160.0, None)]),
    ],
)  # fmt: skip
def test_two_temperatures_with_a_stroke_are_asked_about_and_every_answer_is_read(
    text: str, lines: list[str], settings: list[tuple[float, bool | None]]
) -> None:
    found = read_oven(text)
    assert found.value is None
    assert [problem.code for problem in found.problems] == ["oven-temp-conflict"]
    assert [option.line for option in found.problems[0].options] == lines
    ovens = [read_oven(line).value for line in lines]
    assert [(oven.temp_c, oven.fan) for oven in ovens if oven is not None] == settings


@pytest.mark.parametrize("text", ["350/180 C", "350 F/180 C", "180C/160C fan"])
def test_one_temperature_in_two_units_or_each_with_its_own_is_not_asked_about(text: str) -> None:
    assert read_oven(text).problems == ()


def test_a_step_that_bakes_at_two_temperatures_is_asked_about_once() -> None:
    (problem,) = read(CAKE.format("", "Bake at 180/160 C for 40 min.")).problems
    assert (problem.code, problem.where) == ("oven-temp-conflict", "line 9")
    assert problem.options[1].line == "Bake at fan 160 C for 40 min."


def test_a_stroke_between_grams_is_no_oven() -> None:
    found = read(CAKE.format("Oven: 170 C", "Bake the 300/400 g of batter at 170 C."))
    assert found.problems == ()
