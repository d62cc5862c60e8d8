"""Every command: one JSON object, its schema, its keys, its units, its sources."""

import json
from itertools import pairwise
from typing import Any

import jsonschema
import pytest

from tests.contract.conftest import Ask, Many, Said
from tests.contract.shape import local_time, misfits, only_object, values

COMMANDS: dict[str, tuple[list[str], set[str]]] = {
    "read": (["read", "F5"], {"name", "family", "lines", "tin", "oven", "steps"}),
    "check": (
        ["check", "F2"],
        {"family", "basis", "total_g", "flour_g", "percent", "findings"},
    ),
    "size": (["size", "F2", "--tin", "round 8in x 3in"], {"factor", "options"}),
    "bake": (
        ["bake", "F1"],
        {"minutes", "check_from_min", "done_by", "core_c", "depth_cm", "loss_pct", "curve"},
    ),
    "build": (
        ["build", "T1"],
        {"height_mm", "mass_g", "layers", "cream_g", "syrup_g", "slices"},
    ),
    "keep": (["keep", "T1"], {"cold_hours", "room_hours", "reasons", "cautions"}),
    "plan": (["plan", "101"], {"tasks", "last_out", "proven", "tightest"}),
    "label": (
        ["label", "T3", "--market", "us"],
        {"ingredients", "contains", "nutrition", "gluten", "unknown"},
    ),
    "cost": (
        ["cost", "T1", "--price", "96"],
        {
            "material", "labour", "energy", "packaging", "direct", "full", "per_slice",
            "price_for_margin", "margin_pct", "break_even",
        },
    ),
    "calc": (["calc", "bloom", "mass=8", "from=200", "to=160"], {"by_root_g", "by_ratio_g"}),
}  # fmt: skip
SCHEMAS = (*COMMANDS, "sheet", "book")


@pytest.fixture(scope="module")
def answers(many: Many, book: Any) -> dict[str, Said]:
    """One answer of every command on the demo book."""
    calls = [[*words, "--json", "--book", str(book)] for words, _ in COMMANDS.values()]
    return dict(zip(COMMANDS, many(calls), strict=True))


@pytest.fixture(scope="module")
def schemas(many: Many) -> dict[str, Any]:
    """The schema of every command, as `krume schema` prints it."""
    said = many([["schema", name] for name in SCHEMAS])
    return {name: json.loads(one.stdout) for name, one in zip(SCHEMAS, said, strict=True)}


@pytest.mark.parametrize("name", COMMANDS)
def test_stdout_is_one_object_with_the_contracts_keys(answers: dict[str, Said], name: str) -> None:
    said = answers[name]
    envelope = only_object(said.stdout)
    assert said.code == 0, said.stdout
    assert said.stderr == ""
    assert envelope["krume"] == 1
    assert envelope["command"] == name
    assert envelope["ok"] is True
    assert envelope["problems"] == []
    assert envelope["result"].keys() >= COMMANDS[name][1]


@pytest.mark.parametrize("name", COMMANDS)
def test_an_answer_names_its_sources_and_its_versions(answers: dict[str, Said], name: str) -> None:
    envelope = answers[name].answer
    assert envelope["sources"]
    assert all(isinstance(source, str) and source for source in envelope["sources"])
    assert "krume" in envelope["made_by"]
    assert "data" in envelope["made_by"]


@pytest.mark.parametrize("name", COMMANDS)
def test_numbers_are_numbers_in_the_unit_of_their_key(answers: dict[str, Said], name: str) -> None:
    assert misfits(answers[name].answer["result"]) == []


@pytest.mark.parametrize("name", COMMANDS)
def test_an_answer_fits_the_schema_the_program_prints(
    answers: dict[str, Said], schemas: dict[str, Any], name: str
) -> None:
    schema = schemas[name]
    jsonschema.Draft202012Validator.check_schema(schema)
    jsonschema.validate(answers[name].answer, schema)


@pytest.mark.parametrize("name", [name for name in COMMANDS if name != "calc"])
def test_the_schema_refuses_a_result_without_a_contracts_key(
    answers: dict[str, Said], schemas: dict[str, Any], name: str
) -> None:
    for key in COMMANDS[name][1]:
        envelope = answers[name].answer
        del envelope["result"][key]
        with pytest.raises(jsonschema.ValidationError):
            jsonschema.validate(envelope, schemas[name])


def test_a_line_of_a_formula_carries_the_contracts_keys(answers: dict[str, Said]) -> None:
    for line in answers["read"].answer["result"]["lines"]:
        assert line.keys() >= {"read", "amount", "unit", "mass_g", "basis", "ingredient", "part"}
        assert isinstance(line["amount"], int | float)


def test_intervals_have_three_ordered_values(answers: dict[str, Said]) -> None:
    result = answers["bake"].answer["result"]
    for key in ("minutes", "loss_pct"):
        assert result[key]["low"] < result[key]["best"] < result[key]["high"]
    keep = answers["keep"].answer["result"]
    assert keep["cold_hours"]["low"] < keep["cold_hours"]["high"]


def test_the_curve_rises_to_the_core_rule(answers: dict[str, Said]) -> None:
    result = answers["bake"].answer["result"]
    curve = result["curve"]
    assert len(curve["time_min"]) == len(curve["core_c"]) == len(curve["top_c"]) > 10
    assert curve["time_min"] == sorted(curve["time_min"])
    assert curve["core_c"][0] < result["core_c"] < max(curve["core_c"])


def test_times_of_a_plan_carry_the_books_offset_and_run_forward(answers: dict[str, Said]) -> None:
    result = answers["plan"].answer["result"]
    for task in result["tasks"]:
        start, end = local_time(task["start"]), local_time(task["end"])
        assert start.strftime("%z") == "+0200"
        assert start <= end
        assert task.keys() >= {"name", "start", "end", "who", "uses"}
    assert local_time(result["last_out"]) <= max(local_time(t["end"]) for t in result["tasks"])
    assert isinstance(result["proven"], bool)


def test_one_pair_of_hands_is_never_in_two_places(answers: dict[str, Said]) -> None:
    tasks = answers["plan"].answer["result"]["tasks"]
    busy = sorted(
        (local_time(task["start"]), local_time(task["end"])) for task in tasks if task["who"]
    )
    assert len(busy) > 3
    assert all(before[1] <= after[0] for before, after in pairwise(busy))


def test_no_answer_carries_a_number_written_as_text(answers: dict[str, Said]) -> None:
    money = answers["cost"].answer["result"]
    for key in ("material", "labour", "energy", "packaging", "direct", "full", "per_slice"):
        assert isinstance(money[key], int | float)
    assert not [v for _, v in values(money) if isinstance(v, str) and v.lower() in {"nan", "inf"}]


def test_every_command_takes_answers_a_day_and_a_book(many: Many, book: Any) -> None:
    commands = [words for words, _ in COMMANDS.values()]
    more = ["--json", "--book", str(book)]
    for said in many([[*words, *more, "--on", "2027-06-11"] for words in commands]):
        assert said.code == 0, said.stdout + said.stderr
    for said in many([[*words, *more, "--on", "June the eleventh"] for words in commands]):
        assert said.code in (2, 3), said.stdout
        assert "Traceback" not in said.stderr


def test_the_environment_names_the_book(ask: Ask, book: Any, monkeypatch: Any) -> None:
    from tests.contract.conftest import run

    monkeypatch.setenv("KRUME_BOOK", str(book))
    done = run("check", "F2", "--json")
    assert done.returncode == 0
    assert only_object(done.stdout) == ask("check", "F2")[1]
