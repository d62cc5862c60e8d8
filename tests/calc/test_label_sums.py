"""Sums on labels as people and checks call them."""

import pytest

from krume.base import InputError, OutOfRangeError
from krume.calc import answer, run
from tests.agreement import agrees, reads


@pytest.mark.source("us-21-cfr-101-9", "R01 to R06, R48 as quick sums")
@pytest.mark.parametrize(
    ("nutrient", "amount", "text"),
    [("calories", 52, "50"), ("fat", 0.75, "1 g"), ("fat", "0.75", "1 g"),
     ("cholesterol", 3, "less than 5 mg"), ("sodium", "145mg", "150 mg"),
     ("sodium", "0.145 g", "150 mg"), ("fiber", 0.7, "less than 1 g"), ("Sugars", 1.5, "2 g")],
)  # fmt: skip
def test_amounts_are_printed_as_the_law_says(nutrient: str, amount: object, text: str) -> None:
    assert reads(str(run("us-amount", nutrient=nutrient, amount=amount)["text"]), text)


@pytest.mark.source("us-21-cfr-101-9", "R06, R12 as quick sums")
def test_percentages_and_servings_are_the_printed_ones() -> None:
    assert agrees(run("us-daily-value", nutrient="fat", amount=12)["percent"], "15")  # type: ignore[arg-type]
    found = run("us-servings", cake_g=1120, reference_g=80)
    assert agrees(found["per_container"], "15") and agrees(found["serving_g"], "74.7")  # type: ignore[arg-type]


@pytest.mark.source("eu-1169-2011", "R08 to R10, R15 as quick sums")
def test_eu_sums_are_the_printed_ones() -> None:
    cake = run("eu-energy", fat=18, carbohydrate=45, fibre=2, protein=6)
    assert agrees(cake["energy_kj"], "1549") and agrees(cake["energy_kcal"], "370")  # type: ignore[arg-type]
    assert agrees(run("eu-energy", fat=100)["energy_kj"], "3700")  # type: ignore[arg-type]
    assert agrees(run("salt", sodium="250mg")["salt_g"], "0.63")  # type: ignore[arg-type]
    assert agrees(run("quid", part=100, total=460, evaporated=60)["percent"], "25.0")  # type: ignore[arg-type]


@pytest.mark.source("usda-sr28", "R07, R42 as quick sums")
@pytest.mark.parametrize(
    ("food", "grams", "specific", "general"),
    [("egg", (12.56, 9.51, 0.72), "143.2", "138.7"),
     ("egg white", (10.90, 0.17, 0.73), "51.7", "48.1"),
     ("egg yolk", (15.86, 26.54, 3.59), "321.8", "316.7")],
)  # fmt: skip
def test_egg_energy_is_the_printed_one(
    food: str, grams: tuple[float, float, float], specific: str, general: str
) -> None:
    inputs = dict(zip(("protein", "fat", "carbohydrate"), grams, strict=True))
    own = run("atwater", **inputs, food=food)
    assert agrees(own["energy_kcal"], specific)  # type: ignore[arg-type]
    assert agrees(run("atwater", **inputs)["energy_kcal"], general)  # type: ignore[arg-type]


def test_a_food_without_factors_takes_the_general_ones_and_says_so() -> None:
    found = answer("atwater", {"protein": 1, "fat": 1, "carbohydrate": 1, "food": "moon dust"})
    assert found.values == {"energy_kcal": 17.0, "factors": "general"}
    assert found.notices[0].code == "general-factors"


@pytest.mark.source("reference-book", "R16, R17 as quick sums")
def test_gluten_mixtures_are_the_printed_ones() -> None:
    for parts in ("250:10,40:325", [(250, 10), (40, 325)], ["250 g:10 ppm", "0.04 kg:325"]):
        assert agrees(run("gluten-mix", parts=parts)["ppm"], "53.45")  # type: ignore[arg-type]
    edge = run("gluten-mix", parts="100:20")
    assert agrees(edge["ppm"], "20.0")  # type: ignore[arg-type]
    assert (edge["us_gluten_free"], edge["eu_gluten_free"]) == (False, True)


