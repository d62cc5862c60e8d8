"""The pantry's tables: lots, the room's cleaning records, prices, packs."""

from krume.base import STATUSES
from krume.usecases import evidence_words
from krume.web.tables.kinds import Field, TableKind

_DAY = "year-month-day: 2027-06-12"
_STATUS = Field(
    "status",
    "Known how",
    "declared is what you or a supplier say; measured is what you weighed yourself",
    STATUSES,
    codes=("price-status",),
)

LOTS = TableKind(
    place="lots.csv",
    address="/pantry/lots",
    home="/pantry#lots",
    section="pantry",
    title="Lots",
    word="lot",
    required=("lot", "ingredient", "evidence"),
    fields=(
        Field("lot", "Lot", "the mark on the bag: L-019", is_required=True,
              codes=("lot-unnamed", "lot-twice")),
        Field("ingredient", "Ingredient", "as your formulas have it: white rice flour",
              is_required=True),
        Field("evidence", "Evidence", "only a test or a certificate is a record of gluten",
              ("", *evidence_words()), is_required=True, codes=("evidence-unknown",)),
        Field("text", "Its own words", "may contain wheat; lab test of the lot"),
        Field("result_mg_kg", "Result", "as printed: <5, 8, ≤20", unit="mg/kg",
              codes=("result-unread",)),
        Field("from", "From", _DAY, codes=("lot-date-unread", "lot-date-missing")),
        Field("valid_to", "Valid to", _DAY,
              codes=("lot-date-missing", "lot-dates-swapped")),
        Field("method", "How it was measured", "as the paper names it: R5 ELISA",
              codes=("method-unknown",)),
        Field("limit_mg_kg", "What it reads from", "for “not detected”: the method's limit, 5",
              unit="mg/kg", codes=("limit-unread",)),
        _STATUS,
        Field("ingredients", "What the bag lists", "for a composite: its own parts, by comma"),
        Field("supplier", "Whom it came from", "one step back, if it is called back: the mill"),
        Field("came", "In the house since", _DAY),
        Field("used_up", "Used up on", _DAY),
    ),
)  # fmt: skip

CLEANING = TableKind(
    place="cleaning.csv",
    address="/pantry/cleaning",
    home="/pantry/cleaning",
    section="pantry",
    title="Cleaning of the room",
    word="cleaning record",
    required=("date", "cleaned"),
    about=(
        "One line a day: was the room cleaned before the work? Without a yes of the day no gluten "
        "sentence is printed, and a no closes it."
    ),
    fields=(
        Field("date", "Day", _DAY, is_required=True, codes=("cleaning-date",)),
        Field("cleaned", "Cleaned before the work", "", ("", "yes", "no"), is_required=True,
              codes=("cleaning-unread",)),
    ),
)  # fmt: skip

ROOM = TableKind(
    place="room.csv",
    address="/pantry/room-list",
    home="/pantry/room-list",
    section="pantry",
    title="List of the room",
    word="line of the room",
    required=("source", "state", "date"),
    about=(
        "What wheat may come by, how it stands, since when. The last word before a day counts. "
        "Once a line is written, whatever is not answered shuts the gluten gate."
    ),
    fields=(
        Field("source", "What", "sieve, wooden spoons, oven, wheat day", is_required=True,
              codes=("room-source",)),
        Field("state", "How it stands", "", ("", "none", "own", "cleaned", "shared"),
              is_required=True, codes=("room-state", "room-not-cleanable")),
        Field("date", "Since", _DAY, is_required=True, codes=("room-date",)),
        Field("valid_to", "Looked at again by", _DAY,
              codes=("room-date-unread", "room-dates-swapped")),
        Field("text", "Words", "blue handles are for this work"),
    ),
)  # fmt: skip

PRICES = TableKind(
    place="prices.csv",
    address="/pantry/prices",
    home="/pantry/prices",
    section="pantry",
    title="Prices",
    word="price",
    required=("item", "price", "per"),
    about="What you pay. A thing without a price has none: it is asked, never taken as nothing.",
    fields=(
        Field("item", "What", "as your formulas have it: whipping cream, 35 % fat",
              is_required=True, codes=("price-item-missing", "price-name-open", "price-egg-size",
                                       "price-twice")),
        Field("price", "Price", "one amount: 5.60", is_required=True, codes=("price-unread",)),
        Field("per", "Per", "", ("", "kg", "each", "kWh"), is_required=True, codes=("price-unit",)),
        _STATUS,
        Field("currency", "Currency", "EUR, USD", codes=("currency-mixed",)),
        Field("date", "Of which day", _DAY, codes=("price-date",)),
    ),
)  # fmt: skip

PACKS = TableKind(
    place="packs.csv",
    address="/pantry/packs",
    home="/pantry/packs",
    section="pantry",
    title="Packs and stock",
    word="pack",
    required=("item",),
    about=(
        "How things are bought, and how much is in the house. Stock that is not written is not "
        "known: it is neither counted as there nor as gone."
    ),
    fields=(
        Field("item", "What", "as your formulas have it: caster sugar", is_required=True,
              codes=("pack-item-missing",)),
        Field("pack_g", "A pack", "what one pack holds: 1000", unit="g",
              codes=("pack-pack-unread",)),
        Field("stock_g", "In the house", "what is there now: 400", unit="g",
              codes=("pack-stock-unread",)),
        Field("where", "Bought at", "mill, market"),
    ),
)  # fmt: skip
