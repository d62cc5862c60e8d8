"""Sums on the oven as people and checks call them."""

import pytest

from krume.base import InputError, OutOfRangeError
from krume.calc import answer, run
from tests.agreement import agrees


@pytest.mark.source("reference-book", "R99, dial of the checks as quick sums")
@pytest.mark.parametrize(
    ("want", "offset", "celsius", "fahrenheit"),
    [("157C", -12, "169", "336.2"), (170, 8, "162", "323.6"), ("170", "+8", "162", "323.6")],
)
def test_dials_are_the_printed_ones(
    want: object, offset: object, celsius: str, fahrenheit: str
) -> None:
    found = run("dial", want=want, offset=offset)
    assert agrees(found["set_c"], celsius) and agrees(found["set_f"], fahrenheit)  # type: ignore[arg-type]


def test_an_offset_in_fahrenheit_is_a_difference() -> None:
    found = run("dial", want="325F", offset="-18F")
    assert found["set_f"] == pytest.approx(343.0)


def test_a_fan_is_set_lower_and_back_by_the_rule_of_thumb() -> None:
    found = run("fan", want="170 C")
    assert (found["low_c"], found["high_c"]) == (150, 155)
    assert (found["low_f"], found["high_f"]) == (302, 311)
    back = run("fan", want=150, to="still")
    assert (back["low_c"], back["high_c"]) == (165, 170)
    assert run("fan", want=150, to="fan") == run("fan", want=150)
    assert "common-practice" in {notice.code for notice in answer("fan", {"want": "170"}).notices}
    with pytest.raises(OutOfRangeError):
        run("fan", want=800)


@pytest.mark.source("reference-book", "bake model, series and browning as quick sums")
def test_series_and_browning_are_the_printed_ones() -> None:
    assert agrees(run("heating-series", shape="slab", biot=1, fourier=1)["theta"], "0.5338594014")  # type: ignore[arg-type]
    short = run(
        "heating-series", shape="short-cylinder", k=0.3, heat_capacity=2800, density=500,
        radius=10, height=5, h=18, start=20, oven=175, time=40,
    )  # fmt: skip
    assert agrees(short["temp_c"], "95.38159")  # type: ignore[arg-type]
    colour = run("browning", time=15, temp=150)["delta_e"]
    assert agrees(colour, "19.032", within="0.005", why="the book's own tolerance")  # type: ignore[arg-type]


def test_a_short_cylinder_by_numbers_is_the_one_by_measures() -> None:
    measures = {"h": 18, "k": 0.3, "density": 500, "heat_capacity": 2800, "time": 40}
    shape = {"shape": "short-cylinder", "radius": 10, "height": 5}
    biot = 18 * 0.1 / 0.3
    fourier = 0.3 / (500 * 2800) * 2400 / 0.1**2
    by_numbers = run("heating-series", **shape, biot=biot, fourier=fourier)["theta"]
    assert by_numbers == pytest.approx(run("heating-series", **shape, **measures)["theta"])


def test_a_short_cylinder_is_the_product_of_slab_and_cylinder() -> None:
    both = {"h": 18, "k": 0.3, "density": 500, "heat_capacity": 2800, "time": 40,
            "radius": 10, "height": 5}  # fmt: skip
    thetas = [run("heating-series", shape=s, **both)["theta"]
              for s in ("slab", "cylinder", "short-cylinder")]  # fmt: skip
    assert thetas[2] == pytest.approx(thetas[0] * thetas[1])  # type: ignore[operator]


def test_without_temperatures_only_theta_is_known() -> None:
    found = answer("heating-series", {"shape": "slab", "biot": 1, "fourier": 1})
    assert found.values["temp_c"] is None
    assert [n.code for n in found.notices] == ["no-temperatures"]


def test_below_140_degrees_browning_is_said_to_be_extrapolated() -> None:
    assert answer("browning", {"time": 15, "temp": 120}).notices[0].code == "extrapolated"
    assert answer("browning", {"time": 15, "temp": 150}).notices == ()


def test_what_is_missing_or_impossible_is_refused() -> None:
    with pytest.raises(InputError, match="biot"):
        run("heating-series", shape="slab")
    with pytest.raises(InputError, match="heat_capacity"):
        run("heating-series", shape="slab", h=18, k=0.3, density=500, time=40, height=5)
    with pytest.raises(InputError, match="radius"):
        run("heating-series", shape="short-cylinder", biot=1, fourier=1, height=5)
    with pytest.raises(OutOfRangeError):
        run("heating-series", shape="slab", h=18, k=0, density=500, heat_capacity=2800, time=40,
            height=5)  # fmt: skip
