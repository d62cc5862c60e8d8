"""The worked figures of the demo tortes, asked from outside."""

import pytest

from tests.contract.conftest import Ask

TORTES = {
    "T1": (66, 1194.9, 448.0, 134.4, {12: 99.6, 14: 85.3}),
    "T2": (74, 753.1, 347.2, 75.5, {12: 62.8}),
    "T3": (60, 1574.8, 824.7, 103.9, {14: 112.5, 16: 98.4}),
    "TART": (25, 594.0, 380.0, 0.0, {10: 59.4}),
}


@pytest.mark.parametrize(("name", "worked"), TORTES.items())
def test_a_demo_torte_comes_to_its_worked_figures(
    ask: Ask, name: str, worked: tuple[float, float, float, float, dict[int, float]]
) -> None:
    code, said = ask("build", name)
    assert code == 0, said["problems"]
    result = said["result"]
    height, mass, cream, syrup, slices = worked
    assert result["height_mm"] == pytest.approx(height, rel=0.005)
    assert result["mass_g"] == pytest.approx(mass, abs=0.05)
    assert result["cream_g"] == pytest.approx(cream, abs=0.05)
    assert result["syrup_g"] == pytest.approx(syrup, abs=0.05)
    assert {x["count"]: round(x["mass_g"], 1) for x in result["slices"]} == slices
    layers = result["layers"]
    assert sum(x["mass_g"] for x in layers) == pytest.approx(result["mass_g"], abs=0.1)


def test_layers_higher_than_the_cake_have_no_answer(ask: Ask) -> None:
    code, said = ask("build", "-", stdin="High\n\n3 layers of F1, 20 mm\n")
    assert code == 4
    assert not said["ok"]
    assert said["result"]["mass_g"] is None
    assert "50 mm" in said["problems"][0]["ask"]