def test_an_unknown_part_makes_the_mixture_unknown() -> None:
    for parts in ("100:5,40:?", [(100, 5), (40, None)]):
        found = answer("gluten-mix", {"parts": parts})
        assert found.values == {"ppm": None, "us_gluten_free": None, "eu_gluten_free": None}
        assert [n.code for n in found.notices] == ["unknown-part", "no-claim"]


def test_above_100_percent_grams_are_declared() -> None:
    found = answer("quid", {"part": 450, "total": 460, "evaporated": 60})
    assert "113 g used per 100 g" in found.notices[0].text


@pytest.mark.parametrize(
    ("name", "inputs", "field"),
    [
        ("us-amount", {"nutrient": "caffeine", "amount": 1}, "nutrient"),
        ("us-amount", {"nutrient": "fat", "amount": "1 ml"}, "amount"),
        ("us-amount", {"nutrient": "fat", "amount": -1}, "amount"),
        ("us-daily-value", {"nutrient": "trans", "amount": 1}, "nutrient"),
        ("eu-energy", {}, "fat"),
        ("gluten-mix", {"parts": "100"}, "parts"),
        ("gluten-mix", {"parts": "0:5"}, "parts"),
        ("salt", {"sodium": "5 ml"}, "sodium"),
    ],
)
def test_what_cannot_be_is_refused_at_its_input(
    name: str, inputs: dict[str, object], field: str
) -> None:
    with pytest.raises(InputError) as caught:
        run(name, **inputs)
    assert caught.value.field == field


def test_a_percentage_of_protein_says_what_the_law_wants() -> None:
    assert answer("us-daily-value", {"nutrient": "protein", "amount": 5}).notices[0].code == (
        "protein-quality"
    )
    with pytest.raises(OutOfRangeError):
        run("quid", part=500, total=460)


@pytest.mark.source("us-21-cfr-101-9", "(b)(8) and (b)(12)(i) as quick sums")
@pytest.mark.parametrize(
    ("inputs", "count", "text"),
    [
        ({"cake": 180, "serving": 80}, "2.5", "about 2.5 servings per container"),
        ({"cake": "0.44 kg", "serving": 80}, "6", "about 6 servings per container"),
        ({"cake": 240, "reference": 80}, "3", "3 servings per container"),
    ],
)
def test_pieces_in_a_package_are_counted_as_the_rule_says(
    inputs: dict[str, object], count: str, text: str
) -> None:
    found = run("us-servings", **inputs)
    assert agrees(found["per_container"], count)  # type: ignore[arg-type]
    assert reads(str(found["text"]).partition(", ")[0], text)


def test_a_small_cake_is_told_of_its_second_column() -> None:
    codes = [each.code for each in answer("us-servings", {"cake": 240, "reference": 80}).notices]
    assert codes == ["container-column"]
    assert answer("us-servings", {"cake": 241, "reference": 80}).notices == ()


@pytest.mark.parametrize(
    "inputs",
    [{"cake": 200}, {"cake": 200, "serving": 0}, {"cake": 200, "serving": -5},
     {"cake": 200, "serving": 201}, {"cake": 0, "reference": 80}, {"cake": -1, "reference": 80}],
)  # fmt: skip
def test_a_serving_that_cannot_be_is_refused(inputs: dict[str, object]) -> None:
    with pytest.raises(InputError):
        run("us-servings", **inputs)


def test_a_slice_is_told_between_its_ends_and_never_as_one_figure() -> None:
    found = answer("slice-carbohydrate", {"carbohydrate": 372, "slices": 12, "spread": 12})
    low, best, high = (float(str(found.values[key])) for key in ("low_g", "best_g", "high_g"))
    assert low < best == 31.0 < high
    assert "insulin" in found.notices[0].text


@pytest.mark.parametrize(
    "inputs",
    [{"carbohydrate": 372}, {"carbohydrate": -1, "slices": 12}, {"carbohydrate": 372, "slices": 0},
     {"carbohydrate": 372, "slices": 2.5}, {"carbohydrate": 372, "slices": 1000}],
)  # fmt: skip
def test_a_slice_that_cannot_be_is_refused(inputs: dict[str, object]) -> None:
    with pytest.raises(InputError):
        run("slice-carbohydrate", **inputs)
