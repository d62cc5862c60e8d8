"""Numbers of options: what is no number is refused by every command, as wrong usage."""

import pytest

from krume.cli.ranges import Number, Whole, Within
from tests.cli.conftest import Run

FROM = ("blend", "--match", "F2", "--from", "white rice flour, potato starch")


@pytest.mark.parametrize(
    "words",
    [
        (*FROM, "--total"),
        (*FROM, "--scale"),
        (*FROM, "--least"),
        (*FROM, "--most-price"),
        ("slip", "F2", "--weighed", "teff=26", "--scale"),
        ("vary", "F1", "--swap", "hazelnut=sunflower", "--scale"),
        ("eggs", "101", "--tolerance"),
        ("eggs", "101", "--sugared"),
        ("size", "F2", "--tin", "round 20 x 5 cm", "--scale"),
        ("bake", "F1", "--altitude"),
        ("bake", "F1", "--door"),
        ("bake", "F1", "--cold-start"),
        ("keep", "T1", "--fridge"),
        ("keep", "T1", "--room"),
        ("load", "2 F1", "--gap"),
        ("load", "2 F1", "--power"),
    ],
    ids=lambda words: f"{words[0]} {words[-1]}",
)
@pytest.mark.parametrize("number", ["nan", "NaN", "inf", "-inf"])
def test_no_number_is_wrong_usage_and_never_a_fault(
    run: Run, words: tuple[str, ...], number: str
) -> None:
    said = run(*words, number)
    assert said.code == 2
    assert words[-1] in said.err
    assert f"'{number}' is no number." in " ".join(said.err.split())


def test_a_number_inside_is_the_number() -> None:
    assert Within(0, 20).convert(2.5, None, None) == 2.5


def test_a_number_without_a_range_is_the_number() -> None:
    assert Number().convert(-120.5, None, None) == -120.5


@pytest.mark.parametrize(
    "words",
    [("blend", "--match", "F2", "--most-flours"), ("eggs", "101", "--pack"), ("serve", "--port")],
)
@pytest.mark.parametrize("number", ["nan", "2.5"])
def test_what_is_counted_is_a_whole_number(run: Run, words: tuple[str, ...], number: str) -> None:
    said = run(*words, number)
    assert said.code == 2
    assert f"'{number}' is no whole number." in " ".join(said.err.split())


def test_a_whole_number_inside_is_the_number() -> None:
    assert Whole(1, 20).convert(7, None, None) == 7
