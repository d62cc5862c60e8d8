"""The table of published bakes by hand: what was stated, what the model says, and the place."""

import sys
from itertools import groupby
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from krume.bake import PublishedBake

HEAD = (
    "| hand | how | bakes | stated, min | model's likeliest, min | place | ln heat |\n"
    "|---|---|---|---|---|---|---|"
)
DRAWS = 64


def _span(numbers: list[float], digits: int) -> str:
    low, high = (f"{each:.{digits}f}" for each in (min(numbers), max(numbers)))
    return low if low == high else f"{low} to {high}"


def row(bakes: "list[PublishedBake]") -> str:
    """One hand's line of the table."""
    from krume.bake import simulate
    from krume.bake.published import ln_heat, place

    likely = [simulate(each.batter, each.tin, each.oven).minutes for each in bakes]
    stated = [bound for each in bakes for bound in (each.low_min, each.high_min)]
    heats = [ln_heat(each) for each in bakes]
    cells = (
        bakes[0].source,
        bakes[0].kind,
        str(len(bakes)),
        _span(stated, 0),
        _span(likely, 0),
        _span([place(each, count=DRAWS) for each in bakes], 2),
        f"{sum(heats) / len(heats):+.2f}",
    )
    return "| " + " | ".join(cells) + " |"


def main() -> None:
    """Print the table, and the pooled heat of hands by how they timed."""
    from krume.bake import heat_evidence, published_bakes

    bakes = published_bakes()
    lines = [HEAD, *(row(list(group)) for _, group in groupby(bakes, lambda each: each.source))]
    round_ones = tuple(each for each in bakes if each.tin.shape != "tube")
    for name, kinds in (
        ("until done", ("timed", "table", "household")),
        ("for a fixed time", ("fixed",)),
        ("all", ("timed", "table", "household", "fixed")),
    ):
        found = heat_evidence(tuple(each for each in round_ones if each.kind in kinds))
        lines.append(
            f"{name}: {len(found.hands)} hands, "
            f"ln heat {found.ln_mean:+.2f} +- {found.ln_mean_error:.2f}, "
            f"spread {found.ln_spread:.2f}, scatter {found.ln_scatter:.2f}"
        )
    sys.stdout.write("\n".join(lines) + "\n")


if __name__ == "__main__":
    main()
