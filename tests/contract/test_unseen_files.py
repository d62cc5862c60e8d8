"""Texts the program has never seen, against sums done here by plain arithmetic."""

from decimal import ROUND_HALF_UP, Decimal
from fractions import Fraction
from math import pi, sqrt
from pathlib import Path
from typing import Any

import pytest

from tests.contract.conftest import Many, Said

SPONGE = """\
Skerry almond sponge
Tin: round 24 x 6 cm
Oven: 165 C, no fan
Baked: 44 mm high, 620 g (plan)
Eggs: EU sizes

60 g white rice flour
30 g buckwheat flour
50 g potato starch
10 g sweet rice flour
7 eggs, medium, separated
190 g caster sugar
2 g fine salt

Beat the yolks with 90 g of the sugar.
Whisk the whites with the salt and the remaining 100 g sugar.
Bake 30 to 36 minutes, core 94 C.
"""
BUTTER = """\
Skerry butter cake
Tin: square 18 x 6 cm
Oven: 160 C, no fan
Baked: 42 mm high, 690 g (plan)
Eggs: EU sizes

170 g butter, soft
160 g caster sugar
4 eggs, medium
80 g white rice flour
20 g teff flour
60 g potato starch
14 g sweet rice flour
5 g baking powder
40 g milk

Bake 45 minutes, core 97 C.
"""
CHIFFON = """\
Skerry chiffon
Tin: tube 24 x 10 cm, hole 7 cm, not greased
Oven: 160 C, no fan
Baked: 75 mm high, 700 g (plan)
Eggs: EU sizes

60 g white rice flour
20 g millet flour
40 g potato starch
10 g sweet rice flour
4 g baking powder
6 egg yolks, medium
7 egg whites, medium
150 g caster sugar
60 g sunflower oil
90 g orange juice

Bake 45 minutes, core 97 C.
"""
SHEET = """\
Skerry roll sheet
Tin: sheet 40x30 cm, 2 cm high
Oven: 190 C, no fan
Baked: 12 mm high, 560 g (plan)
Eggs: EU sizes

60 g white rice flour
34 g potato starch
10 g sweet rice flour
0.4 g xanthan gum
6 eggs, medium, separated
150 g caster sugar

Bake 10 to 12 minutes.
"""
CREAM = """\
Skerry cream
Density: 0.70 g/ml (plan)

400 g whipping cream, 35 % fat
80 g caster sugar
6 g powdered gelatine, 200 bloom
30 g water
"""
SYRUP = "Skerry syrup\n\n120 g caster sugar\n100 g water\n"
TORTE = """\
Skerry torte
Slices: 16
Keep: cold

2 layers of SPONGE, 18 mm, trimmed to 23 cm
0.12 g/cm2 SYRUP on each layer
12 mm CREAM between the layers
5 mm CREAM around and on top
"""
ROLL = """\
Skerry roll
Slices: 10
Keep: cold

1 sheet of SHEET, 11 mm, rolled from the short side
6 mm CREAM on the sheet
"""
ORDER = """\
Order 7
Customer: B. Invented
Date: Saturday 2027-06-19
Hand-over: 15:00, pick-up
For: 20 people
Price: 120.00

2 TORTE
"""
NEW_TEXTS = {
    "SPONGE": SPONGE, "BUTTER": BUTTER, "CHIFFON": CHIFFON, "SHEET": SHEET, "CREAM": CREAM,
    "SYRUP": SYRUP, "TORTE": TORTE, "ROLL": ROLL, "ORDER": ORDER,
}  # fmt: skip
CALLS = {
    "sponge": ["check", "SPONGE.txt"],
    "butter": ["check", "BUTTER.txt"],
    "chiffon": ["check", "CHIFFON.txt"],
    "chiffon read": ["read", "CHIFFON.txt"],
    "to square": ["size", "SPONGE.txt", "--tin", "square 20 x 6 cm"],
    "to tube": ["size", "CHIFFON.txt", "--tin", "tube 20 x 10 cm, hole 6 cm"],
    "any": ["size", "SPONGE.txt", "--tin", "square 20 x 6 cm", "--eggs", "any"],
    "torte": ["build", "TORTE.txt"],
    "roll": ["build", "ROLL.txt"],
    "label": ["label", "SPONGE.txt", "--market", "eu"],
    "cost": ["cost", "SYRUP.txt"],
    "cost sponge": ["cost", "SPONGE.txt", "--price", "60", "--margin", "40"],
    "cost torte": ["cost", "TORTE.txt", "--price", "110"],
    "cost order": ["cost", "ORDER.txt"],
    "bake": ["bake", "SPONGE.txt"],
}
EGG = {"whole": 51.0, "yolk": 17.5, "white": 33.5}


