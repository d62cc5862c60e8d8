"""Write the page of the bake model's numerics, every number of it computed in this run.

`python -m benchmarks.numerics > docs/models/bake-numerics.md`
"""

import warnings

from benchmarks import bake_checks as checks
from benchmarks.__main__ import table
from benchmarks.bake_checks import as_table
from benchmarks.baking import rows as speed_rows
from benchmarks.heat_peers import Task, elements_centre_c, volumes_centre_c

HEAD = (
    "# Bake: the numerics\n"
    "\n"
    "What the bake model (`bake.md`) is held against where there is an exact answer, and how "
    "its own answer moves with its cells and steps. Every number is computed by `python -m "
    "benchmarks.numerics`; tests compute the tables again and compare them with this page, "
    "all but the peers and the times, which need two packages more and are of one run on one "
    "machine."
)

CELLS = (
    "## Cells and steps\n"
    "\n"
    "The batter is 6 rings and 8 rows, finer towards its faces. Each step takes everything "
    "that is not a straight line once, at mid-step; then rings and rows are solved in turn, "
    "slightly backward (θ = 0.55), all draws and lines in one call. The next step is as long "
    "as will warm no cell by more than about 5 K, from 2 to 75 s. What stands between oven "
    "and batter (the tin's wall; round it a strip, water, a tray, a stone) has its own "
    "temperature, taken out of the step exactly, so nothing is lost between them. Draws that "
    "are done are let go when a quarter of those still in is."
)

WEAK = (
    "## Weak\n"
    "\n"
    "- The cells in use are up to 1.7 % early on dense deep cakes, half of it the cells', "
    "half the steps'. That is about a tenth of the doubt.\n"
    "- In time the whole model is of the first order: θ is not one half, because a light tin "
    "would swing, and skin, crust and boiling switch. The plain body, at θ = ½, is of the "
    "second.\n"
    "- A loaf whose sides stand as 1.6 to 1.9 to 1 is up to 3 % late.\n"
    "- Of what stands round the tin only the books are checked. No bake was compared; every "
    "figure is a row of `around.csv` with its doubt, and most are assumed."
)


def page() -> str:
    """The whole page."""
    times = speed()  # before the other packages fill the memory
    parts = [HEAD, *checked(), peers(), times, WEAK]
    return "\n\n".join(parts) + "\n"


def checked() -> list[str]:
    """The parts that tests compute again."""
    return [
        CELLS,
        "## Against closed forms\n\nThe series of slab and cylinder against the same series from "
        "another program's roots: largest difference over Fourier numbers from 0.0001 to 10.",
        as_table(("Biot", "slab", "cylinder"), checks.series_rows()),
        "Figures that stand in print or were worked out apart:",
        as_table(("what", "known", "here", "relative"), checks.property_rows()),
        "A plain short cylinder (10 cm radius, 5 cm high, 40 minutes): centre less the exact one "
        f"({checks.exact_centre_c(checks.BODY, checks.TIME_S):.5f} °C), and the order between "
        "grids.",
        as_table(("rings × rows", "error, K", "order"), checks.grid_rows()),
        "The same on 24 × 28 cells with longer steps, less very short ones:",
        as_table(("step, s", "error, K", "order"), checks.step_rows()),
        "Flat and tall bodies (radius × height in cm) under films of 0.5, 18 and 200 W/m²K, on "
        "24 × 28 cells: error of the centre in K.",
        as_table(("body", "weak", "usual", "strong"), checks.shape_rows()),
        "Rectangles (cm): minutes until a plain body's middle is baked by the exact product of "
        "three slabs, and how far a cylinder and the body in use are off. "
        "`docs/decisions/0024-long-tins-bend.md` says why.",
        as_table(("sides", "exact, min", "cylinder", "in use", "bend"), checks.long_rows()),
        as_table(("limit", "should be", "is"), checks.limit_rows()),
        "## Heat and water\n\nThe largest part of a step's heat or water that is not accounted "
        "for, over sixty steps of a sponge, a butter cake and a chiffon in its tube: heat into the "
        "cells, heat of tin and what is round it, water.",
        as_table(("round the tin", "cells", "tin", "water"), checks.closure_rows()),
        "## Finer cells and steps\n\nMinutes of the eight cases; each column names rings × rows "
        "and the kelvins a step may warm a cell by.",
        as_table(
            ("case", *(f"{r} × {z}, {k:g}" for r, z, k in checks.FINE), "in use less finest"),
            checks.case_rows(),
        ),
    ]


def peers() -> str:
    """The plain body by two general packages, on the same cells and steps."""
    warnings.simplefilter("ignore")
    exact, found = checks.exact_centre_c(checks.BODY, checks.TIME_S), []
    for rings, rows in ((12, 14), (24, 28)):
        task = Task(checks.BODY, rings, rows, checks.TIME_S, 240)
        each = (
            checks.centre_c(checks.BODY, rings, rows, 240),
            elements_centre_c(task),
            volumes_centre_c(task),
        )
        found.append([f"{rings} × {rows}", *(f"{got - exact:+.3f}" for got in each)])
    head = ("rings × rows", "here", "scikit-fem", "FiPy")
    said = "## Other programs\n\nThe plain short cylinder in 240 steps: centre less the exact, K."
    return f"{said}\n\n{as_table(head, found)}"


def speed() -> str:
    """Times of this run; only the ratios mean anything elsewhere."""
    said = (
        "## Times\n\nProcessor time in one run on one machine that had other work to do; read the "
        "ratios. The packages solve heat alone with our coefficients, the bake all the rest too."
    )
    return f"{said}\n\n```\n{table(speed_rows())}\n```"


if __name__ == "__main__":
    print(page(), end="")
