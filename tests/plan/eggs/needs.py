"""Needs of the demo studio, as the tests write them."""

from krume.plan import EggNeed

MASSES = {("eu-s", "whole"): 43.0, ("eu-s", "yolk"): 15.0, ("eu-s", "white"): 28.0,
          ("eu-m", "whole"): 51.0, ("eu-m", "yolk"): 17.5, ("eu-m", "white"): 33.5,
          ("eu-l", "whole"): 60.0, ("eu-l", "yolk"): 19.5, ("eu-l", "white"): 40.5}  # fmt: skip


def need(
    formula: str, part: str, count: float, size: str = "eu-m", batches: float = 1.0, **more: object
) -> EggNeed:
    """A need counted in eggs of a size."""
    mass_g = count * MASSES[size, part]
    return EggNeed(formula, part, mass_g, batches, size, count, **more)  # type: ignore[arg-type]


F1 = need("F1", "whole", 5, family="separated")
C1 = need("C1", "yolk", 5, family="custard-lightened", sugar_g=80.0)
F3 = need("F3", "whole", 4, batches=2, family="roulade")
F4 = need("F4", "whole", 4, "eu-l", family="nut")
F7 = need("F7", "whole", 1, family="tart")
