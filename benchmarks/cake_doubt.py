"""How far one cake's minutes lie from another's for its batter and its tin alone.

These doubts are each cake's own: they stay when an oven was learnt from other cakes. What is common
to all cakes of an oven is in its heat, as far as it moves every cake alike.
"""

import math
import sys
from dataclasses import fields, replace
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from benchmarks.coverage import Asked

OWN = ("density", "mass", "start_k", "core_shift", "core_margin", "tin")
TEMPERATURE = ("oven_k",)
CRUST = ("wet_skin", "crust_conduction", "crust_diffusion", "oven_vapour")
FOAM = ("vapour_conduction", "gas_retention")
HEAT = ("heat",)


def scatter(asked: "Asked", names: tuple[str, ...], *, count: int = 256) -> float:
    """Scatter of ln minutes to the core where only these are drawn."""
    import numpy as np

    from krume.bake import drawn, nominal, simulate_many

    draws = drawn(asked.batter, asked.tin, asked.oven, count=count)
    one = nominal(asked.batter, asked.oven)
    known = {f.name: np.repeat(getattr(one, f.name), count + 1) for f in fields(one)}
    only = replace(draws, **{name: row for name, row in known.items() if name not in names})
    minutes = simulate_many(asked.batter, asked.tin, asked.oven, only).rule_minutes[1:, 0]
    return float(np.log(minutes).std())


def own_scatter(cakes: "dict[str, Asked]", *, count: int = 256) -> float:
    """Root mean square over cakes of what their batter and tin scatter: row `cake-parameters`."""
    squares = [scatter(each, OWN, count=count) ** 2 for each in cakes.values()]
    return math.sqrt(sum(squares) / len(squares))


def main() -> None:
    """Print each cake's own scatter, and the common ones over that of the heat."""
    from benchmarks.next_cake import cakes

    for name, asked in cakes().items():
        heat = scatter(asked, HEAT)
        parts = (scatter(asked, names) / heat for names in (TEMPERATURE, CRUST, FOAM))
        temperature, crust, foam = (f"{part:.2f}" for part in parts)
        sys.stdout.write(
            f"{name}: own {scatter(asked, OWN):.3f}, heat {heat:.3f}; over that of the heat: "
            f"temperature {temperature}, crust {crust}, foam {foam}\n"
        )
    sys.stdout.write(f"cake-parameters: {own_scatter(cakes()):.3f}\n")


if __name__ == "__main__":
    main()
