"""What is on the shelf: ingredients, names, measures, eggs, allergens, lots and their records."""

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
from krume.pantry.gluten_records import (
    STATES,
    RecordNeed,
    lots_of,
    record_need,
    record_state,
)
from krume.pantry.ingredients import ROLES, EnergyFactors, Ingredient, ingredient, ingredients
from krume.pantry.lot_words import (
    LotWords,
    allergens_said,
    lot_words,
    says_gluten,
    without_share,
)
from krume.pantry.lots import (
    CleaningRecord,
    GlutenResult,
    Lot,
    evidence_kinds,
    read_cleaning,
    read_lots,
)
from krume.pantry.measures import Measure, density_g_ml, measure
from krume.pantry.names import Choice, Good
from krume.pantry.price_rows import as_line
from krume.pantry.prices import (
    Price,
    PriceFound,
    PriceList,
    egg_price,
    is_shell_egg,
    old_prices,
    price_of,
    read_prices,
)
from krume.pantry.sheet import plausible, read_supplier_sheet

__all__ = [
    "QUANTITIES",
    "ROLES",
    "STATES",
    "Allergen",
    "Choice",
    "CleaningRecord",
    "Composition",
    "EggSize",
    "EnergyFactors",
    "Found",
    "GlutenResult",
    "Good",
    "Ingredient",
    "Lot",
    "LotWords",
    "Measure",
    "Price",
    "PriceFound",
    "PriceList",
    "RecordNeed",
    "allergens",
    "allergens_of",
    "allergens_of_words",
    "allergens_said",
    "as_line",
    "contains_gluten_grain",
    "density_g_ml",
    "egg_price",
    "egg_size",
    "egg_size_named",
    "egg_sizes",
    "evidence_kinds",
    "find",
    "ingredient",
    "ingredients",
    "is_shell_egg",
    "lot_words",
    "lots_of",
    "measure",
    "names_gluten_grain",
    "old_prices",
    "plausible",
    "price_of",
    "read_cleaning",
    "read_lots",
    "read_prices",
    "read_supplier_sheet",
    "record_need",
    "record_state",
    "region_named",
    "says_gluten",
    "without_share",
]
