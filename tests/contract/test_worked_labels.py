"""Keeping and labels of the demo, as a person's command line answers them."""

from typing import Any

import pytest

from tests.contract.conftest import Ask

ROOM = "room: cleaning record"
LABELS: list[tuple[str, set[str], set[str]]] = [
    ("T1", {"L-008"}, {"egg", "milk", "hazelnut"}),
    ("T2", {"L-004"}, {"egg", "milk"}),
    ("T3", set(), {"egg", "milk", "walnut"}),
    ("TART", {"L-012", "L-013"}, {"egg", "milk", "soybean"}),
    ("F2", {"L-002"}, {"egg", "milk"}),
    ("F6", {"L-002", "L-011"}, {"egg", "milk"}),
]


@pytest.mark.parametrize("market", ["us", "eu"])
@pytest.mark.parametrize(("name", "missing", "contains"), LABELS)
def test_a_label_names_what_is_missing_and_what_is_in_it(
    ask: Ask, name: str, missing: set[str], contains: set[str], market: str
) -> None:
    code, said = ask("label", name, "--market", market)
    result: dict[str, Any] = said["result"]
    assert code == 0
    assert result["gluten"]["claim_allowed"] is False
    assert set(result["gluten"]["missing"]) == {*missing, ROOM}
    assert len(result["contains"]) == len(contains)
    assert all(any(word in found for found in result["contains"]) for word in contains)
    assert isinstance(result["ingredients"], str)
    assert isinstance(result["unknown"], list)


def test_gelatine_is_named_by_its_animal(ask: Ask) -> None:
    _, said = ask("label", "T3", "--market", "eu")
    assert "gelatine (beef)" in said["result"]["ingredients"]


def test_a_torte_keeps_three_to_five_days_cold_by_its_custard(ask: Ask) -> None:
    code, said = ask("keep", "T1")
    result = said["result"]
    assert code == 0
    assert (result["cold_hours"]["low"], result["cold_hours"]["high"]) == (72, 120)
    assert "C1" in result["reasons"][0] and "common practice" in result["reasons"][0]
    assert any("3-501.19" in reason for reason in result["reasons"])
    words = " ".join([*result["reasons"], *result["cautions"]])
    assert "safe" not in words.casefold()