@pytest.fixture(scope="module")
def said(
    many: Many, book: Path, plain: Path, tmp_path_factory: pytest.TempPathFactory
) -> dict[str, Said]:
    """Every call of this page on texts beside each other in a folder, in one process."""
    folder = tmp_path_factory.mktemp("skerry")
    for name, text in NEW_TEXTS.items():
        (folder / f"{name}.txt").write_text(text, encoding="utf-8")
    prices = (plain / "prices.csv").read_text(encoding="utf-8")
    (folder / "prices.csv").write_text(prices, encoding="utf-8")
    words = [[*call, "--json", "--book", str(book)] for call in CALLS.values()]
    return dict(zip(CALLS, many(words, cwd=folder), strict=True))


@pytest.fixture(scope="module")
def results(said: dict[str, Said]) -> dict[str, Any]:
    """The results of those calls."""
    for name, one in said.items():
        assert one.code == 0, (name, one.stdout[-1500:], one.stderr)
    return {name: one.answer["result"] for name, one in said.items()}


def test_a_sponge_is_judged_on_its_flour(results: dict[str, Any]) -> None:
    flour = 60 + 30 + 50 + 10
    result = results["sponge"]
    assert result["family"] == "separated"
    assert result["flour_g"] == pytest.approx(flour)
    assert result["total_g"] == pytest.approx(flour + 7 * EGG["whole"] + 190 + 2)
    assert result["percent"]["egg"] == pytest.approx(100 * 7 * EGG["whole"] / flour)
    assert result["percent"]["sugar"] == pytest.approx(100 * 190 / flour)
    assert result["percent"]["starch"] == pytest.approx(100 * 50 / flour)
    assert result["percent"]["sweet_rice"] == pytest.approx(100 * 10 / flour)
    assert result["percent"]["added_fat"] == pytest.approx(0)


def test_a_butter_cake_counts_the_fat_of_its_butter(results: dict[str, Any]) -> None:
    flour = 80 + 20 + 60 + 14
    result = results["butter"]
    assert result["family"] == "butter"
    assert result["flour_g"] == pytest.approx(flour)
    assert result["percent"]["added_fat"] == pytest.approx(100 * 170 * 0.82 / flour, abs=0.05)
    assert result["percent"]["egg"] == pytest.approx(100 * 4 * EGG["whole"] / flour)
    assert result["percent"]["liquid"] == pytest.approx(100 * 40 / flour)


def test_a_finding_names_its_key_its_side_and_its_band(results: dict[str, Any]) -> None:
    flour = 80 + 20 + 60 + 14
    assert 100 * 170 / flour > 95
    for finding in results["butter"]["findings"]:
        key, _, side = finding["code"].rpartition("-")
        assert side in ("low", "high")
        assert key.replace("-", "_") in results["butter"]["percent"] | {"sugar_egg": 0}
        outside = finding["value"] < finding["low"] or finding["value"] > finding["high"]
        assert outside, finding


