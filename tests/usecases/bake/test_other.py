"""What a bake is compared with, as it is typed: another tin, another oven, the same otherwise."""

import pytest

from krume.size import Tin
from krume.usecases import OTHERWISE, Asked, BakeWish
from krume.usecases.bake.bake import bake_ground
from krume.usecases.bake.other import Other, other_name, other_of

ROUND = Tin("round 20 x 7 cm", "round", diameter_cm=20.0, height_cm=7.0)
DARK = Tin("dark", "round", "dark", diameter_cm=20.0)


def _other(typed: str, asked: Asked) -> Other:
    return other_of(bake_ground("F1", BakeWish(), asked), BakeWish(beside=typed), asked)


def test_a_tin_is_named_by_what_tells_it_apart() -> None:
    assert other_name(ROUND, DARK) == "the dark tin"
    wide = Tin("", "round", "dark", diameter_cm=26.0)
    assert other_name(ROUND, wide) == "the cake in dark round 26 cm"


@pytest.mark.parametrize(
    ("typed", "name"),
    [
        ("dark round 20 cm", "the dark tin"),
        ("Glass", "the glass tin"),
        ("Wrapped", "the cake in a wet strip"),
        (" stone ", "the cake on a hot stone"),
        ("low", "the cake low in the oven"),
        ("fan", "the cake with the fan"),
        ("160 C", "the cake at 160 °C"),
        ("325 F", "the cake at 163 °C"),
        ("fan 150 C", "the cake at 150 °C with the fan"),
    ],
)
def test_one_thing_is_otherwise_and_the_name_says_which(typed: str, name: str, demo: Asked) -> None:
    found = _other(typed, demo)
    assert found.problems == ()
    assert found.name == name
    assert found.ground is not None and found.ground.batter is not None


@pytest.mark.parametrize("word", OTHERWISE)
def test_every_word_is_either_otherwise_or_the_same(word: str, demo: Asked) -> None:
    found = _other(word, demo)
    usual = {"no fan", "none", "rack", "middle"}
    codes = [problem.code for problem in found.problems]
    assert codes == (["beside-the-same"] if word in usual else [])


def test_all_else_stays_as_the_first_bake_has_it(demo: Asked) -> None:
    wish = BakeWish(tin="round 22 x 7 cm", under="tray", beside="fan")
    ground = bake_ground("F1", wish, demo)
    found = other_of(ground, wish, demo).ground
    assert found is not None and found.oven is not None and found.tin is not None
    assert found.tin == ground.tin
    assert found.oven.around.under == "tray"
    assert found.oven.fan


def test_a_question_about_it_stands_at_its_own_option(demo: Asked) -> None:
    found = _other("huh", demo)
    assert [problem.where for problem in found.problems] == ["--beside"]
    ring = BakeWish(tin="ring 20 x 6 cm", beside="water")
    asked = other_of(bake_ground("F1", ring, demo), ring, demo)
    assert [(p.code, p.where) for p in asked.problems] == [("water-and-ring", "--beside")]


def test_nothing_wished_is_nothing_said(demo: Asked) -> None:
    assert other_of(bake_ground("F1", BakeWish(), demo), BakeWish(), demo) == Other()
