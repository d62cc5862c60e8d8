"""Random tortes weighed a second time, their volumes cut into slabs and added up."""

import math
import random
from pathlib import Path
from typing import Any

import pytest

from krume.calc import run
from tests.contract.conftest import Many

SPONGE = """Test sponge {name}
Tin: {tin}
Baked: 70 mm high, {mass_g} g
Eggs: EU sizes

400 g white rice flour
400 g potato starch
700 g caster sugar
20 eggs, medium

Bake.
"""
CREAM = """Test cream {name}
Density: {density} g/ml (plan)

400 g whipping cream, 35 % fat
50 g caster sugar
6 g powdered gelatine, 200 bloom
30 g water

Whip.
"""
SYRUP = "Test syrup\n\n100 g caster sugar\n100 g water\n"
ROUND_G_ML, SQUARE_G_ML = 800 / (math.pi * 12**2 * 7), 1500 / (26 * 26 * 7)
INSIDE_G_ML, COAT_G_ML = 0.7, 0.81


@pytest.fixture(scope="module")
def bench(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A folder with two sponges, two creams and a syrup."""
    path = tmp_path_factory.mktemp("bench")
    texts = {
        "RA": SPONGE.format(name="RA", tin="round 24 x 8 cm", mass_g=800),
        "SQ": SPONGE.format(name="SQ", tin="square 26 x 8 cm", mass_g=1500),
        "CA": CREAM.format(name="CA", density=INSIDE_G_ML),
        "CB": CREAM.format(name="CB", density=COAT_G_ML),
        "SY": SYRUP,
    }
    for name, text in texts.items():
        (path / f"{name}.txt").write_text(text, encoding="utf-8")
    return path


def _slabs(width_cm: float, length_cm: float | None, height_cm: float) -> float:
    """Millilitres of an upright body, by strips across it (Simpson, 4000 strips)."""
    if length_cm is not None:
        return width_cm * length_cm * height_cm
    radius, count = width_cm / 2, 4000

    def strip(turn: float) -> float:  # x = r sin(turn): smooth at the rim
        return 2 * (radius * math.cos(turn)) ** 2 * height_cm

    step = math.pi / count
    turns = [-math.pi / 2 + step * number for number in range(count + 1)]
    weights = [1 if n in (0, count) else 4 if n % 2 else 2 for n in range(count + 1)]
    return step / 3 * sum(w * strip(turn) for w, turn in zip(weights, turns, strict=True))


def _drawn(seed: int) -> tuple[str, dict[str, float]]:
    """A torte as a text, and what it must weigh."""
    draw = random.Random(seed)  # noqa: S311 - a fixed draw of tortes
    square = draw.random() < 0.4
    count, thick = draw.randint(1, 4), draw.choice([8, 10, 12, 13.5])
    width = round(draw.uniform(14, 23.5), 1)
    length = round(draw.uniform(width, 25.8), 1) if square else None
    cream, coat = draw.choice([4, 7.5, 10, 12]), draw.choice([0, 2, 4, 6.5])
    crumb, syrup = draw.choice([0, 1]) if coat else 0, draw.choice([0, 0.1, 0.137])
    size = f"{length} x {width} cm" if square else f"{width} cm"
    lines = [f"{count} layers of {'SQ' if square else 'RA'}, {thick} mm, trimmed to {size}"]
    lines += [f"{syrup} g/cm2 SY on each layer"] if syrup else []
    lines += [f"{count - 1} x {cream} mm CA between the layers"] if count > 1 else []
    lines += ["1 mm CB around and on top, crumb coat"] if crumb else []
    lines += [f"{coat} mm CB around and on top"] if coat else []
    high, around = (count * thick + (count - 1) * cream) / 10, (coat + crumb) / 10
    wide = None if length is None else length + 2 * around
    hull = _slabs(width + 2 * around, wide, high + around) - _slabs(width, length, high)
    due = {
        "cream_g": INSIDE_G_ML * _slabs(width, length, (count - 1) * cream / 10),
        "syrup_g": count * syrup * _slabs(width, length, 1),
        "height_mm": 10 * (high + around),
    }
    sponge = _slabs(width, length, count * thick / 10) * (SQUARE_G_ML if square else ROUND_G_ML)
    due["mass_g"] = sponge + due["cream_g"] + due["syrup_g"] + COAT_G_ML * hull
    return "Test torte\nSlices: 12\n\n" + "\n".join(lines) + "\n", due


def test_random_tortes_weigh_what_their_slabs_weigh(many: Many, bench: Path, book: Path) -> None:
    drawn = [_drawn(seed) for seed in range(60)]
    for number, (text, _) in enumerate(drawn):
        (bench / f"X{number}.txt").write_text(text, encoding="utf-8")
    calls = [
        ["build", str(bench / f"X{number}.txt"), "--json", "--book", str(book)]
        for number in range(len(drawn))
    ]
    for (text, due), said in zip(drawn, many(calls), strict=True):
        assert said.code == 0, (text, said.stdout)
        result: dict[str, Any] = said.answer["result"]
        for key, value in due.items():
            assert result[key] == pytest.approx(value, abs=0.05), (key, text)
        masses = sum(layer["mass_g"] for layer in result["layers"])
        assert masses == pytest.approx(result["mass_g"], abs=0.1)


IMPOSSIBLE: list[tuple[str, str, int, str]] = [
    ("", "6 layers of RA, 14 mm", 4, "5 layers of 14 mm"),
    ("", "3 layers of RA, 14 mm, trimmed to 24.1 cm", 4, "24.1 cm"),
    ("Ring: 22 x 6 cm\n", "2 layers of RA, 12 mm, trimmed to 22.1 cm", 4, "22 cm"),
    (
        "Ring: 22 x 6 cm\n",
        "2 layers of RA, 12 mm, trimmed to 22 cm\n2 x 18.1 mm CA, one on each layer",
        4,
        "60 mm",
    ),
    ("", "1 layer of RA, 12 mm, trimmed to 20 cm\n100.1 mm CA on top, domed", 4, "100 mm"),
    ("", "3 layers of RA, 14 mm\n-2 x 10 mm CA between the layers", 3, "not understood"),
    ("", "3 layers of RA, 14 mm\n5 x 10 mm CA between the layers", 3, "2 places"),
    ("", "3 layers of RA, 14 mm\n10 mm NOPE between the layers", 3, "NOPE"),
    ("Slices: 0\n", "3 layers of RA, 14 mm", 3, "slices"),
]


def test_what_cannot_stand_is_refused_with_its_nearest(many: Many, bench: Path, book: Path) -> None:
    calls = []
    for number, (head, body, _, _) in enumerate(IMPOSSIBLE):
        path = bench / f"Y{number}.txt"
        path.write_text(f"Test torte\n{head}\n{body}\n", encoding="utf-8")
        calls.append(["build", str(path), "--json", "--book", str(book)])
    for case, said in zip(IMPOSSIBLE, many(calls), strict=True):
        assert said.code == case[2], (case, said.stdout)
        assert any(case[3] in problem["ask"] for problem in said.answer["problems"]), case
        assert said.answer["result"]["mass_g"] is None


def _arc_cm(inner_cm: float, outer_cm: float, pitch_cm: float) -> float:
    """Length of r = pitch · angle / 2π by its integral (Simpson, 20 000 parts)."""
    rise, count = pitch_cm / (2 * math.pi), 20_000
    first, step = inner_cm / rise, (outer_cm - inner_cm) / rise / count
    angles = [first + step * number for number in range(count + 1)]
    weights = [1 if n in (0, count) else 4 if n % 2 else 2 for n in range(count + 1)]
    return (
        rise
        * step
        / 3
        * sum(w * math.hypot(1, angle) for w, angle in zip(weights, angles, strict=True))
    )


@pytest.mark.parametrize(
    ("length", "thickness", "cream", "core"),
    [(38, 1.0, 0.4, 0.8), (22.86, 1.2, 0.7, 0), (30, 0.9, 0, 0.5), (52, 1.4, 1.1, 1.2)],
)
def test_a_roll_keeps_its_area_and_its_spiral_is_the_arc(
    length: float, thickness: float, cream: float, core: float
) -> None:
    pitch = thickness + cream
    outer = math.sqrt(core**2 + length * pitch / math.pi)
    rolled = run("roll", length=length, thickness=thickness, cream=cream, core=core)
    assert rolled["diameter_cm"] == pytest.approx(2 * outer, rel=1e-6)
    assert rolled["turns"] == pytest.approx((outer - core) / pitch, rel=1e-6)
    told = run("spiral", length=length, thickness=thickness, cream=cream, core=core)
    arcs = [value for key, value in told.items() if key.endswith("_cm")]
    due = _arc_cm(core, outer, pitch)
    assert any(value == pytest.approx(due, rel=1e-4) for value in arcs), told


@pytest.mark.parametrize(("mass", "start", "to"), [(10, 160, 200), (8, 200, 160), (7.3, 225, 250)])
def test_a_strength_of_gelatine_is_told_by_both_rules(mass: float, start: int, to: int) -> None:
    told = run("bloom", mass=mass, from_=start, to=to)
    assert told["by_root_g"] == pytest.approx(mass * math.sqrt(start / to), abs=5e-4)
    assert told["by_ratio_g"] == pytest.approx(mass * start / to, abs=5e-4)
