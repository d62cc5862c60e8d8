"""The batter of a formula: parts that sum to one, and what is not known said or asked."""

import pytest

from krume.bake import batter_of
from krume.design import Formula, read
from krume.evidence import packed_text

# Mass fractions worked out apart from the program, beside the demo's formulas.
PARTS = {
    "F1": (0.395, 0.084, 0.094, 0.399, 0.017, 0.011, 0.257),
    "F3": (0.440, 0.074, 0.077, 0.395, 0.005, 0.009, 0.255),
    "F4": (0.379, 0.094, 0.188, 0.312, 0.016, 0.011, 0.238),
    "F5": (0.460, 0.062, 0.118, 0.345, 0.004, 0.011, 0.209),
    "F6": (0.297, 0.045, 0.216, 0.423, 0.007, 0.012, 0.237),
}


def _demo(name: str) -> Formula:
    return read(packed_text(f"demo/formulas/{name}.txt")).value


@pytest.mark.parametrize("name", PARTS)
def test_a_demo_batter_holds_what_its_lines_hold(name: str) -> None:
    density = 0.85 if name == "F6" else 0.5
    found = batter_of(_demo(name), family=None, density_g_ml=density, density_measured=False).value
    assert found is not None
    held = (found.water, found.protein, found.fat, found.carbohydrate, found.fibre, found.ash,
            found.sugar)  # fmt: skip
    assert held == pytest.approx(PARTS[name], abs=0.0065)
    assert sum(held[:6]) == pytest.approx(1.0, abs=1e-9)


def test_baking_powder_gives_gas_and_a_foam_alone_none() -> None:
    chiffon = batter_of(_demo("F5"), family=None, density_g_ml=0.5, density_measured=False).value
    sponge = batter_of(_demo("F1"), family=None, density_g_ml=0.48, density_measured=False).value
    butter = batter_of(_demo("F6"), family=None, density_g_ml=0.85, density_measured=False).value
    assert chiffon is not None and sponge is not None and butter is not None
    assert chiffon.gas_ratio == pytest.approx(0.28, abs=0.005)
    assert (sponge.gas_ratio, butter.gas_ratio) == (0.0, 1.0)


def test_a_binder_of_unknown_composition_is_said_and_counts_as_fibre() -> None:
    read_batter = batter_of(_demo("F3"), family="roulade", density_g_ml=0.48,
                            density_measured=False)  # fmt: skip
    assert [notice.code for notice in read_batter.notices] == ["composition-assumed"]
    assert "xanthan" in read_batter.notices[0].text
    assert read_batter.value is not None and read_batter.value.colour == "pale"


def test_an_unweighed_line_is_asked_and_nothing_is_baked() -> None:
    text = "Sponge\n\n100 g white rice flour\n5 eggs\n100 g caster sugar\n"
    found = batter_of(read(text).value, family=None, density_g_ml=0.5, density_measured=False)
    assert found.value is None
    assert [(p.code, p.where) for p in found.problems] == [("mass-needed", "line 4")]


def test_a_text_without_a_mass_bakes_nothing() -> None:
    found = batter_of(Formula("none"), family=None, density_g_ml=0.5, density_measured=False)
    assert found.value is None and found.problems[0].code == "nothing-to-bake"
