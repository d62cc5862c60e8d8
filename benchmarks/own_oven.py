"""Made-up kitchens: bakes of a known oven, what is learnt from them, and how sure that is.

Run alone (`python -m benchmarks.own_oven`) it prints the calibration over many kitchens; as a
part of the benchmarks it says what learning takes beside one prediction.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from benchmarks import next_cake
from benchmarks.cakes import CAKES, cake, prior
from benchmarks.measure import Row, call_s

if TYPE_CHECKING:
    import numpy as np

    from krume.learn import FinishedBake, OvenLearnt

MOST_MS = 150.0
"""What learning from four bakes may take."""

FINE = (9, 12)
OVEN_C = 170.0


@dataclass(frozen=True, slots=True)
class Kitchen:
    """What a made-up kitchen hides: heat, temperature, how each cake stands to the model."""

    ln_heat: float
    off_c: float
    ln_cakes: dict[str, float]
    rng: np.random.Generator


def kitchen(seed: int, *, ln_heat: float | None = None) -> Kitchen:
    """One kitchen by the doubts of the model's own rows."""
    import numpy as np

    from krume.bake import figures

    rng = np.random.default_rng(seed)
    rows = figures()
    drawn = float(rng.normal(0.0, rows["spread-heat"].value))
    off = float(rng.normal(0.0, 2.0))
    miss = rows["discrepancy"].value
    cakes = {name: float(rng.normal(0.0, miss)) for name in CAKES}
    return Kitchen(drawn if ln_heat is None else ln_heat, off, cakes, rng)


def truth_min(one: Kitchen, name: str) -> float:
    """Minutes of a cake in a kitchen on a finer grid: its own batter, its own miss of the model."""
    from krume.bake import Oven, simulate

    batter, tin = cake(name)
    own = replace(batter, density_g_ml=batter.density_g_ml * math.exp(one.ln_cakes[name] / 4))
    heat = math.exp(one.ln_heat)
    found = simulate(own, tin, Oven(OVEN_C + one.off_c, heat=heat), cells=FINE)
    return found.rule_minutes[0] * math.exp(one.ln_cakes[name])


def recorded(one: Kitchen, name: str, key: str, minutes: float) -> FinishedBake:
    """A bake as it is written down: whole minutes, a probe that is off, another day's scatter."""
    from krume.learn import FinishedBake

    batter, tin = cake(name)
    scatter = math.exp(float(one.rng.normal(0.0, 0.04)))
    read = (batter.core_c or 95.0) + float(one.rng.normal(0.0, 0.5))
    return FinishedBake(
        key, name, batter, tin, float(round(minutes * scatter)), "probe", oven_c=OVEN_C,
        core_c=round(read), day=key,
    )  # fmt: skip


def learnt(one: Kitchen, names: tuple[str, ...]) -> OvenLearnt:
    """What so many bakes tell."""
    from krume.learn import learn_oven

    minutes = {name: truth_min(one, name) for name in set(names)}
    bakes = [recorded(one, n, f"bake {k}", minutes[n]) for k, n in enumerate(names)]
    return learn_oven((), bakes, prior())


def calibration(count: int, names: tuple[str, ...]) -> tuple[float, float, float, float]:
    """Over kitchens: share whose heat lies in the middle four fifths, rms of it in its own sd,
    mean sd, and the share of bakes put aside as odd.
    """
    inside, squares, sds, odd = 0, 0.0, 0.0, 0
    for seed in range(count):
        one = kitchen(seed)
        found = learnt(one, names)
        off = (one.ln_heat - found.ln_heat) / found.ln_heat_sd
        inside += abs(off) <= 1.2815515655446004
        squares, sds = squares + off**2, sds + found.ln_heat_sd
        odd += len(found.flagged)
    return inside / count, math.sqrt(squares / count), sds / count, odd / count / len(names)


def next_bakes(count: int, names: tuple[str, ...], asked: str) -> tuple[float, float, float]:
    """Over kitchens: share of next bakes inside their minutes, their mean width over that of an
    oven never learnt (ln high - ln low), and the share inside the latter.
    """
    from krume.bake import Oven, Prediction, predict
    from krume.learn import same_cake

    batter, tin = cake(asked)
    inside = inside_before = 0
    width = before = 0.0
    plain = predict(batter, tin, Oven(OVEN_C, temp_half_width_c=2.0))
    if not isinstance(plain, Prediction):
        raise LookupError(asked)
    for seed in range(count):
        one = kitchen(seed)
        found = learnt(one, names)
        oven = found.oven(Oven(OVEN_C, temp_half_width_c=2.0), prior())
        general = predict(batter, tin, oven, count=128)
        if not isinstance(general, Prediction):
            continue
        own = same_cake(found, asked, batter_g=batter.mass_g, oven_c=OVEN_C,
                        model_min=general.bake.minutes)  # fmt: skip
        span = general.minutes if own is None else own.minutes
        true = truth_min(one, asked) * math.exp(float(one.rng.normal(0.0, 0.04)))
        inside += span.low <= true <= span.high
        inside_before += plain.minutes.low <= true <= plain.minutes.high
        width += math.log(span.high / span.low)
        before += math.log(plain.minutes.high / plain.minutes.low)
    return inside / count, width / before, inside_before / count


def four_bakes_s(times: int) -> float:
    """Median time to learn from four bakes of four cakes, none of them kept in mind."""
    from krume.learn import learn_oven

    one = kitchen(1, ln_heat=-0.16)
    minutes = {name: truth_min(one, name) for name in CAKES}

    def learn(number: int) -> object:
        bakes = [recorded(one, n, n, minutes[n] * (1 + number / 1000)) for n in CAKES]
        warm = [replace(b, oven_c=OVEN_C + number / 100) for b in bakes]
        return learn_oven((), warm, prior())

    return call_s(learn, times=times)


def prediction_s(times: int) -> float:
    """Median time of one prediction."""
    from krume.bake import Oven, predict

    batter, tin = cake("hazel")
    return call_s(lambda number: predict(batter, tin, Oven(OVEN_C + number / 100)), times=times)


def rows() -> list[Row]:
    """What learning takes beside one prediction."""
    own_s, peer_s = four_bakes_s(times=7), prediction_s(times=7)
    most = MOST_MS / (peer_s * 1e3)
    peer = "one prediction of 256 draws"
    return [Row("learn an oven from 4 bakes", own_s * 1e3, peer_s * 1e3, "ms", peer, most)]


def _told(count: int) -> list[str]:
    lines = [f"{count} kitchens each; 80 % is what the middle four fifths should hold"]
    for names in (
        ("hazel",), ("hazel", "hazel", "hazel"), ("hazel", "walnut", "butter"),
        ("hazel", "walnut", "sheet", "butter"),
    ):  # fmt: skip
        inside, rms, sd, odd = calibration(count, names)
        lines.append(
            f"{', '.join(names):<32} heat inside {inside:.0%}, rms {rms:.2f} sd, sd {sd:.3f}, "
            f"put aside {odd:.1%}"
        )
    for names, asked in (
        (("hazel",), "hazel"), (("hazel", "hazel", "walnut"), "hazel"),
    ):  # fmt: skip
        inside, width, before = next_bakes(count, names, asked)
        lines.append(
            f"{', '.join(names)} then {asked}: inside {inside:.0%} (before any bake {before:.0%}), "
            f"width {width:.0%} of before"
        )
    return [*lines, *next_cake.told()]


if __name__ == "__main__":
    print("\n".join(_told(80)))
