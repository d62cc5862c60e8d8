"""The worked figures of size, bake, plan, cost, sheet and keep, as the job map fixes them."""

import json
from pathlib import Path
from typing import Any

import pytest

from tests.contract.conftest import Many, Said
from tests.contract.shape import local_time

TWELVE = """\
Order 12
Customer: Orl Bay Cafe
Date: Saturday 2027-06-12
Hand-over: 09:00, pick-up
For: 140 people

12 T1
"""
CALLS = {
    "check F2": ["check", "F2"],
    "check F4": ["check", "F4"],
    "check F6": ["check", "F6"],
    "roll of F2": ["size", "F2", "--tin", "sheet 13x9 in", "--depth", "1.1"],
    "bake F1": ["bake", "F1"],
    "bake F4": ["bake", "F4"],
    "bake F5": ["bake", "F5"],
    "bake F3": ["bake", "F3"],
    "cold oven": ["bake", "F1", "--oven", "90 C"],
    "hot oven": ["bake", "F1", "--oven", "320 C"],
    "low oven": ["bake", "F1", "--oven", "100 C"],
    "rim": ["bake", "F1", "--tin", "round 10 x 4 cm"],
    "bare oven": ["bake", "F1", "--oven", "160"],
    "high": ["bake", "F1", "--altitude", "2000"],
    "twelve": ["plan", "twelve.txt"],
    "cost T1": ["cost", "T1", "--price", "96"],
    "cost 101": ["cost", "101"],
    "held": ["sheet", "101", "--out", "held"],
    "stopped": ["sheet", "102", "--out", "stopped"],
    "label 101": ["label", "101"],
}  # fmt: skip


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder the calls are made in."""
    return tmp_path_factory.mktemp("worked")


@pytest.fixture(scope="module")
def said(many: Many, book: Path, folder: Path) -> dict[str, Said]:
    """Every call of this page, in one process."""
    (folder / "twelve.txt").write_text(TWELVE, encoding="utf-8")
    words = [[*call, "--json", "--book", str(book)] for call in CALLS.values()]
    return dict(zip(CALLS, many(words, cwd=folder), strict=True))


def _result(said: dict[str, Said], name: str, code: int = 0) -> dict[str, Any]:
    assert said[name].code == code, said[name].stdout[:2000] + said[name].stderr
    result: dict[str, Any] = said[name].answer["result"]
    return result


def test_a_vanilla_sponge_lies_inside_its_bands(said: dict[str, Said]) -> None:
    result = _result(said, "check F2")
    assert (result["total_g"], result["flour_g"]) == pytest.approx((519.0, 105))
    assert result["findings"] == []


def test_a_nut_sponge_is_judged_on_flour_and_nut(said: dict[str, Said]) -> None:
    result = _result(said, "check F4")
    assert "nut" in str(result["basis"])
    assert result["percent"]["egg"] == pytest.approx(154.8, abs=0.05)
    assert not any(finding["code"].startswith("egg") for finding in result["findings"])


def test_a_butter_sponge_counts_powder_and_binder(said: dict[str, Said]) -> None:
    result = _result(said, "check F6")
    found = json.dumps(result["percent"]) + json.dumps(result["bands"])
    values = [v for v in result["percent"].values() if isinstance(v, int | float)]
    assert any(v == pytest.approx(3.2, abs=0.05) for v in values), found
    assert any(v == pytest.approx(0.27, abs=0.005) for v in values), found


def test_a_roll_of_a_sponge_without_xanthan_is_told_its_grams(said: dict[str, Said]) -> None:
    result = _result(said, "roll of F2")
    assert result["wanted_factor"] == pytest.approx(0.768, abs=0.0005)
    words = json.dumps([said["roll of F2"].answer["notices"], result["options"][0]])
    assert "xanthan" in words
    assert "0.25" in words
    assert "0.42" in words


@pytest.mark.parametrize(
    ("name", "core", "loss"), [("F1", 95, 11.1), ("F4", 96, 10.9), ("F5", 97, 11.1)]
)
def test_the_core_written_in_a_formula_is_the_rule(
    said: dict[str, Said], name: str, core: float, loss: float
) -> None:
    result = _result(said, f"bake {name}")
    assert result["core_c"] == core
    assert result["planned_loss_pct"] == pytest.approx(loss, abs=0.05)
    assert result["loss_pct"]["low"] < result["loss_pct"]["best"] < result["loss_pct"]["high"]
    assert 0 < result["check_from_min"] <= result["minutes"]["best"]


def test_a_formula_without_a_core_is_five_below_boiling(said: dict[str, Said]) -> None:
    result = _result(said, "bake F3")
    assert result["core_c"] == pytest.approx(result["boiling_c"] - 5, abs=0.11)


@pytest.mark.parametrize("name", ["cold oven", "hot oven", "low oven", "rim"])
def test_no_minutes_are_given_where_there_is_no_answer(said: dict[str, Said], name: str) -> None:
    result = _result(said, name, 4)
    problems = said[name].answer["problems"]
    assert result.get("minutes") is None
    assert problems
    assert all(problem["ask"] and problem["where"] for problem in problems)
    assert said[name].answer["ok"] is False


def test_an_oven_without_a_unit_is_asked_with_both(said: dict[str, Said]) -> None:
    _result(said, "bare oven", 3)
    (problem,) = said["bare oven"].answer["problems"]
    assert {option["line"] for option in problem["options"]} == {"160 C", "160 F"}


def test_a_high_kitchen_bakes_to_a_lower_core(said: dict[str, Said]) -> None:
    high, low = _result(said, "high"), _result(said, "bake F1")
    assert high["boiling_c"] < low["boiling_c"] - 6
    assert high["core_c"] < low["core_c"]


def test_twelve_tortes_do_not_fit_the_fridge_and_would_be_baked_in_time(
    said: dict[str, Said],
) -> None:
    result = _result(said, "twelve", 4)
    words = json.dumps(said["twelve"].answer["problems"], ensure_ascii=False)
    assert "8 of 12" in words
    assert "fridge" in words
    assert result["fridge"] == {"takes": 12, "places": 8}
    assert len(result["ways_out"]) >= 3
    assert len(result["loads"]) == 6
    last = max(local_time(load["out"]) for load in result["loads"])
    assert (last.day, (last.hour, last.minute) <= (13, 34)) == (10, True)
    assert all(load["cycle_min"] == 45 for load in result["loads"])
    assert all(load["foam_waits_min"] <= 10 for load in result["loads"])


def test_a_torte_costs_its_worked_heads(said: dict[str, Said]) -> None:
    worked = {
        "material": 6.76, "labour": 52.80, "energy": 0.61, "packaging": 2.46, "direct": 62.63,
        "full": 88.46, "price_for_margin": 126.37, "break_even": 19, "break_even_unpaid": 8,
        "per_slice": 6.86,
    }  # fmt: skip
    result = _result(said, "cost T1")
    assert {key: result[key] for key in worked} == pytest.approx(worked, abs=0.005)
    assert result["margin_pct"] == pytest.approx(7.9, abs=0.05)


def test_the_price_agreed_in_an_order_is_the_one_judged(said: dict[str, Said]) -> None:
    assert _result(said, "cost 101")["price"] == pytest.approx(96)


def test_a_held_order_is_printed_and_every_sheet_carries_the_hold(
    said: dict[str, Said], folder: Path
) -> None:
    result = _result(said, "held")
    (held,) = result["held"]
    assert "L-008" in held["text"] + held["opens"]
    assert "coeliac" in held["text"]
    assert "L-008" in held["opens"]
    pages = [Path(file["path"]) for file in result["files"] if file["path"].endswith(".html")]
    assert len(pages) >= 5
    for page in pages:
        text = page.read_text(encoding="utf-8")
        assert "HELD" in text, page.name
        assert "L-008" in text, page.name
    assert {file["kind"] for file in result["files"]} >= {
        "bench-card", "torte-plan", "order-sheet"
    }  # fmt: skip
    assert all(Path(f["path"]).is_file() for f in result["files"])
    assert all(Path(f["path"]).is_relative_to(folder) for f in result["files"])


def test_half_a_batch_of_custard_is_weighed_for_one_torte(said: dict[str, Said]) -> None:
    result = _result(said, "held")
    cards = [f["path"] for f in result["files"] if f["kind"] == "bench-card" and f["of"] == "C1"]
    (page,) = [Path(path) for path in cards if path.endswith(".json")]
    assert "470.75" in page.read_text(encoding="utf-8")


def test_the_held_order_has_no_gluten_sentence(said: dict[str, Said]) -> None:
    gluten = _result(said, "label 101")["gluten"]
    assert gluten["claim_allowed"] is False
    assert "L-008" in gluten["missing"]
    assert "room: cleaning record" in gluten["missing"]


def test_a_contradiction_stops_the_sheets_and_writes_nothing(
    said: dict[str, Said], folder: Path
) -> None:
    result = _result(said, "stopped", 3)
    (problem,) = said["stopped"].answer["problems"]
    words = problem["ask"].casefold()
    assert all(word in words for word in ("no nuts", "t3", "walnut", "hazelnut"))
    assert problem["options"]
    assert result.get("files", []) == []
    assert not (folder / "stopped").exists()


def test_an_option_of_the_contradiction_answers_it(
    said: dict[str, Said], many: Many, book: Path, folder: Path
) -> None:
    (problem,) = said["stopped"].answer["problems"]
    for number, option in enumerate(problem["options"]):
        answer = f"{problem['where']}={option['line']}"
        out = f"answered-{number}"
        words = ["sheet", "102", "--out", out, "--answer", answer, "--json", "--book", str(book)]
        (again,) = many([words], cwd=folder)
        assert again.code == 0, again.stdout + again.stderr
        assert (folder / out).is_dir()
