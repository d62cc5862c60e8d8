"""What makes a cream stand: gelatine, agar, pectin, by leaf and by grams; how much alcohol sets."""

from dataclasses import dataclass
from functools import cache

from krume.base import OutOfRangeError
from krume.evidence import column, load, optional
from krume.properties.gel import bloom_swap

_LEAF_COLUMNS = (
    column("key", "key"),
    column("label"),
    column("strength_bloom", "number"),
    column("leaf_g", "number"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)
_SETTING_COLUMNS = (
    column("key", "key"),
    column("label"),
    column("words"),
    column("low_g_kg", "number"),
    column("high_g_kg", "number"),
    optional("bloom_min", "number"),
    optional("water_ratio", "number"),
    optional("melt_low_c", "number"),
    optional("melt_high_c", "number"),
    optional("sets_c", "number"),
    optional("gel_melts_c", "number"),
    optional("boil_min", "number"),
    optional("alcohol_pct", "number"),
    column("sugar"),
    column("acid"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)


@dataclass(frozen=True, slots=True)
class Leaf:
    """A grade of leaf gelatine: its bloom number and what one leaf weighs."""

    key: str
    label: str
    strength_bloom: float
    leaf_g: float
    status: str


@dataclass(frozen=True, slots=True)
class LeafSwap:
    """A powder in leaves of one grade, by the two rules in use: grams, and leaves not rounded."""

    leaf: Leaf
    by_root_g: float
    by_root_count: float
    by_ratio_g: float
    by_ratio_count: float


@dataclass(frozen=True, slots=True)
class Setting:
    """A thing that sets a cream: usual grams a kilogram, water, temperatures; None is no rule.

    `alcohol_pct` is the most alcohol of what is liquid, by mass, that still sets.
    """

    key: str
    label: str
    words: tuple[str, ...]
    low_g_kg: float
    high_g_kg: float
    bloom_min: float | None
    water_ratio: float | None
    melt_low_c: float | None
    melt_high_c: float | None
    sets_c: float | None
    gel_melts_c: float | None
    boil_min: float | None
    alcohol_pct: float | None
    sugar: str
    acid: str
    status: str
    note: str


@cache
def leaves() -> tuple[Leaf, ...]:
    """Grades of leaf gelatine, the weakest first."""
    return tuple(
        Leaf(
            key=row.text("key"),
            label=row.text("label"),
            strength_bloom=row.number_of("strength_bloom"),
            leaf_g=row.number_of("leaf_g"),
            status=row.text("status"),
        )
        for row in load("leaves.csv", _LEAF_COLUMNS)
    )


@cache
def settings() -> tuple[Setting, ...]:
    """What sets a cream, each with its rules.

    >>> [(each.key, each.water_ratio) for each in settings()]
    [('gelatine', 5.0), ('agar', None), ('pectin', None)]
    """
    return tuple(
        Setting(
            key=row.text("key"),
            label=row.text("label"),
            words=tuple(row.text("words").split(";")),
            low_g_kg=row.number_of("low_g_kg"),
            high_g_kg=row.number_of("high_g_kg"),
            bloom_min=row.maybe("bloom_min"),
            water_ratio=row.maybe("water_ratio"),
            melt_low_c=row.maybe("melt_low_c"),
            melt_high_c=row.maybe("melt_high_c"),
            sets_c=row.maybe("sets_c"),
            gel_melts_c=row.maybe("gel_melts_c"),
            boil_min=row.maybe("boil_min"),
            alcohol_pct=row.maybe("alcohol_pct"),
            sugar=row.text("sugar"),
            acid=row.text("acid"),
            status=row.text("status"),
            note=row.text("note"),
        )
        for row in load("setting.csv", _SETTING_COLUMNS)
    )


def setting(key: str) -> Setting:
    """The rules of one thing that sets."""
    return next(each for each in settings() if each.key == key)


def in_leaves(mass_g: float, *, from_bloom: float) -> tuple[LeafSwap, ...]:
    """Gelatine of a bloom number in leaves of each grade, by the square-root and the ratio rule.

    Raises OutOfRangeError where the mass or the bloom number is none.

    >>> swap = in_leaves(8.0, from_bloom=200.0)[1]
    >>> swap.leaf.key, round(swap.by_root_count, 2), swap.by_ratio_count
    ('silver', 3.58, 4.0)
    """
    found = []
    for leaf in leaves():
        swap = bloom_swap(mass_g, from_bloom=from_bloom, to_bloom=leaf.strength_bloom)
        root, ratio = swap.by_root_g, swap.by_ratio_g
        found.append(LeafSwap(leaf, root, root / leaf.leaf_g, ratio, ratio / leaf.leaf_g))
    return tuple(found)


def alcohol_pct(alcohol_g: float, *, water_g: float) -> float:
    """Alcohol of what is liquid, by mass [%]; nothing liquid is none.

    >>> alcohol_pct(30.0, water_g=70.0), alcohol_pct(0.0, water_g=0.0)
    (30.0, 0.0)
    """
    whole = alcohol_g + water_g
    return 100 * alcohol_g / whole if whole > 0 else 0.0


def most_spirit_g(
    *, limit_pct: float, water_g: float, spirit_alcohol_pct: float, spirit_water_pct: float
) -> float:
    """Most of a spirit beside so much water that still sets.

    x = L W / (a - L (a + w)), with the shares as fractions

    Parameters
    ----------
    limit_pct : L, most alcohol of alcohol and water [%]
    water_g : W, water beside the spirit [g]
    spirit_alcohol_pct : a, alcohol of the spirit by mass [%]
    spirit_water_pct : w, water of the spirit [%]

    Returns
    -------
    grams of spirit; infinite where the spirit alone is below the limit

    Raises
    ------
    OutOfRangeError : a share is not 0 to 100, or the water is negative

    Source
    ------
    `mathematics`

    Examples
    --------
    >>> round(most_spirit_g(
    ...     limit_pct=10.0, water_g=100.0, spirit_alcohol_pct=33.4, spirit_water_pct=66.6), 1)
    42.7
    """
    shares = (limit_pct, spirit_alcohol_pct, spirit_water_pct)
    if water_g < 0 or not all(0 <= share <= 100 for share in shares):
        raise OutOfRangeError(
            "A share is 0 to 100 %, and water 0 g or more.",
            field="limit_pct", got=f"{limit_pct:g}", want="0 to 100",
        )  # fmt: skip
    limit, a, w = (share / 100 for share in shares)
    over = a - limit * (a + w)
    return float("inf") if over <= 0 else limit * water_g / over
