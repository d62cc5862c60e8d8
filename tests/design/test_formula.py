"""The formula and its lines are plain frozen values; what is not said is None, never 0."""

from dataclasses import FrozenInstanceError, fields

import pytest

from krume.design import BakedLine, Formula, Line, OvenLine, Use


def test_what_is_not_said_is_none_and_never_nothing() -> None:
    formula = Formula("Sponge")
    unsaid = (formula.tin, formula.oven, formula.family, formula.baked, formula.core_c)
    assert unsaid == (None,) * 5
    assert not formula.lines and not formula.steps and not formula.uses


def test_a_line_of_unknown_mass_says_so() -> None:
    line = Line("salt", 3, None, None, None, "unknown", "salt", "salt")
    assert line.mass_g is None and line.mass_interval_g is None


@pytest.mark.parametrize(
    "value",
    [Formula("x"), Use(0, 0, None), OvenLine("170 C", 170.0), BakedLine("50 mm high", 50.0)],
)
def test_nothing_is_changed_in_place(value: object) -> None:
    name = fields(value)[0].name  # type: ignore[arg-type]
    with pytest.raises(FrozenInstanceError):
        setattr(value, name, None)


def test_lines_carry_the_names_of_the_answer() -> None:
    names = {field.name for field in fields(Line)}
    assert {"read", "amount", "unit", "mass_g", "basis", "ingredient", "part"} <= names
