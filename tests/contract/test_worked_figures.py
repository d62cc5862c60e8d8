"""Figures worked out by hand beside the demo studio, asked through the command line."""

from typing import Any

import pytest

from tests.contract.conftest import Ask

TOTALS = {
    "F1": "542.0", "F2": "519.0", "F3": "398.0", "F4": "522.0", "F5": "553.2", "F6": "643.7",
    "F7": "431.5", "C1": "941.5", "C2": "853.0", "C3": "380.0", "C4": "390.0", "C5": "615.0",
    "S1": "220.0",
}  # fmt: skip

PERCENT = [
    ("F1", "egg", 245.2), ("F1", "sugar", 129.8), ("F1", "added_fat", 0), ("F1", "nut", 38.5),
    ("F1", "starch", 32.7), ("F1", "sweet_rice", 7.7), ("F2", "egg", 242.9),
    ("F2", "sugar", 123.8), ("F2", "added_fat", 15.6), ("F2", "starch", 34.3),
    ("F2", "sweet_rice", 8.6), ("F3", "egg", 291.4), ("F3", "sugar", 142.9),
    ("F3", "added_fat", 14.3), ("F3", "starch", 31.4), ("F3", "sweet_rice", 8.6),
    ("F4", "egg", 154.8), ("F4", "sugar", 77.4), ("F4", "nut", 74.2), ("F5", "sugar", 120.0),
    ("F5", "starch", 31.1), ("F5", "sweet_rice", 8.9), ("F5", "liquid", 72.2),
    ("F6", "added_fat", 82.0), ("F6", "sugar", 100.0), ("F6", "egg", 102.0),
    ("F6", "liquid", 20.0), ("F6", "starch", 34.7), ("F7", "egg", 25.5), ("F7", "sugar", 32.5),
]  # fmt: skip

FAMILIES = {
    "F1": "separated", "F2": "separated", "F3": "roulade", "F4": "nut", "F5": "chiffon",
    "F6": "butter", "F7": "tart",
}  # fmt: skip

SUMS: list[tuple[list[str], dict[str, Any]]] = [
    (["tin-volume", "shape=round", "diameter=20", "height=7"], {"volume_ml": 2199.1}),
    (["tin-volume", "shape=ring", "diameter=22", "height=6"], {"volume_ml": 2280.8}),
    (
        ["tin-volume", "shape=sheet", "length=13in", "width=9in", "height=1in"],
        {"volume_ml": 1917.3, "area_cm2": 754.8},
    ),
    (
        ["tin-volume", "shape=tube", "diameter=20", "height=10", "hole=6"],
        {"volume_ml": 2858.8, "area_cm2": 285.9},
    ),
    (["bloom", "mass=8", "from=200", "to=160"], {"by_root_g": 8.944, "by_ratio_g": 10.0}),
    (
        ["roll", "length=22.86", "thickness=1.2", "cream=0.7", "core=0"],
        {"diameter_cm": 7.44, "turns": 1.96},
    ),
    (["egg-count", "mass=269.6", "size=eu-m"], {"count": 5, "make_up_g": 14.6}),
    (["egg-count", "mass=195.8", "size=eu-m"], {"count": 4, "make_up_g": -8.2}),
    (["specific-gravity", "empty=82", "water=318", "batter=195.3"], {"specific_gravity": 0.480}),
    (["overrun", "before=236", "after=124"], {"overrun_pct": 90.3}),
    (["convert", "value=1", "from=cup", "to=ml"], {"value": 236.588}),
    (["soda-co2", "mass=1", "temp=25"], {"volume_ml": 291.2}),
    (["powder-co2", "mass=1", "available_pct=12", "temp=25"], {"volume_ml": 66.7}),
    (["tin-factor", "from=round 20 x 5 cm", "to=round 24 x 5 cm"], {"by_area": 1.44}),
    (["dial", "want=157C", "offset=-12"], {"set_c": 169, "set_f": 336.2}),
]


@pytest.mark.parametrize(("name", "total"), TOTALS.items())
def test_total_mass(ask: Ask, name: str, total: str) -> None:
    code, said = ask("check", name)
    assert code == 0, said["problems"]
    assert said["result"]["total_g"] == pytest.approx(float(total), abs=0.05)


@pytest.mark.parametrize(("name", "key", "percent"), PERCENT)
def test_percent_of_the_basis(ask: Ask, name: str, key: str, percent: float) -> None:
    _, said = ask("check", name)
    assert said["result"]["percent"][key] == pytest.approx(percent, abs=0.051)


@pytest.mark.parametrize(("name", "family"), FAMILIES.items())
def test_the_demo_lies_inside_its_bands(ask: Ask, name: str, family: str) -> None:
    _, said = ask("check", name)
    assert said["result"]["family"] == family
    assert said["result"]["findings"] == []


def test_a_chiffon_reads_two_egg_lines_and_a_tube(ask: Ask) -> None:
    _, said = ask("read", "F5")
    eggs = {
        x["part"]: x["mass_g"] for x in said["result"]["lines"] if x["part"] in ("yolk", "white")
    }
    assert eggs == {"yolk": pytest.approx(70.0), "white": pytest.approx(167.5)}
    assert said["result"]["tin"]["shape"] == "tube"
    assert said["result"]["tin"]["hole_cm"] == pytest.approx(6)


def test_a_slightly_smaller_tin_changes_nothing(ask: Ask) -> None:
    _, said = ask("size", "F2", "--tin", "round 8in x 3in")
    factor, (first, *rest) = said["result"]["factor"], said["result"]["options"]
    assert factor["by_area"] == pytest.approx(1.0323, abs=5e-5)
    assert factor["by_volume"] == pytest.approx(1.1237, abs=5e-5)
    assert first["factor"] == 1 and first["eggs"]["count"] == 5
    assert first["depth_cm"] == pytest.approx(3.33, abs=0.005)
    six = next(o for o in rest if o["eggs"]["count"] == 6)
    assert six["factor"] == pytest.approx(1.2) and six["depth_cm"] == pytest.approx(4.0, abs=0.005)


def test_a_sheet_of_a_wanted_depth_takes_whole_eggs(ask: Ask) -> None:
    _, said = ask("size", "F2", "--tin", "sheet 13x9 in", "--depth", "1.1")
    first = said["result"]["options"][0]
    grams = [x["mass_g"] for x in first["lines"]]
    assert first["factor"] == pytest.approx(0.8) and first["eggs"]["count"] == 4
    for wanted in (32, 16, 24, 7.2, 4.8, 104, 16):
        assert any(g == pytest.approx(wanted, abs=0.05) for g in grams), wanted
    assert first["depth_cm"] == pytest.approx(1.15, abs=0.01)


@pytest.mark.parametrize(("words", "results"), SUMS)
def test_quick_sums(ask: Ask, words: list[str], results: dict[str, Any]) -> None:
    code, said = ask("calc", *words)
    assert code == 0, said
    for key, printed in results.items():
        digits = len(str(printed).partition(".")[2])
        assert said["result"][key] == pytest.approx(printed, abs=0.5 * 10**-digits + 1e-9)
