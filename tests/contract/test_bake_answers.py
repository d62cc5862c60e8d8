"""What `bake` and its neighbours answer: fields, exit codes, questions and plain nonsense."""

import json
import math
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from tests.contract.conftest import Many, Said
from tests.contract.shape import misfits, only_object

# Depth, the formula's own core, and the planned loss of each formula.
DEMO: dict[str, tuple[float, float | None, float]] = {
    "F1": (3.59, 95, 11.1), "F2": (3.44, 95, 11.0), "F3": (1.10, None, 10.1),
    "F4": (2.75, 96, 10.9), "F5": (3.87, 97, 11.1), "F6": (2.98, 97, 10.1),
}  # fmt: skip
LINES = (
    "50 g buckwheat flour\n12 g white rice flour\n34 g potato starch\n8 g sweet rice flour\n"
    "5 eggs, medium, separated\n135 g caster sugar\n"
)
TEXT = (
    "Plain sponge\nTin: {tin}\n{oven}\nFamily: separated\nEggs: EU sizes\n{more}\n{lines}\n"
    "Whisk and fold.\n{bake}\n"
)
TEXTS: dict[str, dict[str, str]] = {
    "pair.txt": {"oven": "Oven: 315 F (165 C)"},
    "near.txt": {"oven": "Oven: 350F/180C"},
    "bare.txt": {"oven": "Oven: 165"},
    "none.txt": {"oven": ""},
    "step.txt": {
        "oven": "",
        "bake": "Bake at 315 F (165 C) for 30 minutes.\nDone at a core of 95 C.",
    },
    "heavy.txt": {"lines": "3000 g white rice flour\n3500 g caster sugar\n3500 g water\n"},
    "light.txt": {"lines": "0.4 g white rice flour\n0.2 g caster sugar\n0.4 g water\n"},
    "gram.txt": {"lines": "1 g caster sugar\n"},
    "nothing.txt": {"lines": "0 g white rice flour\n"},
    "oil.txt": {"lines": "200 g sunflower oil\n"},
    "nan.txt": {"lines": "NaN g caster sugar\n100 g white rice flour\n"},
    "minus.txt": {"lines": "-50 g caster sugar\n100 g white rice flour\n"},
    "thick.txt": {"more": "Density: 480 g/ml\n"},
    "airy.txt": {"more": "Density: 0.02 g/ml\n"},
    "massless.txt": {"more": "Density: 0 g/ml\n"},
    "below.txt": {"more": "Density: -1 g/ml\n"},
    "nan-density.txt": {"more": "Density: nan g/ml\n"},
    "per-litre.txt": {"more": "Density: 480 g/l\n"},
    "frozen.txt": {"bake": "Bake from frozen at -18 C for 40 minutes, core 95 C."},
    "bath.txt": {"bake": "Bake in a water bath for 40 minutes, core 95 C."},
    "steam.txt": {"bake": "Steam for 40 minutes."},
    "fahrenheit.txt": {"bake": "Bake 30 to 34 minutes, core 200 F."},
    "boiling.txt": {"bake": "Bake 30 to 34 minutes, core 100.5 C."},
}
REFUSED = {
    "cold": ["F1", "--oven", "95 C"], "cool": ["F1", "--oven", "99 C"],
    "hot": ["F1", "--oven", "301 C"], "hotter": ["F1", "--oven", "400 C"],
    "hot in F": ["F1", "--oven", "580 F"], "never": ["F1", "--oven", "100 C"],
    "late": ["F1", "--oven", "110 C"], "rim": ["F1", "--tin", "round 14 x 4 cm"],
    "rim of a loaf": ["F6", "--tin", "loaf 10x6x4 cm"], "ten kilos": ["heavy.txt"],
    "tart": ["F7"], "cream": ["C1"], "syrup": ["S1"],
    "frozen": ["frozen.txt"], "bath": ["bath.txt"], "steam": ["steam.txt"],
    "water": ["F1", "--jacket", "water"],
}  # fmt: skip
ASKED = {
    "no unit": ["F1", "--oven", "165"], "no unit in the text": ["bare.txt"],
    "no oven": ["none.txt"], "words": ["F1", "--oven", "hot"], "zero": ["F1", "--oven", "0 C"],
    "infinite": ["F1", "--oven", "inf C"], "no such oven": ["F1", "--oven-name", "nosuch"],
    "flat tin": ["F1", "--tin", "round 20 x 0 cm"], "nan tin": ["F1", "--tin", "round nan x 7 cm"],
    "huge tin": ["F1", "--tin", "round 2000 x 7 cm"], "two °": ["pair.txt"], "step": ["step.txt"],
    "high": ["F1", "--altitude", "6000"], "deep": ["F1", "--altitude", "-1000"],
    "higher": ["F1", "--altitude", "1e308"], "one gram": ["gram.txt"], "nothing": ["nothing.txt"],
    "oil": ["oil.txt"], "nan": ["nan.txt"], "minus": ["minus.txt"], "thick": ["thick.txt"],
    "massless": ["massless.txt"], "below": ["below.txt"], "nan density": ["nan-density.txt"],
    "airy": ["airy.txt"], "torte": ["T1"], "no such": ["nosuch"],
    "late door": ["F1", "--door", "1e9"], "early door": ["F1", "--door", "-3"],
    "cold start": ["F1", "--cold-start", "-300"], "jacket": ["F1", "--jacket", "steam"],
}  # fmt: skip
BAKED = {
    **{name: [name] for name in DEMO},
    "F1 fan": ["F1", "--fan"], "F1 fan text": ["F1", "--oven", "fan 170 C"],
    "F1 dark": ["F1", "--tin", "dark round 20 x 7 cm"],
    "F1 wide": ["F1", "--tin", "round 24 x 7 cm"], "F1 185": ["F1", "--oven", "185 C"],
    "F1 338 F": ["F1", "--oven", "338 F"], "F1 high": ["F1", "--altitude", "1600"],
    "F1 120": ["F1", "--oven", "120 C"], "F1 300": ["F1", "--oven", "300 C"],
    "F1 cold start": ["F1", "--cold-start", "20"], "F1 deck": ["F1", "--oven-name", "deck"],
    "F1 wrapped": ["F1", "--jacket", "wrapped"], "near": ["near.txt"],
    "per litre": ["per-litre.txt"], "200 F": ["fahrenheit.txt"], "100.5": ["boiling.txt"],
}  # fmt: skip
USAGE = (
    "--altitude nan", "--altitude inf", "--door nan", "--door inf", "--cold-start nan",
    "--altitude high", "--door early",
)  # fmt: skip
LOADS = {
    "one": ["F1"], "two": ["2 F1"], "close": ["2 F1", "--gap", "0"],
    "apart": ["2 F1", "--gap", "40"], "after": ["F1", "F6 @60"], "mixed": ["F1", "F6"],
    "three": ["3 F1"], "cold": ["F1", "--oven", "95 C"], "minus": ["F1 @-5"], "none": ["0 F1"],
}  # fmt: skip


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder with the texts of this page."""
    folder = tmp_path_factory.mktemp("texts")
    plain = {
        "tin": "round 20 x 7 cm", "oven": "Oven: 170 C, no fan", "more": "",
        "lines": LINES, "bake": "Bake 34 to 40 minutes, core 95 C.",
    }  # fmt: skip
    for name, changed in TEXTS.items():
        (folder / name).write_text(TEXT.format(**{**plain, **changed}), encoding="utf-8")
    return folder


@pytest.fixture(scope="module")
def said(many: Many, book: Path, folder: Path) -> dict[str, Said]:
    """Every call of this page, in one process."""
    calls = {key: ["bake", *words] for key, words in (REFUSED | ASKED | BAKED).items()}
    calls |= {f"load {key}": ["load", *words] for key, words in LOADS.items()}
    words = [[*call, "--json", "--book", str(book)] for call in calls.values()]
    answers = many([*words, ["schema", "bake"], ["schema", "load"]], cwd=folder)
    return dict(zip([*calls, "schema bake", "schema load"], answers, strict=True))


def _result(said: dict[str, Said], key: str, code: int = 0) -> dict[str, Any]:
    one = said[key]
    assert one.code == code, one.stdout + one.stderr
    assert "Traceback" not in one.stderr
    answer = only_object(one.stdout)
    assert answer["ok"] is (code == 0)
    assert bool(answer["problems"]) is (code != 0)
    result: dict[str, Any] = answer["result"]
    assert misfits(result) == []
    kind = "load" if key.startswith("load ") else "bake"
    jsonschema.validate(answer, json.loads(said[f"schema {kind}"].stdout))
    return result


@pytest.mark.parametrize("key", BAKED)
def test_a_bake_answers_with_all_its_fields(said: dict[str, Said], key: str) -> None:
    result = _result(said, key)
    minutes, loss, curve = result["minutes"], result["loss_pct"], result["curve"]
    assert 0 < minutes["low"] < minutes["best"] < minutes["high"] < 200
    assert minutes["low"] == int(minutes["low"])
    assert minutes["high"] == int(minutes["high"])
    assert result["check_from_min"] == minutes["low"]
    assert result["done_by"] in ("core", "set", "colour")
    assert 0 < loss["low"] < loss["best"] < loss["high"] < 100
    assert len(curve["time_min"]) == len(curve["core_c"]) == len(curve["top_c"]) > 10
    assert curve["time_min"] == sorted(curve["time_min"])
    assert curve["core_c"][0] == pytest.approx(21, abs=3)
    assert curve["core_c"] == pytest.approx(sorted(curve["core_c"]), abs=0.3)
    assert max(curve["core_c"]) <= result["boiling_c"] + 0.1
    assert max(curve["top_c"]) < result["oven_c"]
    assert curve["time_min"][-1] == pytest.approx(minutes["best"], rel=0.1)


@pytest.mark.parametrize("name", DEMO)
def test_a_formula_of_the_studio_has_its_own_core_and_depth(
    said: dict[str, Said], name: str
) -> None:
    depth, core, loss = DEMO[name]
    result = _result(said, name)
    assert result["depth_cm"] == pytest.approx(depth, abs=0.006)
    assert result["planned_loss_pct"] == pytest.approx(loss, abs=0.06)
    expected = core if core is not None else result["boiling_c"] - 5
    assert result["core_c"] == pytest.approx(expected, abs=0.11)
    sentences = [n["text"] for n in said[name].answer["notices"]]
    assert any("skewer" in text and "food-safety" in text for text in sentences)


@pytest.mark.parametrize("key", REFUSED)
def test_no_minutes_stand_beside_a_refusal(said: dict[str, Said], key: str) -> None:
    result = _result(said, key, 4)
    _has_no_minutes(result)
    assert all(len(problem["ask"].split()) > 5 for problem in said[key].answer["problems"])


@pytest.mark.parametrize("key", ASKED)
def test_no_minutes_stand_beside_a_question(said: dict[str, Said], key: str) -> None:
    result = _result(said, key, 3)
    _has_no_minutes(result)
    for problem in said[key].answer["problems"]:
        assert len(problem["ask"].split()) > 4
        assert "!" not in problem["ask"]


def test_an_option_that_is_no_number_is_wrong_usage(many: Many, book: Path) -> None:
    calls = [["bake", "F1", *words.split()] for words in USAGE]
    for words, one in zip(USAGE, many([[*c, "--book", str(book)] for c in calls]), strict=True):
        assert one.code == 2, words
        assert words.split()[0] in one.stderr
        assert "Traceback" not in one.stderr


def _has_no_minutes(result: dict[str, Any]) -> None:
    for key in ("minutes", "check_from_min", "loss_pct", "done_by", "curve", "rules"):
        assert result.get(key) is None, key


@pytest.mark.parametrize(
    ("key", "words"),
    [("cold", "95 °C"), ("hot", "301 °C"), ("hot in F", "304 °C"), ("rim", "7.3 cm"),
     ("rim", "4 cm"), ("rim", "295 g"), ("never", "core"), ("tart", "tart base")],
)  # fmt: skip
def test_a_refusal_names_its_limit(said: dict[str, Said], key: str, words: str) -> None:
    assert words in " ".join(p["ask"] for p in said[key].answer["problems"])


@pytest.mark.parametrize(("key", "place"), [("two °", "line 3"), ("step", "line 15")])
def test_two_temperatures_of_one_line_are_asked_with_what_each_does(
    said: dict[str, Said], many: Many, book: Path, folder: Path, key: str, place: str
) -> None:
    (problem,) = said[key].answer["problems"]
    assert problem["where"] == place
    for words in ("157", "165 °C", "329 °F", "7.8 °C", "min at"):
        assert words in problem["ask"]
    lines = [option["line"] for option in problem["options"]]
    assert len(lines) == 3
    file = (*ASKED[key], "--json", "--book", str(book))
    answers = many([["bake", *file, "--answer", f"{place}={line}"] for line in lines], cwd=folder)
    cooler, hotter, _ = answers
    assert cooler.code == hotter.code == 0, cooler.stdout
    assert cooler.answer["result"]["oven_c"] == pytest.approx(157.2, abs=0.05)
    assert hotter.answer["result"]["oven_c"] == 165
    best = [one.answer["result"]["minutes"]["best"] for one in (cooler, hotter)]
    assert best[0] > best[1] * 1.05


def test_an_oven_without_a_unit_offers_both(said: dict[str, Said]) -> None:
    (problem,) = said["no unit in the text"].answer["problems"]
    assert [option["line"] for option in problem["options"]] == ["Oven: 165 C", "Oven: 165 F"]


def test_a_name_that_is_no_oven_is_answered_with_those_there_are(said: dict[str, Said]) -> None:
    (problem,) = said["no such oven"].answer["problems"]
    assert "nosuch" in problem["ask"]
    assert "deck" in problem["ask"]


def test_the_bake_goes_the_way_that_bakers_know(said: dict[str, Said]) -> None:
    best = {key: _result(said, key)["minutes"]["best"] for key in BAKED}
    for sooner in ("F1 fan", "F1 dark", "F1 wide", "F1 185", "F1 300"):
        assert best[sooner] < 0.95 * best["F1"], sooner
    assert best["F1 120"] > 2 * best["F1"]
    assert best["F1 wrapped"] > best["F1"]
    assert best["F1 cold start"] > best["F1"]
    assert best["F1 338 F"] == pytest.approx(best["F1"], rel=0.005)
    assert best["F1 fan text"] == pytest.approx(best["F1 fan"], rel=0.005)
    assert best["F1 deck"] == best["F1"]


def test_a_core_moves_with_the_air_and_never_to_the_boil(said: dict[str, Said]) -> None:
    high, level, boiling = (_result(said, key) for key in ("F1 high", "F1", "100.5"))
    moved = level["boiling_c"] - high["boiling_c"]
    assert moved == pytest.approx(5.35, abs=0.1)
    assert level["core_c"] - high["core_c"] == pytest.approx(moved, abs=0.11)
    assert boiling["core_c"] == pytest.approx(boiling["boiling_c"] - 2, abs=0.11)
    assert _result(said, "200 F")["core_c"] == pytest.approx(93.3, abs=0.05)


def test_a_density_by_the_litre_is_the_same_density(said: dict[str, Said]) -> None:
    mass_g = 50 + 12 + 34 + 8 + 5 * 51 + 135
    depth = mass_g / 0.48 / (math.pi * 100)
    assert _result(said, "per litre")["depth_cm"] == pytest.approx(depth, abs=0.006)


def test_a_core_that_was_moved_or_capped_is_said(said: dict[str, Said]) -> None:
    for key, stated, taken in (("F1 high", "95 °C", "89.6 °C"), ("100.5", "100.5 °C", "99.1 °C")):
        notices = " ".join(n["text"] for n in said[key].answer["notices"])
        assert stated in notices
        assert taken in notices


def test_an_oven_never_compared_is_doubted_more(said: dict[str, Said]) -> None:
    for key in ("F1 120", "F1 300", "F5"):
        result = _result(said, key)
        assert result["discrepancy"] >= 0.25
    assert _result(said, "F1")["discrepancy"] == 0.12


def test_a_second_tin_takes_heat_and_a_later_one_none(said: dict[str, Said]) -> None:
    loads = {key: _result(said, f"load {key}")["loads"] for key in ("one", "two", "close", "apart")}
    alone = _result(said, "F1")["minutes"]
    (one,), (two,) = loads["one"], loads["two"]
    assert one["minutes"] == one["alone_min"] == two["alone_min"] == alone
    best = [loads[key][0]["minutes"]["best"] for key in ("one", "apart", "two", "close")]
    assert best == sorted(set(best))
    assert best[-1] < 1.5 * best[0]
    first, second = _result(said, "load after")["loads"]
    assert first["minutes"]["best"] == alone["best"]
    assert second["in_min"] == 60
    mixed = _result(said, "load mixed")
    assert mixed["last"] == 2
    assert all(load["minutes"]["best"] > load["alone_min"]["best"] for load in mixed["loads"])


@pytest.mark.parametrize(("key", "code"), [("three", 4), ("cold", 4), ("minus", 3), ("none", 3)])
def test_a_load_that_cannot_be_has_no_minutes(said: dict[str, Said], key: str, code: int) -> None:
    result = _result(said, f"load {key}", code)
    assert all(load["minutes"] is None for load in result.get("loads") or [])
    assert result.get("last") is None


def test_readings_of_a_cooling_cake_lie_between_newton_and_still_air(many: Many) -> None:
    line = "times=0,10 temps=90,60 room=20 goal=30"
    (one,) = many([["calc", "cool-down", *line.split(), "--json"]])
    newton = 10 * math.log(70 / 10) / math.log(70 / 40)
    still = 10 * (10**-0.25 - 70**-0.25) / (40**-0.25 - 70**-0.25)
    at = one.answer["result"]["at_min"]
    assert at["low"] == pytest.approx(newton, abs=0.06)
    assert at["high"] == pytest.approx(still, abs=0.06)
    assert at["low"] < at["best"] < at["high"]


def test_a_cake_cools_slower_than_a_lump_of_its_heat(many: Many) -> None:
    """A lump of the cake's mass whose faces lose 15 W/m²K, by its closed form, is the early end."""
    goals = (40, 30, 24)
    line = "diameter=20 height=5 mass=482 room=21 start=95"
    said = many(
        [["calc", "cake-cooling", *line.split(), f"goal={goal}", "--json"] for goal in goals]
    )
    area_m2 = 2 * math.pi * 0.1**2 + math.pi * 0.2 * 0.05
    for goal, one in zip(goals, said, strict=True):
        lump = 0.482 * 2700 / (15 * area_m2) * math.log(74 / (goal - 21)) / 60
        rack = one.answer["result"]["rack_min"]
        assert lump < rack["best"] < 5 * lump, goal
        assert rack["low"] < rack["best"] < rack["high"]
