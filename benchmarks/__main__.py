"""Print one table of ratios, every number of it measured in this run."""

import platform
from collections.abc import Callable

import benchmarks.baking as baking
import benchmarks.blending as blending
import benchmarks.in_time as in_time
import benchmarks.labelling as labelling
import benchmarks.loading as loading
import benchmarks.matters as matters
import benchmarks.own_oven as own_oven
import benchmarks.pages as pages
import benchmarks.paper as paper
import benchmarks.reading as reading
import benchmarks.rounding as rounding
import benchmarks.slipping as slipping
import benchmarks.startup as startup
import benchmarks.torte_plans as torte_plans
import benchmarks.tracing as tracing
import benchmarks.varying as varying
from benchmarks.measure import Row

PARTS: tuple[Callable[[], list[Row]], ...] = (
    startup.rows,
    reading.rows,
    paper.rows,
    rounding.rows,
    matters.rows,
    baking.rows,
    varying.rows,
    slipping.rows,
    blending.rows,
    loading.rows,
    torte_plans.rows,
    in_time.rows,
    labelling.rows,
    own_oven.rows,
    tracing.rows,
    pages.rows,
)
HEAD = ("what", "krume", "peer", "unit", "ratio", "want", "peer's name")


def line(row: Row) -> tuple[str, ...]:
    """A row as texts."""
    want = "" if row.want_at_most is None else f"<= {row.want_at_most:g}"
    if row.want_at_most is not None and row.ratio > row.want_at_most:
        want += " MISSED"
    return (
        row.what,
        f"{row.own:.4g}",
        f"{row.peer:.4g}",
        row.unit,
        f"{row.ratio:.2f}",
        want,
        row.peer_name,
    )


def table(rows: list[Row]) -> str:
    """All rows in columns."""
    lines = [HEAD, *map(line, rows)]
    widths = [max(len(cells[at]) for cells in lines) for at in range(len(HEAD))]
    return "\n".join(
        "  ".join(cell.ljust(width) for cell, width in zip(cells, widths, strict=True)).rstrip()
        for cells in lines
    )


if __name__ == "__main__":
    machine = f"Python {platform.python_version()}, {platform.machine()}"
    print(f"{machine}; processor time, wall time for whole programs; read the ratio.")
    print(table([row for part in PARTS for row in part()]))
