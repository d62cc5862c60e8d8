"""The answer of `fill`: volumes, grams of each line, cartons and what sets it."""

from dataclasses import dataclass

from krume.build import GelUse


@dataclass(frozen=True, slots=True)
class FillLine:
    """One line of the cream, as much as the ring wants of it; None is not known."""

    name: str
    line: int
    mass_g: float | None


@dataclass(frozen=True, slots=True)
class Carton:
    """What is bought of milk or cream: whole cartons, and what is left in the last one."""

    name: str
    needed_ml: float
    carton_ml: float
    cartons: int
    left_ml: float
    left_g: float


@dataclass(frozen=True, slots=True)
class FillResult:
    """How much of a cream fills a ring beside the discs in it; None is not known.

    `needed_g` goes into the ring, `made_g` is that and what stays in bowl and bag; `factor` is
    what is made over one batch.
    """

    name: str
    title: str
    ring: str
    high_mm: float | None
    ring_ml: float | None
    discs_ml: float | None
    cream_ml: float | None
    cream_l: float | None
    density_g_ml: float | None
    needed_g: float | None
    waste_g: float | None
    made_g: float | None
    batch_g: float | None
    factor: float | None
    lines: tuple[FillLine, ...]
    cartons: tuple[Carton, ...]
    gels: tuple[GelUse, ...]
    status: str

    @classmethod
    def nothing(cls, name: str, title: str, ring: str) -> "FillResult":
        """An answer in which nothing could be worked out yet."""
        blank = (None,) * 11
        return cls(name, title, ring, *blank, (), (), (), "unknown")
