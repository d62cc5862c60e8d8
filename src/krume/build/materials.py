"""What a component looks like in a section, what it is called, and when it can be worked."""

from dataclasses import dataclass
from functools import cache

from krume.evidence import Row, column, load, optional

_MATERIAL_COLUMNS = (
    column("key", "key"),
    column("label"),
    column("tint"),
    optional("dark", "flag"),
    column("status", "status"),
    column("source", "source"),
)
_CREAM_COLUMNS = (
    column("key", "key"),
    column("material", "key"),
    column("word"),
    optional("use_low_c", "number"),
    optional("use_high_c", "number"),
    optional("use_min", "number"),
    optional("set_h", "number"),
    optional("gels", "flag"),
    optional("ahead_days", "number"),
    optional("ahead_how"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)
_PIECE_WORDS = {"layer": "sponge", "sheet": "sheet", "shell": "shell"}


@dataclass(frozen=True, slots=True)
class Material:
    """One mark of a section drawing: its word, its tint, and whether light marks stand on it."""

    key: str
    label: str
    tint: str
    is_dark: bool


@dataclass(frozen=True, slots=True)
class Working:
    """How a family is drawn, called and worked: temperatures, minutes, hours to set.

    None is no such rule. `gels` says that gelatine makes it stand. It may be made so many
    `ahead_days` before the torte is built, `ahead_how` it waits.
    """

    family: str
    material: str
    word: str
    use_low_c: float | None = None
    use_high_c: float | None = None
    use_min: float | None = None
    set_h: float | None = None
    gels: bool = False
    ahead_days: float | None = None
    ahead_how: str = ""
    status: str = "assumed"
    source: str = ""
    note: str = ""


@cache
def materials() -> dict[str, Material]:
    """All materials by their keys, in the order of the table."""
    return {
        row.text("key"): Material(
            row.text("key"), row.text("label"), row.text("tint"), row.flag("dark")
        )
        for row in load("materials.csv", _MATERIAL_COLUMNS)
    }


def working(family: str | None, *, piece: str | None = None, by_area: bool = False) -> Working:
    """How a family is drawn and worked; one that is not known goes by its place in the torte.

    >>> working("jelly").material, working(None, by_area=True).material, working(None).material
    ('jelly', 'syrup', 'cream')
    """
    found = None if family is None else _workings().get(family)
    if found is not None:
        return found
    if piece is not None:
        return Working("", "tart" if piece == "shell" else "sponge", _PIECE_WORDS[piece])
    return Working("", "syrup", "syrup") if by_area else Working("", "cream", "cream")


@cache
def _workings() -> dict[str, Working]:
    return {row.text("key"): _working(row) for row in load("creams.csv", _CREAM_COLUMNS)}


def _working(row: Row) -> Working:
    return Working(
        family=row.text("key"),
        material=row.text("material"),
        word=row.text("word"),
        use_low_c=row.maybe("use_low_c"),
        use_high_c=row.maybe("use_high_c"),
        use_min=row.maybe("use_min"),
        set_h=row.maybe("set_h"),
        gels=row.flag("gels"),
        ahead_days=row.maybe("ahead_days"),
        ahead_how=row.text("ahead_how"),
        status=row.text("status"),
        source=row.text("source"),
        note=row.text("note"),
    )
