"""How firm a cream is once it has set: a range of its yield stress, cold and in a warm room."""

from dataclasses import dataclass, replace
from functools import cache

from krume.build.standing.figures import value
from krume.evidence import Row, column, load, optional

_COLUMNS = (
    column("key", "key"),
    column("cold_low_pa", "number"),
    column("cold_high_pa", "number"),
    column("warm_low_pa", "number"),
    column("warm_high_pa", "number"),
    optional("gelatine_g_kg", "number"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)
_UNSET = {"set-cream": "whipped"}
"""What a cream is without its gelatine."""


@dataclass(frozen=True, slots=True)
class Firmness:
    """Yield stress of a set cream in shear [Pa], from the softest bowl to the firmest.

    `gelatine_g_kg` is the gelatine the range is for, None where gelatine does not decide.
    """

    key: str
    cold_low_pa: float
    cold_high_pa: float
    warm_low_pa: float
    warm_high_pa: float
    gelatine_g_kg: float | None
    status: str
    source: str
    note: str

    def times(self, factor: float) -> "Firmness":
        """The range scaled."""
        return replace(
            self,
            cold_low_pa=self.cold_low_pa * factor,
            cold_high_pa=self.cold_high_pa * factor,
            warm_low_pa=self.warm_low_pa * factor,
            warm_high_pa=self.warm_high_pa * factor,
        )


def firmness(family: str | None, *, gelatine_g_kg: float | None = None) -> Firmness | None:
    """Range of a family of creams, at its gelatine; None where nothing is known of it.

    A family that gelatine holds up is not known until its gelatine is; a set cream without any is
    whipped cream.

    >>> firmness("set-cream", gelatine_g_kg=9.0).cold_low_pa
    100.0
    >>> firmness("set-cream") is None, firmness("sponge") is None
    (True, True)
    """
    row = None if family is None else _rows().get(family)
    if row is None or row.gelatine_g_kg is None:
        return row
    if gelatine_g_kg is None:
        return None
    if gelatine_g_kg == 0:
        return _rows().get(_UNSET.get(row.key, ""))
    return row.times((gelatine_g_kg / row.gelatine_g_kg) ** value("gel-power"))


@cache
def _rows() -> dict[str, Firmness]:
    return {row.text("key"): _firmness(row) for row in load("yielding.csv", _COLUMNS)}


def _firmness(row: Row) -> Firmness:
    return Firmness(
        key=row.text("key"),
        cold_low_pa=row.number_of("cold_low_pa"),
        cold_high_pa=row.number_of("cold_high_pa"),
        warm_low_pa=row.number_of("warm_low_pa"),
        warm_high_pa=row.number_of("warm_high_pa"),
        gelatine_g_kg=row.maybe("gelatine_g_kg"),
        status=row.text("status"),
        source=row.text("source"),
        note=row.text("note"),
    )
