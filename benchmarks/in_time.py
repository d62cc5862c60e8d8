"""A torte's water over 72 hours, beside a general solver and beside what is asked for."""

import tempfile
from pathlib import Path
from typing import TYPE_CHECKING

from benchmarks.measure import Row, call_s

if TYPE_CHECKING:
    from krume.usecases.torte.build import TorteMade

ASKED_MS = 50.0
S_PER_H = 3600.0


def rows() -> list[Row]:
    """T1 and the tart over three days, and the same cells by a general solver."""
    with tempfile.TemporaryDirectory() as folder:
        made = {name: demo_torte(Path(folder) / "book", name) for name in ("T1", "TART")}
        own = {name: moisture_s(each) for name, each in made.items()}
        peer = general_s(made["T1"])
    limit = "what is asked for"
    return [
        Row("water of T1 over 72 h", own["T1"] * 1e3, ASKED_MS, "ms", limit, 1.0),
        Row("water of a tart over 72 h", own["TART"] * 1e3, ASKED_MS, "ms", limit, 1.0),
        Row("water of T1 over 72 h", own["T1"] * 1e3, peer * 1e3, "ms", "scipy's BDF", 1.0),
    ]


def demo_torte(book: Path, name: str) -> "TorteMade":
    """A torte of the demo studio, built."""
    from krume.usecases import Asked, load_demo
    from krume.usecases.torte.build import torte_of

    asked = Asked(book=book)
    load_demo(asked)
    return torte_of(name, asked)


def moisture_s(made: "TorteMade", *, times: int = 15) -> float:
    """Median time of all that is said of a torte's water, its pictures too."""
    from krume.usecases.torte.moisture import moisture_of

    return call_s(lambda _: moisture_of(made), times=times)


def general_s(made: "TorteMade") -> float:
    """The three paces of the same column by scipy's backward differences, one after another."""
    import numpy as np
    from scipy.integrate import solve_ivp

    from krume.keep.moisture.draws import Draw, cells_of, film_at
    from krume.keep.moisture.slabs import column_of
    from krume.usecases.torte.moisture import holdings_of

    holds, families = holdings_of(made)
    column = column_of(made.torte, holds, families, soak_mm=6.0)  # type: ignore[arg-type]
    if column is None:
        raise ValueError(made.problems)

    def solved(pace: int) -> None:
        cells = cells_of([Draw(column.slabs, pace, 5.0, *film_at(pace))])
        line, curve = cells.line, cells.line.holds

        def flows(_: float, y: np.ndarray) -> np.ndarray:
            at = curve.state(y)
            resists = line.wide_m**2 / (2 * line.diffusivity_m2_s)
            resists = resists * at.activity_slope / at.water_slope
            flow = np.diff(at.activity) / (resists[:-1] + resists[1:])
            gained: np.ndarray = np.diff(np.concatenate([[0.0], flow, [0.0]])) / at.water_slope
            return gained

        near = np.eye(len(cells.start)) + np.eye(len(cells.start), k=1)
        solve_ivp(
            flows, (0.0, 72 * S_PER_H), cells.start, method="BDF", rtol=1e-4, atol=1e-6,
            jac_sparsity=near + near.T,
        )  # fmt: skip

    def all_paces(_: int) -> None:
        for pace in range(3):
            solved(pace)

    return call_s(all_paces, times=3)
