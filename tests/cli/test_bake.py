"""`krume bake`: minutes as an interval, the rule that came last, and refusals."""

from pathlib import Path

import pytest

from tests.cli.conftest import Run

_BATH = """Bath cake
Family: butter
Tin: round 18 x 7 cm
Oven: 165 C
Core: 80 C

100 g sugar
100 g butter
100 g eggs
100 g white rice flour

1. Bake in a water bath 40 minutes.
"""


@pytest.mark.parametrize("columns", [40, 80])
def test_the_first_thing_said_is_when_to_start_checking(run: Run, columns: int) -> None:
    said = run("bake", "F1", columns=columns)
    assert said.code == 0
    words = " ".join(said.out.split())
    assert "Start checking at 25 min." in words
    assert "The formula's own minutes: 34–40." in words
    assert "the formula plans 11.1 %" in words
    assert "Turn the dial to 182 °C" in words
    assert max(len(line) for line in said.out.splitlines()) <= columns


@pytest.mark.parametrize(("name", "core_c"), [("F1", 95.0), ("F4", 96.0), ("F5", 97.0)])
def test_a_core_the_formula_states_is_the_rule(run: Run, name: str, core_c: float) -> None:
    result = run("bake", name, "--json").json["result"]
    assert result["core_c"] == core_c
    minutes = result["minutes"]
    assert minutes["low"] < minutes["best"] < minutes["high"]
    assert result["check_from_min"] == minutes["low"]
    assert result["done_by"] in ("core", "set", "colour")
    loss = result["loss_pct"]
    assert loss["low"] < result["planned_loss_pct"] < loss["high"]
    curve = result["curve"]
    assert len(curve["time_min"]) == len(curve["core_c"]) == len(curve["top_c"]) > 20


def test_where_no_core_is_written_it_is_five_kelvin_under_boiling(run: Run) -> None:
    result = run("bake", "F3", "--json").json["result"]
    assert result["boiling_c"] - result["core_c"] == pytest.approx(5.0, abs=0.11)


def test_an_oven_without_a_unit_is_asked_and_the_answer_bakes(run: Run) -> None:
    words = ("bake", "F4", "--oven", "170", "--json")
    said = run(*words)
    assert said.code == 3
    (problem,) = said.json["problems"]
    assert problem["where"] == "--oven" and problem["options"]
    assert run(*words, "--answer", f"--oven={problem['options'][0]['line']}").code == 0


@pytest.mark.parametrize(
    ("words", "name"),
    [
        (("--tin", "round 15 x 3 cm"), "tin height"),
        (("--oven", "320 C"), "oven"),
        (("--oven", "90 C"), "oven"),
        (("--oven", "101 C"), "time"),
    ],
)
def test_what_forbids_minutes_is_named_and_no_minutes_are_given(
    run: Run, words: tuple[str, ...], name: str
) -> None:
    said = run("bake", "F1", *words, "--json")
    assert said.code == 4
    assert name in said.json["problems"][0]["read"]
    assert said.json["result"]["minutes"] is None
    assert said.json["result"]["check_from_min"] is None


def test_the_fan_and_a_dark_tin_bake_sooner_and_altitude_moves_the_core(run: Run) -> None:
    plain = run("bake", "F6", "--json").json["result"]
    fan = run("bake", "F6", "--fan", "--json").json["result"]
    dark = run("bake", "F6", "--tin", "dark round 18 x 7 cm", "--json").json["result"]
    high = run("bake", "F6", "--altitude", "1600", "--json").json["result"]
    assert fan["minutes"]["best"] < plain["minutes"]["best"] > dark["minutes"]["best"]
    assert high["core_c"] < plain["core_c"]


@pytest.mark.parametrize("name", ["F7", "C1", "S1"])
def test_what_is_no_batter_gets_no_minutes(run: Run, name: str) -> None:
    said = run("bake", name, "--json")
    assert said.code == 4
    assert "not-a-batter" in {problem["code"] for problem in said.json["problems"]}


def test_an_oven_the_book_does_not_name_is_asked(run: Run) -> None:
    said = run("bake", "F1", "--oven-name", "nowhere", "--json")
    assert said.code == 3
    (problem,) = said.json["problems"]
    assert problem["where"] == "--oven-name" and "deck" in problem["ask"]
    assert run("bake", "F1", "--oven-name", "Deck").code == 0


def test_a_refusal_sets_no_dial(run: Run) -> None:
    assert run("bake", "F1", "--oven", "90 C", "--json").json["result"]["dial"] is None
    assert run("bake", "F7", "--json").json["result"]["dial"] is None


def test_the_middle_of_the_draws_and_the_likeliest_bake_are_told_apart(run: Run) -> None:
    said = run("bake", "F6", "--altitude", "1600")
    result = run("bake", "F6", "--altitude", "1600", "--json").json["result"]
    words = " ".join(said.out.split())
    rules = result["rules"]
    done = max(rules["core_min"], rules["set_min"], rules["colour_min"])
    assert f"Middle of the draws {result['minutes']['best']:.0f} min; set comes last." in words
    assert "The likeliest bake by itself, every figure at its usual value:" in words
    assert f"{done:g} min to set" in words
    assert f" at {done:g} min" in words[words.index("The top of the likeliest bake") :]
    assert "ost likely" not in words


