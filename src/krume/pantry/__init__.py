"""What is on the shelf: ingredients, everyday names, measures, eggs, allergens."""

from krume.pantry.allergens import (
    Allergen,
    allergens,
    allergens_of,
    allergens_of_words,
    contains_gluten_grain,
    names_gluten_grain,
)
from krume.pantry.composition import QUANTITIES, Composition
from krume.pantry.eggs import EggSize, egg_size, egg_size_named, egg_sizes, region_named
from krume.pantry.finding import Found, find
from krume.pantry.ingredients import EnergyFactors, Ingredient, ingredient, ingredients
from krume.pantry.measures import Measure, density_g_ml, measure
from krume.pantry.names import Choice, Good
from krume.pantry.sheet import plausible, read_supplier_sheet

__all__ = [
    "QUANTITIES",
    "Allergen",
    "Choice",
    "Composition",
    "EggSize",
    "EnergyFactors",
    "Found",
    "Good",
    "Ingredient",
    "Measure",
    "allergens",
    "allergens_of",
    "allergens_of_words",
    "contains_gluten_grain",
    "density_g_ml",
    "egg_size",
    "egg_size_named",
    "egg_sizes",
    "find",
    "ingredient",
    "ingredients",
    "measure",
    "names_gluten_grain",
    "plausible",
    "read_supplier_sheet",
    "region_named",
]
