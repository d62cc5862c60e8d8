"""Ovens as people write them."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.design import read, read_oven


@pytest.mark.parametrize(
    ("text", "temp_c", "fan"),
    [
        ("160 C", 160.0, None),
        ("325 F", 162.8, None),
        ("fan 150 C", 150.0, True),
        ("170 °C, no fan", 170.0, False),
        ("180C/160C fan/gas 4", 180.0, False),
        ("350°F", 176.7, None),
        ("Umluft 160 °C", 160.0, True),
        ("175 Grad Ober-/Unterhitze", 175.0, False),
        ("157-165 C", 161.0, None),
        ("160 c fan", 160.0, True),
        ("-20 C", -20.0, None),
        ("−20 °C", -20.0, None),
        ("no fan - 170 C", 170.0, False),
        ("170 C, core 93 C (200 F)", 170.0, None),
    ],
)
def test_an_oven_is_read(text: str, temp_c: float, fan: bool | None) -> None:
    found = read_oven(text)
    assert found.problems == ()
    assert found.value is not None
    assert (found.value.temp_c, found.value.fan) == (temp_c, fan)


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ("180", "oven-unit"),
        ("350", "oven-unit"),
        ("gas 4", "oven-word"),
        ("moderate", "oven-word"),
        ("315 F (165 C)", "oven-temp-conflict"),
        ("hotter", "oven-not-read"),
        ("-180", "oven-not-read"),
        ("", "oven-not-read"),
    ],
)
def test_an_oven_that_is_not_clear_is_asked_about(text: str, code: str) -> None:
    found = read_oven(text)
    assert found.value is None
    assert [problem.code for problem in found.problems] == [code]
    for option in found.problems[0].options:
        assert read_oven(option.line).problems == ()


def test_celsius_is_offered_first_for_a_cool_figure_and_fahrenheit_for_a_hot_one() -> None:
    assert read_oven("180").problems[0].options[0].line == "180 C"
    assert read_oven("350").problems[0].options[0].line == "350 F"


def test_a_pair_that_disagrees_offers_both_and_dont_know() -> None:
    (problem,) = read("x\n\n85 g butter\n\nBake at 315 F (165 C), no fan.").problems
    assert [option.line for option in problem.options] == [
        "Bake at 315 F, no fan.",
        "Bake at 165 C, no fan.",
        "Bake at 157-165 C, no fan.",
    ]


def test_a_bake_in_two_stages_keeps_both() -> None:
    found = read_oven("180 then 160 after 10 min")
    assert found.value is not None
    assert found.value.stages == ((180.0, 10.0), (160.0, None))


@pytest.mark.parametrize(
    "step",
    [
        "Toast the walnuts at 150 C for 8 minutes.",
        "Melt the butter and keep it at 40 C.",
        "Bake 34 to 40 minutes, core 95 C.",
        "Warm white and sugar to 71 C.",
    ],
)
def test_other_temperatures_of_a_step_are_no_oven(step: str) -> None:
    assert read(f"x\n\n85 g butter\n\n{step}").value.oven is None


@given(st.text(max_size=60))
def test_no_text_makes_the_oven_reader_fail(text: str) -> None:
    found = read_oven(text)
    assert (found.value is None) == bool(found.problems)


@pytest.mark.parametrize("oven", ["Oven: 170 C\n", ""])
@pytest.mark.parametrize(
    "step",
    [
        "Bake 30 minutes, core 93.3 C (200 F).",
        "Bake 30 minutes, core 200 F (93.3 C).",
        "Bake to a core of 93.3 C / 200 F.",
    ],
)
def test_a_core_in_two_units_is_one_core_and_no_oven(oven: str, step: str) -> None:
    found = read(f"x\n{oven}\n85 g butter\n\n{step}")
    assert found.problems == ()
    assert found.value.core_c == 93.3
    assert (found.value.oven.temp_c if found.value.oven else None) == (170 if oven else None)


@pytest.mark.parametrize(
    ("text", "stages"),
    [
        ("180 then 160 C after 10 min", ((180.0, None), (160.0, 10.0))),
        ("350, then 325 °F after 10 min", ((176.7, None), (162.8, 10.0))),
    ],
)
def test_one_unit_behind_two_stages_is_meant_for_both(
    text: str, stages: tuple[tuple[float, float | None], ...]
) -> None:
    found = read_oven(text)
    assert found.problems == ()
    assert found.value is not None
    assert found.value.stages == stages
    assert found.value.read == text
