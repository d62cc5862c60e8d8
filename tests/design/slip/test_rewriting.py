"""The text with other amounts, read again."""

from importlib import resources

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from krume.base import InputError
from krume.design import read
from krume.design.slip.rewriting import portions, rewritten
from tests.design.slip.demo import formula

NAMES = ("F1", "F2", "F3", "F4", "F5", "F6", "F7", "C1", "C2", "C3", "C4", "C5", "S1")


def _text(name: str) -> str:
    folder = resources.files("krume").joinpath("data", "demo", "formulas")
    return folder.joinpath(f"{name}.txt").read_text(encoding="utf-8")


def _times(name: str, factor: float) -> list[float | None]:
    return [
        None if line.mass_g is None else round(line.mass_g * factor, 1 if line.mass_g > 1 else 3)
        for line in formula(name).lines
    ]


@pytest.mark.parametrize("name", NAMES)
def test_the_same_masses_leave_the_text_as_it_was(name: str) -> None:
    plan = [line.mass_g for line in formula(name).lines]
    assert rewritten(_text(name), formula(name), plan, keeps_size=True) == _text(name)


@settings(max_examples=25)
@given(st.sampled_from(NAMES), st.sampled_from((0.6, 0.8, 1.0769, 1.2, 1.3, 2.0)))
def test_what_was_written_reads_as_it_was_meant(name: str, factor: float) -> None:
    wanted = _times(name, factor)
    text = rewritten(_text(name), formula(name), wanted, keeps_size=False)
    again = read(text, eggs_region="eu")
    assert again.problems == ()
    for line, mass in zip(again.value.lines, wanted, strict=True):
        assert line.mass_g == pytest.approx(mass, abs=0.006)
    assert "Baked:" not in text


def test_whole_eggs_are_written_as_a_count_and_a_part_egg_in_grams() -> None:
    text = rewritten(_text("F2"), formula("F2"), _times("F2", 1.2), keeps_size=False)
    assert "\n6 eggs, medium, separated\n" in text
    part = _times("F2", 1.0769)
    part[5] = 274.6
    assert "\n274.6 g eggs, medium, separated\n" in rewritten(
        _text("F2"), formula("F2"), part, keeps_size=False
    )


def test_portions_in_the_steps_add_up_to_the_line_again() -> None:
    text = rewritten(_text("F2"), formula("F2"), _times("F2", 1.0769), keeps_size=False)
    assert "with 59.2 g of the sugar" in text
    assert "remaining 80.8 g sugar" in text
    assert sum(mass for _, mass in portions(formula("F4"), 5, 120.1)) == pytest.approx(120.1)
    assert portions(formula("F2"), 0, 50.0) == ()


def test_only_the_lines_that_changed_are_touched() -> None:
    masses = [line.mass_g for line in formula("F2").lines]
    masses[1] = 26.0
    old, new = _text("F2").splitlines(), rewritten(
        _text("F2"), formula("F2"), masses, keeps_size=True
    ).splitlines()  # fmt: skip
    assert [b for a, b in zip(old, new, strict=True) if a != b] == ["26 g teff flour"]


def test_line_ends_and_a_missing_last_one_stay() -> None:
    text = "Sponge\r\n\r\n40 g white rice flour\r\n20 g teff flour"
    found = read(text).value
    assert rewritten(text, found, (40.0, 26.0), keeps_size=True).endswith("\r\n26 g teff flour")


def test_an_amount_in_another_unit_becomes_grams() -> None:
    text = "Sponge\n\n2 oz butter\n200 g white rice flour\n"
    found = read(text).value
    assert "60 g butter\n" in rewritten(text, found, (60.0, 200.0), keeps_size=True)


def test_a_percentage_in_a_name_is_not_taken_for_the_amount() -> None:
    text = "Ganache\n\ndark chocolate 70 % 100 g\n100 g whipping cream, 35 % fat\n"
    found = read(text).value
    out = rewritten(text, found, (110.0, 100.0), keeps_size=True)
    assert out == text.replace("70 % 100 g", "70 % 110 g")


def test_two_amounts_in_one_line_are_refused_with_what_to_write() -> None:
    text = "Sponge\nEggs: EU sizes\n\n100 g white rice flour\n1 egg, medium, plus 1 yolk\n"
    found = read(text).value
    masses = [None if line.mass_g is None else line.mass_g * 1.5 for line in found.lines]
    assert len(masses) > 2
    with pytest.raises(InputError, match="Write it as grams first"):
        rewritten(text, found, masses, keeps_size=True)
