"""All ways out of a slip, as a page at the counter asks for them on each touch."""

from typing import TYPE_CHECKING

from benchmarks.measure import Row, call_s
from benchmarks.texts import demo_formulas

if TYPE_CHECKING:
    from krume.design import Formula, Slip

TIMES = 60
_OVER = 1.15


def rows() -> list[Row]:
    """The slowest demo formula, and the exact split alone beside a continuous one by scipy."""
    slowest = max(_formulas(), key=lambda each: ways_s(each, times=10))
    return [
        Row(
            "ways out of a slip",
            ways_s(slowest, times=TIMES) * 1e3,
            weighing_s(slowest, times=TIMES) * 1e3,
            "ms",
            "its weighing order alone",
        ),
        Row(
            "split inside the bands, exact",
            split_s(times=TIMES) * 1e3,
            program_s(times=TIMES) * 1e3,
            "ms",
            "scipy.linprog, worst shift only",
            1.0,
        ),
    ]


def _formulas() -> list["Formula"]:
    from krume.design import read

    return [read(text, eggs_region="eu").value for text in demo_formulas()]


def slip_in(formula: "Formula", number: int) -> "Slip":
    """A slip in the first lines of a formula, each time a little larger."""
    from krume.design import Slip

    masses: list[float | None] = [None] * len(formula.lines)
    masses[0] = formula.lines[0].mass_g
    masses[1] = round((formula.lines[1].mass_g or 0.0) * _OVER, 1) + number % 10 / 10
    return Slip(formula, tuple(masses), density_g_ml=0.48)


def ways_s(formula: "Formula", *, times: int) -> float:
    """Median time of all ways out, each of another slip."""
    from krume.design import rescue

    return call_s(lambda number: rescue(slip_in(formula, number)), times=times)


def weighing_s(formula: "Formula", *, times: int) -> float:
    """Median time of the formula's weighing order."""
    from krume.design import weigh_out

    return call_s(lambda _: weigh_out(formula), times=times)


def _limits() -> tuple[tuple[float, ...], ...]:
    """Rows of coefficients with their most: starch at least 31.5 g, sweet rice at least 5.3 g."""
    return ((-1.0, -1.0, 0.0, -315.0), (0.0, 0.0, -1.0, -53.0))


def split_s(*, times: int) -> float:
    """Median time of the exact split of three lines on a grid of 0.1 g."""
    from krume.design import closest_split
    from krume.design.slip import Limit

    limits = [Limit(row[:-1], row[-1]) for row in _limits()]
    wanted = (300.0, 60.0, 90.0)
    return call_s(
        lambda number: closest_split(wanted, total=390 + number % 5, limits=limits), times=times
    )


def program_s(*, times: int) -> float:
    """Median time of a linear program for the same split: worst distance only, no whole steps."""
    from scipy.optimize import linprog

    def one(number: int) -> object:
        wanted = (300.0, 60.0, 90.0)
        above = [[1.0 * (i == j) for j in range(3)] + [-1.0] for i in range(3)]
        below = [[-1.0 * (i == j) for j in range(3)] + [-1.0] for i in range(3)]
        rows_of = [*above, *below, *([*row[:-1], 0.0] for row in _limits())]
        most = [*wanted, *(-w for w in wanted), *(row[-1] for row in _limits())]
        return linprog(
            [0.0, 0.0, 0.0, 1.0],
            A_ub=rows_of,
            b_ub=most,
            A_eq=[[1.0, 1.0, 1.0, 0.0]],
            b_eq=[390.0 + number % 5],
        )

    return call_s(one, times=times)