def test_a_limit_is_told_in_words_and_its_oven_is_not_rounded(run: Run) -> None:
    said = run("bake", "F1", "--oven", "99.9 C")
    assert said.code == 4
    assert "An oven of 99.9 °C is not known to the model." in said.out
    assert "Oven 99.9 °C, no fan." in said.out
    assert " is needed" not in said.out
    low = run("bake", "F1", "--oven", "110 C")
    words = " ".join(low.out.split())
    assert low.code == 4
    assert "More than a tenth of the draws are never done" in words and "is needed" not in words


def test_a_core_moved_by_altitude_is_a_notice(run: Run) -> None:
    codes = [n["code"] for n in run("bake", "F1", "--altitude", "1600", "--json").json["notices"]]
    assert "core-moved" in codes
    assert "core-moved" not in [n["code"] for n in run("bake", "F1", "--json").json["notices"]]


def test_a_text_that_bakes_in_water_is_refused_until_the_water_is_named(
    run: Run, tmp_path: Path
) -> None:
    file = tmp_path / "bath.txt"
    file.write_text(_BATH, encoding="utf-8")
    said = run("bake", str(file), "--json")
    assert said.code == 4 and said.json["result"]["minutes"] is None
    (problem,) = said.json["problems"]
    assert problem["code"] == "baked-water" and problem["where"] == "line 12"
    again = run("bake", str(file), "--jacket", "water", "--json")
    assert again.code == 0 and "jacket-water" in [n["code"] for n in again.json["notices"]]


@pytest.mark.parametrize("columns", [40, 80])
def test_every_line_is_told_with_its_minutes_and_height(run: Run, columns: int) -> None:
    said = run("bake", "F3", "--lines", columns=columns)
    assert said.code == 0
    table = said.out[said.out.index("Every line") :]
    assert "eggs" in table
    assert "fine salt" in table
    assert "the oven ± 2.7 °C" in " ".join(table.split())
    assert max(len(line) for line in said.out.splitlines()) <= columns
    assert "Every line" not in run("bake", "F3", columns=columns).out


@pytest.mark.parametrize("columns", [40, 80])
def test_a_second_tin_is_told_with_its_difference(run: Run, columns: int) -> None:
    said = run("bake", "F1", "--beside", "dark round 20 x 7 cm", columns=columns)
    assert said.code == 0
    words = " ".join(said.out.split())
    assert "Beside it: dark round 20 x 7 cm, 170 °C" in words
    assert "The dark tin is ready " in words
    assert " min sooner." in words
    assert max(len(line) for line in said.out.splitlines()) <= columns


def test_the_json_carries_what_stands_beside_a_bake_and_the_schema_knows_it(run: Run) -> None:
    said = run("bake", "F1", "--beside", "round 26 cm dark", "--under", "tray", "--json")
    result = said.json["result"]
    assert result["around"]["under"] == "tray"
    assert result["around"]["text"] == "On a tray."
    sooner = result["beside"]["sooner_min"]
    assert sooner["low"] <= sooner["best"] <= sooner["high"]
    assert [top["which"] for top in result["tops"]] == ["check from", "most likely", "latest"]
    assert result["cooling"] is None and result["unknowns"] == []
    known = run("schema", "bake", "--json").out
    for name in ("around", "beside", "unknowns", "cooling", "tops", "picture"):
        assert f'"{name}"' in known


def test_a_picture_is_written_where_it_was_asked_for(run: Run, tmp_path: Path) -> None:
    to = tmp_path / "f1.svg"
    said = run("bake", "F1", "--picture", str(to), "--json")
    assert said.code == 0
    assert said.json["result"]["picture"] == str(to)
    assert to.read_text(encoding="utf-8").startswith("<svg ")


def test_a_picture_that_cannot_be_written_says_where_and_changes_nothing(
    run: Run, tmp_path: Path
) -> None:
    blocked = tmp_path / "not-a-folder"
    blocked.write_text("mine", encoding="utf-8")
    said = run("bake", "F1", "--picture", str(blocked / "f1.svg"), "--json")
    assert said.code == 5
    assert [each.name for each in tmp_path.iterdir()] == ["not-a-folder"]
    assert run("bake", "F1", "--picture", str(tmp_path / "f1.png")).code == 3


@pytest.mark.parametrize(
    ("words", "where"),
    [
        (("--jacket", "foil"), "--jacket"),
        (("--rack", "top"), "--rack"),
        (("--jacket", "water", "--under", "stone"), "--under"),
        (("--cold-start", "180"), "--cold-start"),
        (("--door", "150"), "--door"),
        (("--beside", "round 20 cm"), "--beside"),
    ],
)
def test_what_does_not_go_together_is_asked_at_its_option(
    run: Run, words: tuple[str, ...], where: str
) -> None:
    said = run("bake", "F1", *words, "--json")
    assert said.code == 3
    assert [problem["where"] for problem in said.json["problems"]] == [where]


def test_the_doubt_is_told_part_by_part(run: Run) -> None:
    said = run("bake", "F1", "--doubt", columns=80)
    table = said.out[said.out.index("What makes the doubt") :]
    assert "How strongly this oven heats." in table
    assert "then " in table
