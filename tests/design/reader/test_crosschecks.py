"""A text held against itself."""

import pytest

from krume.base import Problem
from krume.design import apply_answers, read

COVERS = (
    "splits",
    "eggcounts",
    "tinchecks",
    "ovenchecks",
    "repeats",
    "claims",
    "dates",
    "placing",
    "mentions",
    "unread",
    "bakedchecks",
)

HEAD = "Cake\nEggs: EU M\n"
LIST = "\n4 eggs, separated\n100 g sugar\n70 g white rice flour\n\n"


def codes(text: str) -> list[str]:
    return [problem.code for problem in read(text).problems]


def only(text: str) -> Problem:
    (problem,) = read(text).problems
    return problem


@pytest.mark.parametrize(
    ("steps", "asked"),
    [
        (
            "Beat the yolks with 40 g of the sugar.\nWhisk the whites with the remaining 60 g "
            "sugar.",
            [],
        ),
        (
            "Beat the yolks with 40 g of the sugar.\nWhisk the whites with the remaining 50 g "
            "sugar.",
            ["split-sum"],
        ),
        ("Beat the yolks with 60 g sugar.\nWhisk the whites with 60 g sugar.", ["split-sum"]),
        (
            "Beat the yolks with 60 g of the sugar.\nWhisk the whites with the rest of the sugar.",
            [],
        ),
        ("Beat the yolks with 2 tbsp of the sugar.\nWhisk the whites with the sugar.", []),
        ("Whisk the four whites.", []),
        ("Whisk the five whites.", ["egg-count-conflict"]),
        ("Beat 3 yolks with the sugar.\nWhisk the 4 whites.", ["egg-count-conflict"]),
        ("Add 1 egg at a time.", []),
    ],
)
def test_steps_against_lines(steps: str, asked: list[str]) -> None:
    assert codes(HEAD + LIST + steps) == asked


@pytest.mark.parametrize(
    ("head", "steps", "asked"),
    [
        ("Tin: round 20 x 7 cm\n", "Pour into the 20 cm round tin.", []),
        ("Tin: round 20 x 7 cm\n", "Pour into a 23 cm springform.", ["tin-conflict"]),
        ("", "Bake in a 20 cm round tin, or in a 9 inch round tin.", ["tin-conflict"]),
        ("Oven: 170 C\n", "Bake at 170 C.", []),
        ("Oven: 170 C\n", "Bake at 190 C.", ["oven-conflict"]),
        ("Oven: 170 C\n", "Bake at 338 F.", []),
        ("", "Bake at 180 C for 30 minutes.\nBake 50 minutes.", ["minutes-conflict"]),
        ("", "Bake 18 minutes, uncover, bake 6 to 8 minutes more.", []),
    ],
)
def test_places_that_disagree(head: str, steps: str, asked: list[str]) -> None:
    assert codes(HEAD + head + LIST + steps) == asked


def test_while_two_tins_stand_none_is_taken() -> None:
    text = f"{HEAD}Tin: round 20 x 7 cm\n{LIST}Pour into a 23 cm springform."
    assert read(text).value.tin is None
    taken = only(text).options[1].line
    decided = read(text.replace("Pour into a 23 cm springform.", taken)).value
    assert taken == "Pour into a 23 cm springform (this one)."
    assert decided.source_lines[-1].text == taken


@pytest.mark.parametrize(
    ("claim", "line", "asked"),
    [
        ("nut free!!", "40 g ground almonds", ["claim-nut"]),
        ("Contains no nuts.", "40 g ground almonds", ["claim-nut"]),
        ("Nussfrei", "40 g Walnüsse", ["claim-nut"]),
        ("dairy-free", "40 g butter", ["claim-dairy"]),
        ("free from sesame", "20 g tahini", ["claim-sesame"]),
        ("alcohol-free", "20 g rum", ["claim-alcohol"]),
        ("vegan", "40 g honey", ["claim-vegan"]),
        ("glutenfrei", "40 g wheat flour", ["claim-gluten"]),
        ("nut free", "40 g butter", []),
        ("lactose-free", "40 g lactose-free milk", []),
    ],
)
def test_claims_against_lines(claim: str, line: str, asked: list[str]) -> None:
    assert codes(f"Cake\n\n100 g sugar\n{line}\n\nMix and bake.\n{claim}") == asked


def test_a_title_is_no_gluten_claim_but_a_sentence_is() -> None:
    text = "Gluten-free cake\n\n70 g white rice flour\n\nMix and bake."
    assert codes(text) == []
    assert codes(f"{text}\nThis cake is gluten free.") == ["claim-gluten"]


@pytest.mark.parametrize(
    ("time", "asked"),
    [("3 days", []), ("a week", ["claim-keeping"]), ("2 weeks", ["claim-keeping"])],
)
def test_a_cake_that_keeps_longer_than_cream_does_is_asked_about(
    time: str, asked: list[str]
) -> None:
    assert codes(f"{HEAD}{LIST}Bake.\nKeeps {time} in the fridge.") == asked


def test_one_ingredient_on_two_lines_of_one_part_is_asked_about_once() -> None:
    assert codes("x\n\n1 g salt\n2 g salt") == ["line-twice"]
    assert codes("x\n\n1 g salt\n2 g salt, for the caramel") == []
    assert codes("x\n\nSponge:\n1 g salt\nCream:\n2 g salt") == []


