"""Slips at the scale: each way out reckoned once more from the lines, and nothing taken back."""

import json
from collections.abc import Mapping
from itertools import product
from pathlib import Path
from random import Random
from typing import Any

import jsonschema
import pytest

from tests.contract.conftest import Many, Said
from tests.contract.invented import Sponge, sponge
from tests.contract.shape import misfits, only_object
from tests.contract.slip_ways import (
    BLEND,
    Line,
    figures,
    filled_up,
    held,
    left,
    lines_of,
    needed,
    outside,
    scaled,
    shift,
)

SEEDS = range(24)
SUGAR_EVERY = 4
GRAMS = 1e-6
DEMO = {
    "blend": (["F2"], {"white rice flour": 40.0, "teff flour": 26.0}),
    "sugar": (["F2"], {"caster sugar": 140.0}),
    "with sugar": (["F2", "--same-bowl", "sugar"], {"teff flour": 26.0}),
    "roulade": (["F3"], {"white rice flour": 26.0, "millet flour": 19.0}),
    "butter": (["F6"], {"caster sugar": 156.0}),
    "chiffon": (["F5"], {"white rice flour": 45.0}),
    "on its way": (["F2"], {"white rice flour": 15.0}),
}
HOSTILE = {
    "unknown name": ["F2", "--weighed", "fonio flour=12"],
    "two lines": ["F2", "--weighed", "starch=40"],
    "minus": ["F2", "--weighed", "teff=-4"],
    "nan": ["F2", "--weighed", "teff=nan"],
    "infinite": ["F2", "--weighed", "teff=inf"],
    "a thousand million": ["F2", "--weighed", "teff=1e9"],
    "no grams": ["F2", "--weighed", "teff="],
    "no name": ["F2", "--weighed", "=26"],
    "markup": ["F2", "--weighed", "<b>teff</b><script>=26"],
    "no such text": ["no-such-text", "--weighed", "teff=26"],
    "torte": ["T1", "--weighed", "teff=26"],
}


def _words(weighed: Mapping[str, float]) -> list[str]:
    return [word for name, grams in weighed.items() for word in ("--weighed", f"{name}={grams}")]


def _slip(seed: int, made: Sponge) -> dict[str, float]:
    """What lies in the bowl: sugar now and then, else the flours up to the one that slipped."""
    chance = Random(1000 + seed)  # noqa: S311
    names = list(made.blend)
    last = chance.randrange(len(names))
    if seed % SUGAR_EVERY == SUGAR_EVERY - 1:
        return {"caster sugar": round(made.sugar_g * chance.uniform(1.02, 1.4), 1)}
    weighed = {name: made.blend[name] for name in names[: last + 1]}
    weighed[names[last]] = round(weighed[names[last]] * chance.uniform(1.02, 1.6), 1)
    if seed % 5 == 0 and last:
        weighed[names[0]] = round(weighed[names[0]] * chance.uniform(1.02, 1.3), 1)
    return weighed


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder with the invented formulas."""
    folder = tmp_path_factory.mktemp("slips")
    for seed in SEEDS:
        (folder / f"{seed}.txt").write_text(sponge(seed).text, encoding="utf-8")
    return folder


@pytest.fixture(scope="module")
def invented(many: Many, book: Path, folder: Path) -> dict[str, Said]:
    """Reading, check and slip of each invented formula."""
    calls: dict[str, list[str]] = {}
    for seed in SEEDS:
        text = f"{seed}.txt"
        calls |= {f"read {seed}": ["read", text], f"check {seed}": ["check", text]}
        calls[f"slip {seed}"] = ["slip", text, *_words(_slip(seed, sponge(seed)))]
    words = [[*call, "--json", "--book", str(book)] for call in calls.values()]
    return dict(zip(calls, many(words, cwd=folder), strict=True))


@pytest.fixture(scope="module")
def demo(many: Many, book: Path) -> dict[str, Said]:
    """The slips of the demo's formulas."""
    calls = [["slip", *words, *_words(weighed)] for words, weighed in DEMO.values()]
    said = many([[*call, "--json", "--book", str(book)] for call in calls])
    return dict(zip(DEMO, said, strict=True))


