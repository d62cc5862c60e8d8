"""The answer of `label`: what the buyer must be told, what is not known, and what opens it."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class LabelItem:
    """One ingredient as declared: grams at mixing, its share, and the lots in use."""

    name: str
    text: str
    mass_g: float | None
    share_pct: float | None
    quid_pct: float | None
    allergens: tuple[str, ...]
    lots: tuple[str, ...]
    of: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class LabelRow:
    """One figure of the panel; `text` is null while an unknown could move a printed digit."""

    key: str
    label: str
    text: str | None
    low: float
    high: float
    unit: str
    percent: float | None
    open_goods: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class LabelPanel:
    """The panel on one basis."""

    basis: str
    basis_g: float
    is_open: bool
    rows: tuple[LabelRow, ...]


@dataclass(frozen=True, slots=True)
class LabelNutrition:
    """Nutrition of the finished product per 100 g, not rounded; null is not known.

    `panel` is as printed: in the EU per 100 g, in the US per serving (null where there is none);
    `portion` is the EU panel of one slice. In the US carbohydrate holds the fibre and energy is
    by 4, 9, 4; in the EU it does not, energy is by annex XIV and protein is nitrogen x 6.25.
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
    """How it is kept and until when; `use_by` is null until the day of making is given."""

    text: str
    days: int | None
    cold_most_c: float
    use_by: str | None
    reason: str


@dataclass(frozen=True, slots=True)
class LabelOf:
    """All that is to be said of one thing; `blocked_by` is what keeps its label from print."""

    name: str
    title: str
    count: int
    ingredients: str
    contains: tuple[str, ...]
    may_contain: tuple[str, ...]
    items: tuple[LabelItem, ...]
    nutrition: LabelNutrition | None
    gluten: LabelGluten
    unknown: tuple[str, ...]
    open_items: tuple[LabelUnknown, ...]
    durability: LabelDurability
    sentences: tuple[str, ...]
    finished_g: float | None
    finished_status: str
    blocked_by: tuple[str, ...]


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