def test_a_blend_must_sum_to_a_hundred() -> None:
    whole = "Blend\n\n60 % white rice flour\n40 % potato starch"
    assert codes(whole) == []
    assert codes(whole.replace("60", "57")) == ["percent-sum"]


def test_parts_that_are_baked_apart_have_their_own_minutes_oven_and_tin() -> None:
    steps = (
        "Sponge\nBake at 170 C for 30 minutes in a 20 cm round tin.\n"
        "Meringue\nBake at 100 C for 90 minutes in a 30 cm round tin."
    )
    listed = f"{HEAD}{LIST}Method:\n{steps}".replace("Sponge", "Sponge:").replace(
        "ngue\n", "ngue:\n"
    )
    assert codes(listed) == []


def test_a_small_amount_for_dusting_is_no_split() -> None:
    assert codes(HEAD + LIST + "Dust with 10 g sugar.") == []


FOAM = """Sponge

150 g shelled egg
100 g sugar
80 g white rice flour

Whisk the egg.
"""


@pytest.mark.parametrize(
    ("step", "asked", "noted"),
    [
        ("Stir in 50 g sugar.", [], ["split-rest-unsaid"]),
        ("Stir in 60 g of the sugar.", [], ["split-rest-unsaid"]),
        ("Stir in 100 g sugar.", [], []),
        ("Stir in 50 g sugar. The rest of the sugar goes on top.", [], []),
        ("Stir in 50 g sugar, then the dry mix.", [], []),
        ("Stir in 160 g sugar.", ["split-sum"], []),
        ("Stir in 50 g sugar.\nFold in 40 g sugar.", ["split-sum"], []),
        ("Add the remaining 50 g sugar.", ["split-sum"], []),
    ],
)
def test_one_amount_less_than_its_line_is_noted_and_any_other_sum_is_asked(
    step: str, asked: list[str], noted: list[str]
) -> None:
    found = read(f"{FOAM}{step}\n")
    assert [problem.code for problem in found.problems] == asked
    assert [n.code for n in found.notices if n.code.startswith("split")] == noted


def test_the_notice_says_how_much_is_not_spoken_of() -> None:
    found = read(f"{FOAM}Stir in 60 g sugar.\n")
    (notice,) = (n for n in found.notices if n.code == "split-rest-unsaid")
    assert notice.where == "line 8"
    assert "the other 40 g" in notice.text


@pytest.mark.parametrize(
    ("claim", "line", "asked"),
    [
        ("Sugar-free cake", "5 g salt", ["claim-sugar"]),
        ("Zuckerfreier Kuchen", "5 g salt", ["claim-sugar"]),
        ("Vegetarian jelly", "5 g gelatine", ["claim-vegetarian"]),
        ("Vegetarian jelly", "5 g agar", []),
        ("Kosher cake", "5 g gelatine", ["claim-kosher"]),
        ("Halal cake", "20 g rum", ["claim-halal"]),
        ("GF cake", "50 g wheat flour", ["claim-gluten"]),
        ("Suitable for coeliacs", "50 g wheat flour", ["claim-gluten"]),
        ("Cake for children", "20 g rum", ["claim-kids"]),
        ("Cake for children", "20 g honey", []),
        ("Cake for a toddler", "20 g honey", ["claim-kids"]),
        ("Lactose-free cake", "60 g lactose-free milk", []),
    ],
)
def test_a_promise_is_held_against_what_goes_in(claim: str, line: str, asked: list[str]) -> None:
    assert codes(f"{claim}\n\n100 g sugar\n80 g white rice flour\n{line}\n") == asked


@pytest.mark.parametrize(
    ("line", "noted"),
    [
        ("I think you want around 85 g buckwheat flour here", ["amount-unread"]),
        ("I think you want a little more of it here", []),
        ("(85 g buckwheat flour, left out)", []),
    ],
)
def test_an_amount_beside_the_list_is_not_lost_without_a_word(line: str, noted: list[str]) -> None:
    found = read(f"Sponge\n\n100 g sugar\n{line}\n80 g white rice flour\n")
    assert len(found.value.lines) == 2
    assert [n.code for n in found.notices if n.where == "line 4"] == noted


def test_a_cake_planned_heavier_than_its_batter_is_asked() -> None:
    text = "Plain sponge\nBaked: 40 mm high, 260 g\n\n100 g white rice flour\n150 g milk\n"
    (problem,) = read(text).problems
    assert (problem.code, problem.where) == ("baked-above-batter", "line 2")
    assert problem.options[0].line == "Baked: 40 mm high (plan)"
    assert read(apply_answers(text, (f"line 2={problem.options[0].line}",))).problems == ()


def test_a_cake_as_heavy_as_its_batter_or_with_a_line_of_unknown_mass_is_not_asked() -> None:
    head = "Plain sponge\nBaked: 40 mm high, 250 g\n\n100 g white rice flour\n"
    for last in ("150 g milk\n", "some milk\n"):
        codes = [problem.code for problem in read(head + last).problems]
        assert "baked-above-batter" not in codes