def test_a_chiffon_counts_its_yolks_and_whites_apart(results: dict[str, Any]) -> None:
    flour = 60 + 20 + 40 + 10
    result = results["chiffon"]
    assert result["family"] == "chiffon"
    parts = {x["part"]: x["mass_g"] for x in results["chiffon read"]["lines"] if x["part"]}
    assert parts["yolk"] == pytest.approx(6 * EGG["yolk"])
    assert parts["white"] == pytest.approx(7 * EGG["white"])
    assert result["percent"]["sugar"] == pytest.approx(100 * 150 / flour)
    assert result["percent"]["added_fat"] == pytest.approx(100 * 60 / flour)
    assert result["percent"]["liquid"] == pytest.approx(100 * 90 / flour)


def test_a_tin_factor_is_a_ratio_of_areas_and_of_volumes(results: dict[str, Any]) -> None:
    round_area, square_area = pi * 24**2 / 4, 20.0**2
    factor = results["to square"]["factor"]
    assert factor["by_area"] == pytest.approx(square_area / round_area, rel=1e-6)
    assert factor["by_volume"] == pytest.approx(square_area / round_area, rel=1e-6)
    big, small = pi * (24**2 - 7**2) / 4, pi * (20**2 - 6**2) / 4
    factor = results["to tube"]["factor"]
    assert factor["by_area"] == pytest.approx(small / big, rel=1e-6)


def test_whole_eggs_are_whole_and_every_line_follows_them(results: dict[str, Any]) -> None:
    for option in results["to square"]["options"]:
        eggs = option["eggs"]
        assert eggs["count"] == int(eggs["count"])
        assert option["factor"] == pytest.approx(
            (eggs["count"] * EGG["whole"] + eggs["make_up_g"]) / (7 * EGG["whole"]), abs=1e-4
        )
        sugar = next(x for x in option["lines"] if x["ingredient"].startswith("sugar"))
        assert sugar["mass_g"] == pytest.approx(190 * option["factor"], rel=0.005)


def test_any_grams_of_egg_give_the_exact_factor(results: dict[str, Any]) -> None:
    wanted = 20.0**2 / (pi * 24**2 / 4)
    assert any(
        option["factor"] == pytest.approx(wanted, rel=1e-4) for option in results["any"]["options"]
    )


def test_the_depth_is_mass_over_density_and_area(results: dict[str, Any]) -> None:
    total = 150 + 7 * EGG["whole"] + 190 + 2
    depth = total / 0.48 / (pi * 24**2 / 4)
    assert results["bake"]["depth_cm"] == pytest.approx(depth, rel=0.005)
    assert results["bake"]["core_c"] == 94


def test_a_torte_weighs_what_its_pieces_come_to(results: dict[str, Any]) -> None:
    tin, disc = pi * 24**2 / 4, pi * 23**2 / 4
    sponge = 620 * (2 * disc * 1.8) / (tin * 4.4)
    syrup = 0.12 * disc * 2
    cream = disc * 1.2 * 0.70
    inner = 1.8 + 1.2 + 1.8
    coat = (pi * (23 + 1.0) ** 2 / 4 * (inner + 0.5) - disc * inner) * 0.70
    result = results["torte"]
    assert result["height_mm"] == pytest.approx(10 * inner + 5)
    assert result["syrup_g"] == pytest.approx(syrup, abs=0.05)
    assert result["cream_g"] == pytest.approx(cream, abs=0.05)
    assert result["mass_g"] == pytest.approx(sponge + syrup + cream + coat, abs=0.1)
    assert sum(x["mass_g"] for x in result["layers"]) == pytest.approx(result["mass_g"], abs=0.1)
    (slices,) = result["slices"]
    assert slices["count"] == 16
    assert slices["mass_g"] == pytest.approx(result["mass_g"] / 16, abs=0.01)


def test_a_roll_from_the_short_side_is_thicker_by_its_turns(results: dict[str, Any]) -> None:
    pitch = 1.1 + 0.6
    diameter = 20 * sqrt(40 * pitch / pi)
    sponge = 560 * 1.1 / 1.2
    cream = 40 * 30 * 0.6 * 0.70
    result = results["roll"]
    assert result["height_mm"] == pytest.approx(diameter, rel=0.005)
    assert result["cream_g"] == pytest.approx(cream, abs=0.05)
    assert result["mass_g"] == pytest.approx(sponge + cream, abs=0.1)
    assert result["slices"][0]["mass_g"] == pytest.approx((sponge + cream) / 10, abs=0.01)


