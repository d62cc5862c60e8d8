"""Which family a formula belongs to."""

from dataclasses import replace

import pytest

from krume.design.formula import Formula
from krume.design.recognise import FamilyGuess, family_of, limit
from krume.design.shares import sums
from tests.design import planned as p

ROLLED = ("Turn onto a cloth and roll loosely while warm.",)
WHOLE = ("Whisk eggs and sugar over water to 42 C until they fall in a ribbon.",)


def guess(made: Formula) -> FamilyGuess:
    return family_of(made, sums(made.lines))


@pytest.mark.parametrize(
    ("made", "key", "basis"),
    [
        (p.F1, "separated", "lines"),
        (p.F2, "separated", "lines"),
        (p.F3, "roulade", "name"),
        (p.F4, "nut", "lines"),
        (p.F5, "chiffon", "lines"),
        (p.F6, "butter", "lines"),
        (p.F7, "tart", "lines"),
        (p.C1, "custard-lightened", "lines"),
        (p.C2, "set-cream", "lines"),
        (p.C3, "ganache", "lines"),
        (p.C4, "jelly", "lines"),
        (p.C5, "cooked-white-buttercream", "lines"),
        (p.S1, "syrup", "lines"),
    ],
)
def test_a_formula_is_known_by_its_lines_or_its_name(made: Formula, key: str, basis: str) -> None:
    assert guess(made) == FamilyGuess(key, basis)


def test_what_the_person_says_goes_first() -> None:
    stated = p.formula((p.RICE, 100), p.eggs(4, 5), (p.SUGAR, 120), family="genoise")
    assert guess(stated) == FamilyGuess("genoise", "stated")


@pytest.mark.parametrize(
    ("said", "key"), [("Génoise", "genoise"), ("swiss roll", "roulade"), ("brick", None)]
)
def test_a_family_may_be_said_by_its_usual_name_or_is_unknown(said: str, key: str | None) -> None:
    stated = p.formula((p.RICE, 100), p.eggs(4, 5), (p.SUGAR, 120), family=said)
    assert guess(stated) == FamilyGuess(key, "stated" if key else "unknown")


def test_a_foam_on_a_sheet_that_is_rolled_is_a_roulade() -> None:
    lines = ((p.RICE, 100), p.eggs(4, 6), (p.SUGAR, 140))
    assert guess(p.formula(*lines, tin=p.SHEET, steps=ROLLED)).key == "roulade"
    assert guess(p.formula(*lines, tin=p.SHEET)).key == "separated"


def test_whole_eggs_whisked_warm_are_a_genoise() -> None:
    whole = p.line(4, p.EGG, 204.0, amount=4, unit="each", egg_size="eu-m")
    lines = ((p.RICE, 100), whole, (p.SUGAR, 120), (p.BUTTER, 20))
    assert guess(p.formula(*lines, steps=WHOLE)).key == "genoise"


def test_whites_alone_without_fat_are_an_angel_cake() -> None:
    lines = ((p.RICE, 60), (p.POTATO, 40), p.parts(5, 10, "white", 33.5), (p.SUGAR, 280))
    assert guess(p.formula(*lines)).key == "angel"


def test_a_butter_batter_with_many_nuts_stays_a_butter_cake() -> None:
    egg = p.line(6, p.EGG, 153.0, amount=3, unit="each", egg_size="eu-m")
    lines = ((p.BUTTER, 150), (p.SUGAR, 150), (p.RICE, 80), egg, (p.HAZELNUT, 80))
    assert guess(p.formula(*lines)).key == "butter"


@pytest.mark.parametrize(
    ("lines", "family"),
    [
        (((p.MILK, 400), p.parts(4, 4, "yolk", 17.5), (p.SUGAR, 80), (p.MAIZE, 30)), "custard"),
        (
            ((p.MILK, 400), p.parts(4, 4, "yolk", 17.5), (p.MAIZE, 30), (p.BUTTER, 400)),
            "custard-buttercream",
        ),
        (
            ((p.CURRANT, 400), (p.CREAM, 400), (p.GELATINE, 10), (p.SUGAR, 100)),
            "fruit-mousse",
        ),
    ],
)
def test_what_has_no_tin_and_no_flour_is_a_cream(lines: tuple[p.Weighed, ...], family: str) -> None:
    assert guess(p.formula(*lines, tin=None)).key == family


def test_what_nothing_points_to_stays_unknown() -> None:
    porridge = p.formula((p.RICE, 100), (p.MILK, 300), (p.SUGAR, 20))
    assert guess(porridge) == FamilyGuess(None, "unknown")
    assert guess(p.formula((p.SALT, 3), tin=None)) == FamilyGuess(None, "unknown")


def test_the_longest_name_decides() -> None:
    named = p.formula((p.RICE, 100), p.eggs(4, 5), (p.SUGAR, 120), name="Zitronen-Biskuitrolle")
    assert guess(named) == FamilyGuess("roulade", "name")


def test_the_limits_between_families_are_rows() -> None:
    assert limit("nut-basis") == 35


@pytest.mark.parametrize(("walnut_g", "key"), [(34.99, "separated"), (35.0, "nut")])
def test_a_foam_becomes_a_nut_sponge_at_exactly_thirty_five_percent(
    walnut_g: float, key: str
) -> None:
    lines = ((p.RICE, 100 - 35), (p.WALNUT, walnut_g), p.eggs(5, 3), (p.SUGAR, 90))
    assert guess(p.formula(*lines)).key == key
    assert guess(p.formula(*lines, family="separated")).key == key


def test_nuts_with_no_egg_to_carry_them_are_no_nut_sponge() -> None:
    bare = replace(p.F4, tin=None, oven=None, baked=None, core_c=None, bake_min=None)
    no_flour = [
        x for x in p.F4.lines if x.name and "flour" not in x.name and "starch" not in x.name
    ]
    nuts = replace(bare, name="Nuts", family=None, lines=tuple(no_flour))
    stirred = replace(nuts, lines=tuple(x for x in no_flour if x.basis != "egg"))
    assert guess(nuts).key == "nut"
    assert guess(stirred).key is None