def _result(said: Said) -> dict[str, Any]:
    assert said.code == 0, said.stdout[:2000] + said.stderr
    result: dict[str, Any] = said.answer["result"]
    return result


def _ways(result: Mapping[str, Any]) -> dict[str, dict[str, Any]]:
    return {way["kind"]: way for way in [*result["options"], *result["more"]]}


def _nothing_comes_out(result: Mapping[str, Any], weighed: Mapping[str, float]) -> None:
    for way in [*result["options"], *result["more"]]:
        for line in way["lines"]:
            there = weighed.get(line["name"], 0.0)
            assert line["mass_g"] >= there - GRAMS, (way["kind"], line)
            assert line["add_g"] == pytest.approx(line["mass_g"] - there, abs=GRAMS)
            small = 0 < line["add_g"] < result["step_g"] - GRAMS
            assert not small or line["mark"], (way["kind"], line)
        total = sum(line["mass_g"] for line in way["lines"])
        assert way["total_g"] == pytest.approx(total, abs=1e-3)


@pytest.mark.parametrize("name", DEMO)
def test_nothing_is_taken_out_of_a_bowl_of_the_demo(demo: dict[str, Said], name: str) -> None:
    _nothing_comes_out(_result(demo[name]), DEMO[name][1])


@pytest.mark.parametrize("seed", SEEDS)
def test_nothing_is_taken_out_of_an_invented_bowl(invented: dict[str, Said], seed: int) -> None:
    _nothing_comes_out(_result(invented[f"slip {seed}"]), _slip(seed, sponge(seed)))


def _expected(
    kind: str, lines: list[Line], weighed: Mapping[str, float], eggs: int
) -> list[Line] | None:
    least = needed(lines, weighed)
    if kind == "scale":
        count = next(n for n in range(eggs, 9 * eggs) if n / eggs >= least - 1e-9)
        return scaled(lines, count / eggs)
    if kind == "hold":
        return held(lines, weighed)
    ways = {"jar": filled_up(lines, least), "leave": left(lines, weighed)}
    return (ways | {"scale-exact": scaled(lines, least)}).get(kind)


@pytest.mark.parametrize("seed", SEEDS)
def test_each_way_has_the_grams_of_its_closed_form(invented: dict[str, Said], seed: int) -> None:
    made, lines = sponge(seed), lines_of(_result(invented[f"read {seed}"]))
    weighed, result = _slip(seed, made), _result(invented[f"slip {seed}"])
    in_blend = "caster sugar" not in weighed
    for kind, way in _ways(result).items():
        if (expected := _expected(kind, lines, weighed, made.eggs)) is None:
            continue
        masses = {line.name: line.mass_g for line in expected}
        for line in way["lines"]:
            assert line["mass_g"] == pytest.approx(masses[line["name"]], abs=result["step_g"])
        worst = shift(lines, expected, in_blend=in_blend)
        assert way["worst_shift_pct"] == pytest.approx(worst, abs=0.01, rel=1e-3), kind


@pytest.mark.parametrize("seed", SEEDS)
def test_a_jar_holds_what_this_cake_does_not_take(invented: dict[str, Said], seed: int) -> None:
    made, result = sponge(seed), _result(invented[f"slip {seed}"])
    jar = _ways(result).get("jar")
    if "caster sugar" in _slip(seed, made):
        assert jar is None
        return
    assert jar is not None
    lines = lines_of(_result(invented[f"read {seed}"]))
    planned = sum(line.mass_g for line in lines if line.role in BLEND)
    assert jar["jar_g"] == pytest.approx(jar["total_g"] - planned, abs=1e-3)
    assert jar["factor"] == pytest.approx(needed(lines, _slip(seed, made)), rel=1e-5)


