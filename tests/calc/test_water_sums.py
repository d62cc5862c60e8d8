"""Sums on water as people and checks call them."""

import pytest

from krume.base import InputError, OutOfRangeError
from krume.calc import run
from tests.agreement import agrees


@pytest.mark.source("reference-book", "R24 to R26, R33, R71 as quick sums")
@pytest.mark.parametrize(
    ("name", "inputs", "key", "printed"),
    [
        ("vapour-pressure", {"temp": 20}, "pressure_pa", "2339.2"),
        ("vapour-pressure", {"temp_f": 77}, "pressure_pa", "3169.7"),
        ("boiling-point", {"altitude": "5000ft"}, "temp_c", "94.90"),
        ("boiling-point", {"altitude": "10 000 ft"}, "temp_c", "89.81"),
        ("boiling-point", {"altitude": 0, "sugar_pct": 50}, "temp_c", "101.7977"),
        ("boiling-point", {"altitude_m": 1600, "sugar": 50}, "temp_c", "96.4191"),
        ("boiling-point", {"pressure": "101.325 kPa"}, "temp_c", "99.9743"),
        ("aw-sucrose", {"percent": 50}, "aw", "0.9348"),
        ("aw-sucrose", {"percent": "60%"}, "aw", "0.8953"),
        ("aw-glycerol", {"percent": 30}, "aw", "0.9163"),
    ],
)
def test_sums_are_the_printed_ones(
    name: str, inputs: dict[str, object], key: str, printed: str
) -> None:
    assert agrees(run(name, **inputs)[key], printed)  # type: ignore[arg-type]


@pytest.mark.source("ross-1975", "R26 as a quick sum")
def test_a_product_of_activities_is_the_printed_one() -> None:
    why = "the book's own tolerance"
    for listed in ("0.9348,0.9026", [0.9348, 0.9026], (0.9348, "0.9026")):
        assert agrees(run("aw-mix", aw=listed)["aw"], "0.8437", within="0.0002", why=why)  # type: ignore[arg-type]


def test_altitude_and_pressure_are_one_or_the_other() -> None:
    with pytest.raises(InputError, match="or pressure"):
        run("boiling-point", sugar_pct=50)
    with pytest.raises(InputError, match="both"):
        run("boiling-point", altitude=0, pressure=101325)
    with pytest.raises(OutOfRangeError):
        run("aw-sucrose", percent=95)
