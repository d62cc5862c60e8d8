"""What is typed into the form of a bake: numbers as people write them, or what is wrong."""

import pytest

from krume.usecases import BakeWish
from krume.web.bake.typed import CHOICES, FIELDS, KEYS, wished
from krume.web.frame.forms import Form


def test_an_empty_form_wishes_the_formulas_own() -> None:
    assert wished(Form({})) == (BakeWish(), {})


def test_every_field_of_a_question_can_be_typed() -> None:
    assert set(FIELDS.values()) <= set(KEYS)
    assert set(CHOICES) <= set(FIELDS.values())


def test_all_of_it_is_taken_as_typed() -> None:
    form = Form({
        "tin": "round 20 cm", "oven": "170 C", "fan": "on", "altitude": "850,5", "cold": "20",
        "door": "10; 20,30", "jacket": "water", "under": "tray", "rack": "low", "beside": "x",
    })  # fmt: skip
    wish, wrong = wished(form)
    assert wrong == {}
    assert wish == BakeWish(
        "round 20 cm", "170 C", fan=True, altitude_m=850.5, jacket="water", under="tray",
        rack="low", cold_start_c=20.0, door_min=(10.0, 20.0, 30.0), beside="x",
    )  # fmt: skip


@pytest.mark.parametrize(
    ("name", "typed"), [("altitude", "high"), ("cold", "warm"), ("door", "10 x"), ("cold", "nan")]
)
def test_what_is_no_number_is_said_beside_its_field(name: str, typed: str) -> None:
    _, wrong = wished(Form({name: typed}))
    assert list(wrong) == [name]
