"""Conversion: printed units, one kind only, and an ingredient between mass and volume."""

import pytest

from krume.base import InputError
from krume.calc import answer, run
from tests.agreement import agrees


@pytest.mark.source("nist-handbook-44", "appendix C: R30, R72")
@pytest.mark.parametrize(
    ("source", "target", "printed"),
    [("cup", "mL", "236.588"), ("tbsp", "ml", "14.787"), ("tsp", "ml", "4.929"),
     ("fl oz", "ml", "29.574"), ("lb", "g", "453.59237"), ("oz", "g", "28.349523"),
     ("in", "cm", "2.54")],
)  # fmt: skip
def test_customary_units_are_the_printed_ones(source: str, target: str, printed: str) -> None:
    assert agrees(run("convert", value=1, from_=source, to=target)["value"], printed)  # type: ignore[arg-type]


@pytest.mark.source("nist-sp-811", "temperatures: R72")
def test_temperatures_are_the_printed_ones() -> None:
    assert agrees(run("convert", value="350F", to="C")["value"], "176.67")  # type: ignore[arg-type]
    assert agrees(run("convert", value=325, from_="F", to="C")["value"], "162.78")  # type: ignore[arg-type]
    assert agrees(run("convert", value=-40, from_="F", to="C")["value"], "−40")  # type: ignore[arg-type]
    gap = run("convert", value=25, from_="F", to="C", difference="yes")
    assert agrees(gap["value"], "13.89")  # type: ignore[arg-type]


@pytest.mark.parametrize(
    ("value", "to"), [("250 g + 30 mL", "g"), ("20 cm + 5 min", "cm"), ("250 g + 30 mL", "ml")]
)
def test_amounts_of_two_kinds_are_not_added(value: str, to: str) -> None:
    with pytest.raises(InputError, match="cannot be added") as caught:
        run("convert", value=value, to=to)
    assert caught.value.field == "value"


def test_amounts_of_one_kind_are_added() -> None:
    found = run("convert", value="1 cup + 2 tbsp", to="tbsp")
    assert found["value"] == pytest.approx(18.0)


def test_between_volume_and_mass_the_ingredient_is_asked() -> None:
    with pytest.raises(InputError, match="depends on the ingredient"):
        run("convert", value=1, from_="cup", to="g")
    with pytest.raises(InputError, match="white rice flour, brown rice flour"):
        run("convert", value=1, from_="cup", to="g", ingredient="rice flour")


def test_a_cup_of_an_ingredient_is_an_interval_with_its_papers() -> None:
    found = answer(
        "convert", {"value": 1, "from": "cup", "to": "g", "ingredient": "white rice flour"}
    )
    assert found.values["value"] == 140.0
    assert found.values["interval"] == {"low": 125.0, "best": 140.0, "high": 160.0}
    assert "Weighing is surer" in found.notices[0].text
    back = run("convert", value=140, from_="g", to="cup", ingredient="white rice flour")
    assert back["value"] == pytest.approx(1.0)


def test_a_stick_is_butter() -> None:
    found = run("convert", value=1, from_="stick", to="g", ingredient="butter")
    assert found["value"] == pytest.approx(113.4)


@pytest.mark.parametrize(
    ("inputs", "field"),
    [
        ({"value": 5, "from": "cm", "to": "min"}, "to"),
        ({"value": 5, "from": "smoot", "to": "cm"}, "from"),
        ({"value": 5, "from": "cm", "to": "smoot"}, "to"),
        ({"value": 5, "to": "cm"}, "from"),
        ({"value": "five", "from": "cm", "to": "in"}, "value"),
        ({"value": 1, "from": "cup", "to": "g", "ingredient": "moon dust"}, "ingredient"),
    ],
)
def test_what_cannot_be_converted_is_refused_at_its_input(
    inputs: dict[str, object], field: str
) -> None:
    with pytest.raises(InputError) as caught:
        run("convert", **inputs)
    assert caught.value.field == field
