"""Families and their bands: the usual range of each figure, which says "unusual", never "wrong"."""

from dataclasses import dataclass
from functools import cache

from krume.base import NotFoundError
from krume.evidence import Row, column, load, optional

_FAMILY_COLUMNS = (
    column("key", "key"),
    column("kind", "one of", "batter", "cream"),
    column("label"),
    column("basis"),
    optional("words"),
    optional("sg_low", "number"),
    optional("sg_high", "number"),
    optional("sg_plan", "number"),
    optional("sg_plan_status"),
    optional("core_low_c", "number"),
    optional("core_high_c", "number"),
    optional("whites_min", "number"),
    optional("batter_min", "number"),
    column("cooling"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)
_ROLLED_THIN = "tart"
_BAND_COLUMNS = (
    column("key", "key"),
    column("family", "key"),
    column("quantity"),
    column("label"),
    column("low", "number"),
    column("high", "number"),
    optional("warn_high", "number"),
    column("unit", "unit"),
    column("basis"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)


@dataclass(frozen=True, slots=True)
class Band:
    """The usual range of one figure of a family; above `warn_high` something is known to go wrong.

    `quantity` is the figure's key in a balance, `label` its word in a sentence.
    """

    key: str
    family: str
    quantity: str
    label: str
    low: float
    high: float
    warn_high: float | None
    unit: str
    basis: str
    status: str
    source: str
    note: str = ""


@dataclass(frozen=True, slots=True)
class Family:
    """What a family of batters or creams has in common.

    `basis` is what 100 is. `sg_plan` is the specific gravity a plan uses until a cup has been
    weighed (of a tart base its density); core and clocks are None where the family has no such
    rule; `words` are the names people give it.
    """

    key: str
    kind: str
    label: str
    basis: str
    words: tuple[str, ...]
    sg_low: float | None
    sg_high: float | None
    sg_plan: float | None
    sg_plan_status: str
    core_low_c: float | None
    core_high_c: float | None
    whites_min: float | None
    batter_min: float | None
    cooling: str
    status: str
    source: str
    note: str

    @property
    def has_batter_in_tin(self) -> bool:
        """Whether it is poured into a tin and baked: no cream, and no dough rolled thin."""
        return self.kind == "batter" and self.key != _ROLLED_THIN


@cache
def _families() -> dict[str, Family]:
    return {row.text("key"): _family(row) for row in load("families.csv", _FAMILY_COLUMNS)}


def _family(row: Row) -> Family:
    return Family(
        key=row.text("key"),
        kind=row.text("kind"),
        label=row.text("label"),
        basis=row.text("basis"),
        words=tuple(word.strip() for word in row.text("words").split(";") if word.strip()),
        sg_low=row.maybe("sg_low"),
        sg_high=row.maybe("sg_high"),
        sg_plan=row.maybe("sg_plan"),
        sg_plan_status=row.text("sg_plan_status"),
        core_low_c=row.maybe("core_low_c"),
        core_high_c=row.maybe("core_high_c"),
        whites_min=row.maybe("whites_min"),
        batter_min=row.maybe("batter_min"),
        cooling=row.text("cooling"),
        status=row.text("status"),
        source=row.text("source"),
        note=row.text("note"),
    )


@cache
def _bands() -> dict[str, tuple[Band, ...]]:
    grouped: dict[str, list[Band]] = {key: [] for key in _families()}
    for row in load("bands.csv", _BAND_COLUMNS):
        grouped[row.text("family")].append(_band(row))
    return {key: tuple(found) for key, found in grouped.items()}


def _band(row: Row) -> Band:
    return Band(
        key=row.text("key"),
        family=row.text("family"),
        quantity=row.text("quantity"),
        label=row.text("label"),
        low=row.number_of("low"),
        high=row.number_of("high"),
        warn_high=row.maybe("warn_high"),
        unit=row.text("unit"),
        basis=row.text("basis"),
        status=row.text("status"),
        source=row.text("source"),
        note=row.text("note"),
    )


def families() -> tuple[Family, ...]:
    """All families, batters first, in the order of the table."""
    return tuple(_families().values())


def family(key: str) -> Family:
    """Family of a key; NotFoundError when there is none."""
    found = _families().get(key)
    if found is None:
        known = ", ".join(_families())
        message = f"'{key}' is no family. Type one of: {known}."
        raise NotFoundError(message, field="family", got=key, want=f"one of {known}")
    return found


def bands(key: str) -> tuple[Band, ...]:
    """Bands of a family, in the order of the table."""
    return _bands()[family(key).key]


def band(key: str, quantity: str) -> Band | None:
    """Band of one figure of a family; None where the trade has no usual range for it."""
    return next((found for found in bands(key) if found.quantity == quantity), None)
