"""Three loads in one oven, beside the same three each as if alone."""

from typing import TYPE_CHECKING

from benchmarks.measure import Row, call_s

if TYPE_CHECKING:
    from krume.bake import Batter, Oven
    from krume.size import Tin

DRAWS = 64


def rows() -> list[Row]:
    """Three sponges, ten minutes apart, with their doubt; and their likely minutes alone."""
    own_s, peer_s, likely_s = together_s(count=DRAWS), alone_s(), together_s(count=0)
    return [
        Row(f"3 loads together, {DRAWS} draws", own_s * 1e3, peer_s * 1e3, "ms",
            "the three, each alone", 6.0),
        Row("the same, likely minutes", likely_s * 1e3, 1000.0, "ms",
            "what a tap at the oven bears", 1.0),
    ]  # fmt: skip


def together_s(*, count: int) -> float:
    """Median time of the three together."""
    from krume.bake import OvenLoad, oven_box, together

    batter, tin, oven = case()

    def one(number: int) -> object:
        loads = [OvenLoad(batter, tin, in_min=10.0 * place) for place in range(3)]
        return together(loads, oven, oven_box(), count=count, seed=number)

    return call_s(one, times=3)


def alone_s() -> float:
    """Median time of three predictions without one another."""
    from krume.bake import predict

    batter, tin, oven = case()
    return call_s(
        lambda number: [predict(batter, tin, oven, count=DRAWS, seed=number + n) for n in range(3)],
        times=3,
    )


def case() -> "tuple[Batter, Tin, Oven]":
    """A hazelnut sponge in its tin and oven."""
    from krume.bake import Batter, Oven
    from krume.size import read_tin

    tin = read_tin("round 20 x 7 cm").value
    if tin is None:
        raise LookupError
    batter = Batter(
        mass_g=540, density_g_ml=0.48, water=0.395, protein=0.084, fat=0.094, carbohydrate=0.399,
        fibre=0.017, ash=0.011, sugar=0.257, core_c=95.0, density_measured=True,
    )  # fmt: skip
    return batter, tin, Oven(170)