def test_energy_follows_from_the_panel_by_the_eu_factors(results: dict[str, Any]) -> None:
    n = results["label"]["nutrition"]
    grams = [n[k] for k in ("carbohydrate_g", "protein_g", "fat_g", "fibre_g")]
    assert n["energy_kj"] == pytest.approx(
        sum(g * f for g, f in zip(grams, (17, 17, 37, 8), strict=True)), rel=0.005
    )
    assert n["energy_kcal"] == pytest.approx(
        sum(g * f for g, f in zip(grams, (4, 4, 9, 2), strict=True)), rel=0.005
    )
    assert n["salt_g"] == pytest.approx(n["sodium_mg"] * 2.5 / 1000, rel=1e-6)


def test_the_ingredient_list_falls_by_mass_and_holds_every_one(results: dict[str, Any]) -> None:
    text = results["label"]["ingredients"].casefold()
    order = ["egg", "sugar", "white rice flour", "potato starch", "buckwheat flour"]
    places = [text.index(name) for name in order]
    assert places == sorted(places)
    assert "salt" in text and "sweet rice flour" in text


def _cents(exact: Fraction) -> float:
    value = Decimal(exact.numerator) / Decimal(exact.denominator)
    return float(value.quantize(Decimal("0.01"), ROUND_HALF_UP))


def _sponge_material() -> Fraction:
    grams = {"3.20": 60, "4.10": 30, "2.90": 50, "5.40": 10, "1.40": 190, "0.80": 2}
    return sum(
        (Fraction(price) * mass / 1000 for price, mass in grams.items()), Fraction("0.32") * 7
    )


def test_a_sponge_costs_the_sum_of_its_lines(results: dict[str, Any]) -> None:
    result = results["cost sponge"]
    heads = [
        _cents(_sponge_material()), _cents(Fraction("2.2") * 24),
        _cents(Fraction("1.8") * Fraction("0.34")), _cents(Fraction("2.40") + Fraction("0.06")),
    ]  # fmt: skip
    assert [result[k] for k in ("material", "labour", "energy", "packaging")] == heads
    assert result["direct"] == pytest.approx(sum(heads), abs=0.001)
    full = sum(heads) + _cents(Fraction(620, 24))
    assert result["full"] == pytest.approx(full, abs=0.001)
    assert result["price_for_margin"] == pytest.approx(full / 0.6, abs=0.0051)
    assert result["margin_pct"] == pytest.approx(100 * (60 - full) / 60, abs=0.05)


def test_a_price_below_the_direct_cost_never_breaks_even(results: dict[str, Any]) -> None:
    result = results["cost sponge"]
    assert result["direct"] < 60
    left = 60 - result["direct"]
    assert result["break_even"] == -(-620 // left)


def test_a_torte_pays_the_whole_cake_and_the_grams_of_its_cream(results: dict[str, Any]) -> None:
    tin, disc = 24.0, 23.0
    inner = 4.8
    area = pi * disc**2 / 4
    coat = (pi * (disc + 1.0) ** 2 / 4 * (inner + 0.5) - area * inner) * 0.70
    cream = (area * 1.2 * 0.70 + coat) / 516
    cream_batch = (400 * 5.6 + 80 * 1.4 + 6 * 38) / 1000
    syrup = 0.12 * area * 2 / 220 * (120 * 1.4 / 1000)
    assert disc < tin
    material = float(_sponge_material()) + cream * cream_batch + syrup
    assert results["cost torte"]["material"] == pytest.approx(material, abs=0.02)


def test_two_of_a_torte_cost_twice_the_labour(results: dict[str, Any]) -> None:
    one, two = results["cost torte"], results["cost order"]
    assert two["labour"] == pytest.approx(2 * one["labour"])
    assert two["packaging"] == pytest.approx(2 * one["packaging"])
    assert two["material"] == pytest.approx(2 * one["material"], abs=0.02)