@pytest.mark.parametrize("seed", SEEDS)
def test_percents_and_findings_are_those_of_the_cake(invented: dict[str, Said], seed: int) -> None:
    planned = {line.name: line for line in lines_of(_result(invented[f"read {seed}"]))}
    check = _result(invented[f"check {seed}"])
    for way in _ways(_result(invented[f"slip {seed}"])).values():
        cake = [planned[x["name"]]._replace(mass_g=x["mass_g"]) for x in way["card"]]
        values = figures(cake, check["family"])
        for key in ("egg", "sugar", "starch", "sweet_rice", "added_fat", "acid"):
            assert way["percent"][key] == pytest.approx(values[key], rel=1e-6, abs=1e-9)
        found = {finding["code"] for finding in way["findings"]}
        assert found == outside(cake, check["family"], check["bands"]), way["kind"]


@pytest.mark.parametrize("seed", SEEDS)
def test_what_breaks_no_further_band_comes_first(invented: dict[str, Said], seed: int) -> None:
    planned = {finding["code"] for finding in _result(invented[f"check {seed}"])["findings"]}
    options = _result(invented[f"slip {seed}"])["options"]
    breaks = [bool({x["code"] for x in option["findings"]} - planned) for option in options]
    assert breaks == sorted(breaks)
    assert 1 <= len(options) <= 3


def test_a_slip_of_teff_has_its_three_worked_ways(demo: dict[str, Said]) -> None:
    jar, leave, hold = _result(demo["blend"])["options"]
    assert [way["kind"] for way in (jar, leave, hold)] == ["jar", "leave", "hold"]
    assert (jar["total_g"], jar["jar_g"], jar["factor"]) == pytest.approx((136.5, 31.5, 1.3))
    assert jar["worst_shift_pct"] == pytest.approx(0)
    assert [x["add_g"] for x in jar["lines"]] == pytest.approx([12, 0, 39, 11.7, 7.8])
    assert leave["total_g"] == pytest.approx(111)
    assert leave["worst_shift_pct"] == pytest.approx(4.38, abs=0.005)
    assert leave["percent"]["starch"] == pytest.approx(32.4, abs=0.05)
    assert [x["add_g"] for x in hold["lines"]] == pytest.approx([0, 0, 26, 7.8, 5.2])
    assert hold["total_g"] == pytest.approx(105)
    (finding,) = hold["findings"]
    assert (finding["code"], finding["value"]) == ("starch-low", pytest.approx(29.7, abs=0.05))


def test_a_slip_of_sugar_is_left_before_an_egg_is_opened_for_it(demo: dict[str, Said]) -> None:
    result = _result(demo["sugar"])
    leave = result["options"][0]
    assert leave["kind"] == "leave"
    assert leave["sugar_per_egg"] == pytest.approx(0.549, abs=0.0005)
    assert leave["percent"]["sugar"] == pytest.approx(133.3, abs=0.05)
    assert leave["findings"] == []
    larger = _ways(result)["scale-exact"]
    assert larger["factor"] == pytest.approx(1.0769, abs=0.00005)
    flour = [x["mass_g"] for x in larger["lines"][:5]]
    assert sum(flour) == pytest.approx(113.1, abs=0.05)
    assert larger["eggs"]["mass_g"] == pytest.approx(274.6, abs=0.05)
    assert (larger["eggs"]["count"], larger["eggs"]["make_up_g"]) == (
        5,
        pytest.approx(19.6, abs=0.05),
    )


def test_flours_on_sugar_leave_no_jar(demo: dict[str, Said]) -> None:
    ways = _ways(_result(demo["with sugar"]))
    assert "jar" not in ways
    exact = {line["name"]: line["mass_g"] for line in ways["scale-exact"]["lines"]}
    assert exact["caster sugar"] == pytest.approx(169.0)
    assert exact["eggs"] == pytest.approx(331.5)
    assert ways["scale-exact"]["eggs"]["make_up_g"] == pytest.approx(25.5, abs=0.05)


def test_what_is_not_over_is_no_slip(demo: dict[str, Said]) -> None:
    (way,) = _result(demo["on its way"])["options"]
    adds = {line["name"]: line["add_g"] for line in way["lines"]}
    assert adds["white rice flour"] == pytest.approx(25)
    assert adds["teff flour"] == pytest.approx(20)
    assert way["worst_shift_pct"] == pytest.approx(0)


