"""Quick sums of putting together, as they are typed."""

import math

import pytest

from krume.base import OutOfRangeError
from krume.calc import answer, run


def test_layers_of_a_cake_count_the_cuts_and_what_is_left() -> None:
    assert run("layers", height=5, thickness="14mm") == {
        "layers": 3,
        "layers_each": 3,
        "left_cm": pytest.approx(0.8),
    }
    two = run("layers", height=5, thickness=1.2, off=0.4, cut=0.1, bakes=2)
    assert (two["layers"], two["layers_each"]) == (6, 3)


def test_a_dome_of_half_a_ball_holds_half_a_ball() -> None:
    found = run("dome", diameter=20, height=10)
    assert found["volume_ml"] == pytest.approx(2 / 3 * math.pi * 1000)
    assert found["surface_cm2"] == pytest.approx(2 * math.pi * 100)
    with pytest.raises(OutOfRangeError):
        run("dome", diameter=20, height=11)


def test_the_exact_spiral_is_a_little_longer_than_the_sheet() -> None:
    found = run("spiral", length=22.86, thickness=1.2, cream=0.7)
    assert found["diameter_cm"] == pytest.approx(7.4365, abs=1e-4)
    assert 22.86 < found["spiral_cm"] < 22.86 * 1.03  # type: ignore[operator]


def test_leaves_are_counted_by_both_rules() -> None:
    found = answer("leaves", {"mass": "8", "from": "200", "leaf": "silver"})
    assert found.values["by_root_leaves"] == pytest.approx(8.944 / 2.5, abs=0.0005)
    assert found.values["by_ratio_leaves"] == pytest.approx(4.0)
    assert found.values["water_g"] == 40.0
    assert [n.code for n in found.notices] == ["two-rules"]


def test_a_weak_spirit_sets_in_any_amount() -> None:
    weak = answer("spirit", {"water": "300", "strong": "25"})
    assert weak.values["most_g"] is None
    assert "A spirit of 25 % is not above 30 %" in " ".join(n.text for n in weak.notices)
    assert run("spirit", water=300, strong=60)["most_g"] == pytest.approx(300.0)


@pytest.mark.parametrize(
    ("name", "inputs", "field"),
    [
        ("layers", {"height": 5, "thickness": 0}, "thickness"),
        ("layers", {"height": 5, "thickness": 1, "off": -1}, "off"),
        ("dome", {"diameter": 20, "height": 10.1}, "height"),
        ("dome", {"diameter": 0, "height": 0}, "diameter"),
        ("spiral", {"length": 0, "thickness": 1}, "length"),
        ("spirit", {"water": 300, "strong": 140}, "strong"),
        ("spirit", {"water": -1, "strong": 40}, "water"),
    ],
)
def test_what_cannot_be_is_refused_by_the_name_that_was_typed(
    name: str, inputs: dict[str, object], field: str
) -> None:
    with pytest.raises(OutOfRangeError) as refused:
        answer(name, inputs)
    assert refused.value.field == field
    assert refused.value.message.startswith(f"{field} is {inputs[field]}; ")
