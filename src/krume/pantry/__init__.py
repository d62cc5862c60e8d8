"""What is on the shelf: ingredients, names, measures, eggs, allergens, lots and their records."""

from krume.pantry.additives import Additive, additive_kinds, additive_named, additive_of
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
from krume.pantry.evidence_kinds import EvidenceKind, evidence_kind, evidence_kinds
from krume.pantry.finding import Found, find, is_not_food
from krume.pantry.gluten_claims import ClaimRule, claim_rule
from krume.pantry.gluten_methods import GlutenMethod, gluten_methods, method_of
from krume.pantry.gluten_records import (
    STATES,
    UNREAD,
    RecordNeed,
    RecordStanding,
    lots_of,
    record_method,
    record_need,
    record_standings,
    record_state,
)
from krume.pantry.gluten_results import GlutenResult, gluten_result
from krume.pantry.ingredients import ROLES, EnergyFactors, Ingredient, ingredient, ingredients
from krume.pantry.lot_words import (
    LotWords,
    lot_words,
    parts_listed,
    says_gluten,
    without_share,
)
from krume.pantry.lots import LOT_MORE, Lot, LotRecord, read_lots
from krume.pantry.markets import (
    MARKETS,
    Declared,
    declared,
    declared_words,
    is_tree_nut,
    listed_allergens,
    market_list,
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
from krume.pantry.room_records import (
    CleaningRecord,
    RoomRecord,
    RoomSource,
    RoomState,
    read_cleaning,
    read_room,
    room_source_key,
    room_sources,
    room_state_key,
    room_states,
)
from krume.pantry.said import allergen_names, allergens_said
from krume.pantry.sheet import plausible, read_supplier_sheet
from krume.pantry.typed_rows import plain_word

__all__ = [
    "LOT_MORE",
    "MARKETS",
    "QUANTITIES",
    "ROLES",
    "STATES",
    "UNREAD",
    "Additive",
    "Allergen",
    "Choice",
    "ClaimRule",
    "CleaningRecord",
    "Composition",
    "Declared",
    "EggSize",
    "EnergyFactors",
    "EvidenceKind",
    "Found",
    "GlutenMethod",
    "GlutenResult",
    "Good",
    "Ingredient",
    "Lot",
    "LotRecord",
    "LotWords",
    "Measure",
    "Price",
    "PriceFound",
    "PriceList",
    "RecordNeed",
    "RecordStanding",
    "RoomRecord",
    "RoomSource",
    "RoomState",
    "additive_kinds",
    "additive_named",
    "additive_of",
    "allergen_names",
    "allergens",
    "allergens_of",
    "allergens_of_words",
    "allergens_said",
    "as_line",
    "claim_rule",
    "contains_gluten_grain",
    "declared",
    "declared_words",
    "density_g_ml",
    "egg_price",
    "egg_size",
    "egg_size_named",
    "egg_sizes",
    "evidence_kind",
    "evidence_kinds",
    "find",
    "gluten_methods",
    "gluten_result",
    "ingredient",
    "ingredients",
    "is_not_food",
    "is_shell_egg",
    "is_tree_nut",
    "listed_allergens",
    "lot_words",
    "lots_of",
    "market_list",
    "measure",
    "method_of",
    "names_gluten_grain",
    "old_prices",
    "parts_listed",
    "plain_word",
    "plausible",
    "price_of",
    "read_cleaning",
    "read_lots",
    "read_prices",
    "read_room",
    "read_supplier_sheet",
    "record_method",
    "record_need",
    "record_standings",
    "record_state",
    "region_named",
    "room_source_key",
    "room_sources",
    "room_state_key",
    "room_states",
    "says_gluten",
    "without_share",
]