PLANS = {
    "millet and maize": {"rice": 36, "teff": 28, "potato": 21, "sweet": 8, "maize": 7, "over": 1},
    "much teff": {"rice": 28, "teff": 34, "potato": 22, "sweet": 9, "maize": 7, "over": 2},
    "little maize": {"rice": 45, "teff": 21, "potato": 22, "sweet": 8, "maize": 4, "over": 3},
    "no way": {"rice": 38, "teff": 26, "potato": 26, "sweet": 7, "maize": 3, "over": 4},
    "sweet rice": {"rice": 22, "teff": 37, "potato": 28, "sweet": 10, "maize": 3, "over": 5},
}
LONG = {
    "rice": "white rice flour", "teff": "teff flour", "potato": "potato starch",
    "sweet": "sweet rice flour", "maize": "maize starch",
}  # fmt: skip


def _hundred(plan: Mapping[str, int]) -> str:
    flours = "".join(f"{plan[key]} g {name}\n" for key, name in LONG.items())
    return (
        f"Hundred\nTin: round 20 x 7 cm\nEggs: EU sizes\n\n{flours}5 eggs, medium, separated\n"
        "130 g caster sugar\n1 g fine salt\n\nWeigh the flours into one bowl.\n"
        "Beat the yolks with half of the sugar.\n"
        "Whisk the whites with the salt, add the rest of the sugar.\n"
    )


def _best_split(plan: Mapping[str, int]) -> tuple[float, float] | None:
    """Every split of what is left over the three open lines: starch 30 to 50 or as planned."""
    least = min(30, plan["potato"] + plan["maize"])
    room = 100 - plan["rice"] - plan["teff"] - plan["over"]
    keys, ranks = ("potato", "sweet", "maize"), []
    for potato, sweet in product(range(room + 1), repeat=2):
        grams = (potato, sweet, room - potato - sweet)
        if grams[2] < 0 or not least <= grams[0] + grams[2] <= 50 or not 5 <= sweet <= 12:
            continue
        away = [abs(g - plan[key]) for g, key in zip(grams, keys, strict=True)]
        ranks.append((float(max(away)), float(sum(a * a for a in away))))
    return min(ranks, default=None)


@pytest.mark.parametrize("name", PLANS)
def test_the_split_inside_the_bands_is_the_best_of_all_splits(
    many: Many, book: Path, tmp_path: Path, name: str
) -> None:
    plan = PLANS[name]
    (tmp_path / "hundred.txt").write_text(_hundred(plan), encoding="utf-8")
    over = {LONG["rice"]: plan["rice"], LONG["teff"]: plan["teff"] + plan["over"]}
    words = ["slip", "hundred.txt", "--scale", "1", *_words(over), "--json", "--book", str(book)]
    (said,) = many([words], cwd=tmp_path)
    way = _ways(_result(said)).get("hold-in-band")
    best = _best_split(plan)
    if best is None:
        assert way is None
        return
    assert way is not None
    grams = {line["name"]: line["mass_g"] for line in way["lines"]}
    away = [abs(grams[LONG[key]] - plan[key]) for key in ("potato", "sweet", "maize")]
    assert (max(away), sum(a * a for a in away)) == pytest.approx(best)


@pytest.fixture(scope="module")
def schema(many: Many) -> Any:
    """The schema that the program prints for slips."""
    (said,) = many([["schema", "slip"]])
    return json.loads(said.stdout)


@pytest.mark.parametrize("name", DEMO)
def test_an_answer_of_the_demo_fits_its_schema(
    demo: dict[str, Said], schema: Any, name: str
) -> None:
    answer = only_object(demo[name].stdout)
    jsonschema.validate(answer, schema)
    assert misfits(answer["result"]) == []


@pytest.mark.parametrize("name", HOSTILE)
def test_what_cannot_be_in_a_bowl_is_asked(many: Many, book: Path, schema: Any, name: str) -> None:
    (said,) = many([["slip", *HOSTILE[name], "--json", "--book", str(book)]])
    assert said.code == 3, said.stdout + said.stderr
    answer = only_object(said.stdout)
    jsonschema.validate(answer, schema)
    assert answer["problems"]
    assert "Traceback" not in said.stderr
