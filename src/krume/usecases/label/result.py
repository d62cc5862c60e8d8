"""The answer of `label`: what the buyer must be told, what is not known, and what opens it."""

from dataclasses import dataclass

from krume.base import Interval
from krume.label import Item, PartList


@dataclass(frozen=True, slots=True)
class LabelSpread:
    """How far one lot of the goods may lie from the tables, in the unit of its row."""

    low: float
    best: float
    high: float


@dataclass(frozen=True, slots=True)
class LabelRow:
    """One figure of the panel; `text` is null while an unknown could move a printed digit.

    `level` is how far it is indented: 1 inside the row above it, 2 inside that. `spread` is how
    far one lot of the goods may lie from the tables; null unless it is asked for.
    """

    key: str
    label: str
    text: str | None
    low: float
    high: float
    unit: str
    percent: float | None
    open_goods: tuple[str, ...]
    level: int = 0
    is_mandatory: bool = True
    spread: LabelSpread | None = None


@dataclass(frozen=True, slots=True)
class LabelPanel:
    """One column of a panel on one basis: `serving`, `container`, `hundred` or `portion`.

    `head` stands above the column; `is_required` is false for one that is added freely. In the US
    `servings` is the line of the number of servings and `serving_size` what stands behind
    “Serving size”; in the EU both are empty.
    """

    basis: str
    basis_g: float
    is_open: bool
    rows: tuple[LabelRow, ...]
    kind: str = "hundred"
    head: str = "Per 100 g"
    is_required: bool = True
    servings: str = ""
    serving_size: str = ""


@dataclass(frozen=True, slots=True)
class LabelSlice:
    """Carbohydrate of one of `count` slices, cut by hand, without its fibre and with it."""

    count: int
    slice_g: Interval
    without_fibre_g: Interval
    with_fibre_g: Interval
    text: str


@dataclass(frozen=True, slots=True)
class LabelCarbohydrate:
    """Carbohydrate for those who dose by it; `slices` is empty while it is not known.

    `per_100_g` is without fibre in the EU and with it in the US, as `fibre_is_in` says; `caution`
    goes wherever the figures go.
    """

    per_100_g: Interval | None
    fibre_is_in: bool
    slices: tuple[LabelSlice, ...]
    text: str
    caution: str
    status: str


@dataclass(frozen=True, slots=True)
class LabelNutrition:
    """Nutrition of the finished product per 100 g, not rounded; null is not known.

    `panel` is the first column as printed: in the EU per 100 g, in the US per serving (null where
    there is none); `beside` are the columns beside it, in their order; `portion` is the EU's of
    one slice. `notes` stand below it, `intake` beside shares of the reference intake where those
    are printed; `left_out` is told to the person only. In the US carbohydrate holds the fibre and
    energy is by 4, 9, 4, and 7 for alcohol; in the EU it does not, energy is by annex XIV and
    protein is nitrogen x 6.25.
    """

    energy_kj: float | None
    energy_kcal: float | None
    fat_g: float | None
    saturated_g: float | None
    trans_g: float | None
    cholesterol_mg: float | None
    carbohydrate_g: float | None
    sugars_g: float | None
    added_sugars_g: float | None
    fibre_g: float | None
    protein_g: float | None
    sodium_mg: float | None
    salt_g: float | None
    vitamin_d_ug: float | None
    calcium_mg: float | None
    iron_mg: float | None
    potassium_mg: float | None
    panel: LabelPanel | None
    portion: LabelPanel | None
    beside: tuple[LabelPanel, ...] = ()
    notes: tuple[str, ...] = ()
    intake: str = ""
    left_out: tuple[str, ...] = ()
    carbohydrate: LabelCarbohydrate | None = None


@dataclass(frozen=True, slots=True)
class LabelRecord:
    """How the record of one lot stands on the day; without a lot the goods are named."""

    lot: str | None
    ingredient: str
    state: str
    text: str
    of: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class LabelGluten:
    """The gluten gate: whether the sentence may be printed, what is missing, what opens it."""

    claim_allowed: bool
    missing: tuple[str, ...]
    open_on_ingredients: bool
    sentence: str | None
    most_ppm: float | None
    opens: tuple[str, ...]
    records: tuple[LabelRecord, ...]
    notes: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class LabelUnknown:
    """One thing not known: of what, what it closes (label or panel), and what opens it."""

    of: str
    what: str
    closes: str
    opens: str


@dataclass(frozen=True, slots=True)
class LabelDurability:
    """How it is kept and until when; `use_by` is null until the day of making is given.

    `mark` are the words of the date by its kind and market; `deciding` is the part that runs out
    first, empty while that is not known.
    """

    text: str
    days: int | None
    cold_most_c: float
    use_by: str | None
    reason: str
    mark: str
    deciding: str = ""


@dataclass(frozen=True, slots=True)
class LabelOf:
    """All that is to be said of one thing; `blocked_by` is what keeps its label from print.

    `maker` is the name and address as printed, empty while they are not known; `before_sale` is
    the text for a buyer who orders from afar. `parts` are the lists of its parts where each has its
    own; `beside` is what goes with the list and is not printed on it.
    """

    name: str
    title: str
    count: int
    ingredients: str
    contains: tuple[str, ...]
    may_contain: tuple[str, ...]
    items: tuple[Item, ...]
    nutrition: LabelNutrition | None
    gluten: LabelGluten
    unknown: tuple[str, ...]
    open_items: tuple[LabelUnknown, ...]
    durability: LabelDurability
    sentences: tuple[str, ...]
    finished_g: float | None
    finished_status: str
    blocked_by: tuple[str, ...]
    maker: str = ""
    before_sale: str = ""
    parts: tuple[PartList, ...] = ()
    beside: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class LabelFile:
    """A label sheet that was written."""

    kind: str
    format: str
    of: str
    path: str


@dataclass(frozen=True, slots=True)
class LabelResult:
    """What the buyer must be told of a formula, a torte or an order, in the words of a market.

    With several things the texts stand together, the gate is that of all, and each has its own
    place in `labels`.
    """

    name: str
    kind: str
    market: str
    on: str
    ingredients: str
    contains: tuple[str, ...]
    may_contain: tuple[str, ...]
    nutrition: LabelNutrition | None
    gluten: LabelGluten
    unknown: tuple[str, ...]
    can_print: bool
    labels: tuple[LabelOf, ...]
    pointers: tuple[str, ...]
    files: tuple[LabelFile, ...]
