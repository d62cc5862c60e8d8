"""What choosing a blend answers: grams, how near it comes, and what goes with it."""

from dataclasses import dataclass
from decimal import Decimal

Profile = dict[str, float | None]
"""What 100 g hold, in g, by property; None is not known."""


@dataclass(frozen=True, slots=True)
class BlendLine:
    """One flour of a blend: its grams, its share, and its grams in the formula it is for."""

    ingredient: str
    name: str
    mass_g: float
    share_pct: float
    was_g: float | None = None


@dataclass(frozen=True, slots=True)
class BlendLimitTold:
    """One limit as it was typed: its ends in percent, in grams, or in the unit it names.

    `members` are the flours it is on; `low` and `high` are ends on anything else, in `unit`.
    """

    read: str
    kind: str
    name: str
    members: tuple[str, ...]
    low_pct: float | None
    high_pct: float | None
    low_g: float | None
    high_g: float | None
    low: float | None
    high: float | None
    unit: str


@dataclass(frozen=True, slots=True)
class BlendSwap:
    """A flour put in one for one for what is missing, the limits it breaks, allergens it brings."""

    ingredient: str
    name: str
    parts: tuple[BlendLine, ...]
    got: Profile
    distance: float
    breaks: tuple[str, ...]
    gained: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class BlendOther:
    """A near blend of other flours; `without` and `also` tell how it differs from the nearest.

    `gained` are allergens it has beyond the blend that is matched.
    """

    parts: tuple[BlendLine, ...]
    got: Profile
    distance: float
    proven: bool
    without: tuple[str, ...]
    also: tuple[str, ...]
    gained: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class BlendRecord:
    """How the gluten record of a flour at hand stands on the day; `lot` None is no lot of it."""

    ingredient: str
    name: str
    lot: str | None
    state: str
    text: str
    is_used: bool


@dataclass(frozen=True, slots=True)
class BlendOpen:
    """The nearest blend whose flours all have a record in force, and what to type for it."""

    without: tuple[str, ...]
    parts: tuple[BlendLine, ...]
    got: Profile
    distance: float
    proven: bool
    line: str


@dataclass(frozen=True, slots=True)
class BlendGluten:
    """A flour at hand that is itself a gluten grain; no record makes it anything else."""

    ingredient: str
    name: str
    grain: str
    is_used: bool
    text: str


@dataclass(frozen=True, slots=True)
class BlendAllergens:
    """Allergens of the blend by the words of a market, and what it gains or loses."""

    market: str
    contains: tuple[str, ...]
    gained: tuple[str, ...]
    lost: tuple[str, ...]
    may_contain: tuple[str, ...]
    unknown: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class BlendPrice:
    """What a kilogram costs, and what the blend of the formula costs; None is not known."""

    per_kg: Decimal | None
    was_per_kg: Decimal | None
    currency: str
    missing: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class BlendFinding:
    """A share outside the usual range of the family, and the limit that would bring it inside."""

    code: str
    value: float
    low: float
    high: float
    status: str
    text: str
    limit: str


@dataclass(frozen=True, slots=True)
class BlendMixStep:
    """One addition while a premix is made."""

    name: str
    add_g: float
    in_bowl_g: float


@dataclass(frozen=True, slots=True)
class BlendPremix:
    """A premix for many cakes: what to weigh, the mixing order, the bowl, one cake's portion."""

    cakes: int
    lines: tuple[BlendLine, ...]
    too_fine: tuple[str, ...]
    total_g: float
    portion_g: float
    dust_pct: float
    sieve_passes: int
    bowl_ml: float
    order: tuple[BlendMixStep, ...]


@dataclass(frozen=True, slots=True)
class BlendMatch:
    """The blend that is matched: whose it is, its grams, which of its flours are not at hand."""

    name: str
    family: str | None
    parts: tuple[BlendLine, ...]
    total_g: float
    missing: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class BlendSmall:
    """The smallest bake that tells something: the blend that one egg takes."""

    egg_g: float
    blend_g: float
    text: str


@dataclass(frozen=True, slots=True)
class BlendFile:
    """A file that was written."""

    kind: str
    format: str
    path: str


@dataclass(frozen=True, slots=True)
class BlendResult:
    """The nearest blend; empty of parts where none exists or something is asked.

    `composition` has each flour at hand, left-out ones too, by its key; `distance` is the root of
    the summed squares of `got` less `target`; `bound` is what no blend within the limits is below.
    `gluten_grains` are flours at hand that hold gluten by nature; `text` is the formula's text, or
    a text of its own, with the blend in it.
    """

    match: BlendMatch | None
    parts: tuple[BlendLine, ...]
    target: Profile
    got: Profile
    composition: dict[str, Profile]
    names: dict[str, str]
    distance: float | None
    proven: bool
    bound: float | None
    limits: tuple[BlendLimitTold, ...]
    without: tuple[str, ...]
    total_g: float | None
    step_g: float
    gluten_grains: tuple[BlendGluten, ...] = ()
    one_for_one: tuple[BlendSwap, ...] = ()
    alternatives: tuple[BlendOther, ...] = ()
    open_blend: BlendOpen | None = None
    allergens: BlendAllergens | None = None
    evidence: tuple[BlendRecord, ...] = ()
    price: BlendPrice | None = None
    findings: tuple[BlendFinding, ...] = ()
    small: BlendSmall | None = None
    premix: BlendPremix | None = None
    text: str | None = None
    written: str | None = None
    files: tuple[BlendFile, ...] = ()
