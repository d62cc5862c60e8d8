"""Sums on cooling as people and checks call them."""

import pytest

from krume.bake import vessels
from krume.base import InputError, OutOfRangeError
from krume.calc import SUMS, answer, run


def test_readings_say_when_the_middle_is_there() -> None:
    found = run("cool-down", times="20,40", temps="70,52", room=21, goal=30)
    minutes, left = found["at_min"], found["left_min"]
    assert isinstance(minutes, dict)
    assert isinstance(left, dict)
    assert (minutes["low"], minutes["high"]) == (94.0, 107.0)
    assert (left["low"], left["high"]) == (54.0, 67.0)


def test_readings_may_carry_their_own_units() -> None:
    plain = run("cool-down", times="20,40", temps="70,52", room=21, goal=30)
    times, temps = "20 min,40 min", ["158F", "125.6F"]
    assert run("cool-down", times=times, temps=temps, room="21C", goal="86F") == plain


def test_a_cake_by_its_size_is_an_interval_with_a_warning() -> None:
    found = answer("cake-cooling", {"diameter": 20, "height": 5, "mass": 482})
    minutes = found.values["rack_min"]
    assert isinstance(minutes, dict)
    assert 40 < float(str(minutes["low"])) < float(str(minutes["high"])) < 130
    assert "compared with no cake" in found.notices[0].text


def test_the_custard_sum_predicts_and_never_shows() -> None:
    shallow = answer("custard-cooling", {"depth": 1, "vessel": "tray-fan"})
    deep = run("custard-cooling", depth=8, vessel="tray-fridge")
    assert (shallow.values["prediction"], shallow.values["verdict"]) == ("within", "not-shown")
    assert (deep["prediction"], deep["total_h"], deep["verdict"]) == ("over", None, "not-shown")
    assert shallow.notices[0].code == "no-evidence"
    assert "local law" in shallow.notices[0].text


def test_the_sum_offers_every_vessel_of_the_table() -> None:
    vessel = next(each for each in SUMS["custard-cooling"].inputs if each.name == "vessel")
    assert vessel.choices == tuple(vessels())


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(OutOfRangeError, match="never brings custard to 5"):
        run("custard-cooling", depth=2, vessel="tray-fan", fridge=8)
    with pytest.raises(OutOfRangeError, match="A depth"):
        run("custard-cooling", depth=0, vessel="tray-fan")
    with pytest.raises(InputError, match="tray-fridge"):
        run("custard-cooling", depth=2, vessel="thimble")
    with pytest.raises(OutOfRangeError, match="never brings it"):
        run("cool-down", times="20,40", temps="70,52", room=21, goal=19)
