"""Blends: no whole-gram blend within the limits is nearer, and what clashes truly clashes."""

import json
from collections.abc import Mapping
from pathlib import Path
from random import Random
from typing import Any

import jsonschema
import numpy as np
import pytest

from tests.contract.blend_grid import Fence, all_blends, distance, fits, least_distance
from tests.contract.conftest import Many, Said
from tests.contract.shape import misfits, only_object

FLOURS = (
    "white rice flour", "brown rice flour", "teff flour", "buckwheat flour", "millet flour",
    "sorghum flour", "quinoa flour", "amaranth flour", "chickpea flour", "tapioca starch",
    "potato starch", "maize starch", "sweet rice flour",
)  # fmt: skip
SEEDS = range(24)
AT_HAND = ",".join((*FLOURS[:1], *FLOURS[3:5], *FLOURS[10:]))
WORKED = (
    "sweet rice 9 g", "rice >= 25 g", "buckwheat <= 16 g", "potato starch 24..40 g",
    "maize starch 4..8 g", "starch 30..50",
)  # fmt: skip
CLASHES = {
    "two on one flour": ("rice >= 25 g", "rice <= 20 g"),
    "a flour and its class": ("starch >= 40", "potato starch <= 20 g", "maize starch <= 10 g"),
    "too much wanted": ("rice >= 50 g", "buckwheat >= 40 g", "potato starch >= 30 g"),
    "too little allowed": (
        "rice <= 20 g", "buckwheat <= 20 g", "millet <= 20 g", "sweet rice <= 10 g", "starch <= 20",
    ),
    "a taste and a share": ("buckwheat <= 16 g", "buckwheat >= 20"),
}  # fmt: skip
HOSTILE = {
    "backwards": (["--limit", "starch 50..30"], 4),
    "over a hundred": (["--limit", "starch 60..200"], 3),
    "minus": (["--limit", "starch -5..30"], 3),
    "a name alone": (["--limit", "starch"], 3),
    "markup": (["--limit", "<b>starch</b> 30..50"], 3),
    "a command behind": (["--limit", "starch 30..50; rm -rf"], 3),
    "no flour allowed": (["--limit", "at most 0 flours"], 4),
    "each flour too heavy": (["--least", "200"], 4),
    "off the scale": (["--total", "100.4"], 3),
    "free of charge": (["--most-price", "0"], 4),
    "nothing wanted": (["--want", "protein -3"], 3),
    "a grain nobody knows": (["--want", "gluten 3"], 3),
    "taste": (["--also", "taste"], 3),
}
FROM_HOSTILE = {
    "nothing": "",
    "commas": ",,",
    "unknown": "fonio flour,white rice flour",
    "two goods": "rice flour,potato starch",
    "potato flour": "potato flour,white rice flour",
    "butter": "butter,white rice flour",
    "blank composition": "xanthan gum,white rice flour",
}


def _limit(chance: Random, flour: str) -> str:
    grams = chance.randint(0, 30)
    shapes = (">= {0} g", "<= {1} g", "{0}..{2}", "at most {1} %", "{0}..{2} g")
    return f"{flour} {chance.choice(shapes).format(grams, grams + 5, grams + 20)}"


def _task(seed: int) -> list[str]:
    """A task from a seed: few flours on even seeds, many on odd ones."""
    chance = Random(seed)  # noqa: S311
    flours = chance.sample(FLOURS, chance.randint(2, 5) if seed % 2 else chance.randint(6, 10))
    total = chance.choice((60, 80, 100, 105, 120))
    words = ["--from", ",".join(flours), "--total", str(total)]
    for flour in chance.sample(flours, min(len(flours), chance.randint(0, 3))):
        words += ["--limit", _limit(chance, flour)]
    if any("starch" in flour for flour in flours) and seed % 3:
        words += ["--limit", f"starch {chance.randint(10, 35)}..{chance.randint(36, 55)}"]
    if seed % 4:
        return [*words, "--match", f"F{chance.choice((1, 2, 3, 6))}"]
    wanted = [chance.uniform(3, 14), chance.uniform(0.5, 5), chance.uniform(1, 9)]
    return [*words, "--want", "protein {:.1f}, fat {:.1f}, fibre {:.1f}".format(*wanted)]


@pytest.fixture(scope="module")
def found(many: Many, book: Path) -> dict[str, Said]:
    """The tasks of all seeds and the worked one."""
    calls = {str(seed): ["blend", *_task(seed)] for seed in SEEDS}
    calls["worked"] = _matched(WORKED)
    calls |= {name: _matched(limits) for name, limits in CLASHES.items()}
    said = many([[*call, "--json", "--book", str(book)] for call in calls.values()])
    return dict(zip(calls, said, strict=True))


def _matched(limits: tuple[str, ...]) -> list[str]:
    words = ["blend", "--from", AT_HAND, "--match", "F2"]
    return words + [word for limit in limits for word in ("--limit", limit)]


def _fences(result: Mapping[str, Any]) -> list[Fence]:
    """The limits of an answer, in grams."""
    total, fences = result["total_g"], []
    for limit in result["limits"]:
        assert limit["kind"] in {"share", "leave-out"}, limit
        ends = []
        for end, none in (("low", 0.0), ("high", total)):
            grams, percent = limit[f"{end}_g"], limit[f"{end}_pct"]
            ends.append(
                grams if grams is not None else none if percent is None else percent * total / 100
            )
        fences.append(Fence(limit["read"], tuple(limit["members"]), *ends))
    return fences


def _least(result: Mapping[str, Any], fences: list[Fence]) -> float | None:
    return least_distance(
        list(result["composition"]),
        result["composition"],
        result["target"],
        fences,
        total_steps=round(result["total_g"] / result["step_g"]),
        step_g=result["step_g"],
    )


def _parts(result: Mapping[str, Any]) -> dict[str, float]:
    grams = {part["ingredient"]: part["mass_g"] for part in result["parts"]}
    return {name: grams.get(name, 0.0) for name in result["composition"]}


@pytest.mark.parametrize("name", [*map(str, SEEDS), "worked"])
def test_no_whole_gram_blend_within_the_limits_is_nearer(found: dict[str, Said], name: str) -> None:
    said = found[name]
    assert said.code in {0, 4}, said.stdout[:1500]
    result = said.answer["result"]
    if said.code == 4 and any(not limit["members"] for limit in result["limits"]):
        return  # a limit on what is not at hand
    least = _least(result, _fences(result))
    if said.code == 4:
        assert least is None
        return
    parts = _parts(result)
    assert least is not None
    assert result["distance"] <= least + 1e-6
    assert result["proven"] is True
    assert result["bound"] <= result["distance"] + 1e-9
    assert fits(parts, _fences(result))


@pytest.mark.parametrize("name", [*map(str, SEEDS), "worked"])
def test_a_blend_is_what_its_answer_says(found: dict[str, Said], name: str) -> None:
    if found[name].code:
        return
    result = found[name].answer["result"]
    parts, composition = _parts(result), result["composition"]
    total = sum(parts.values())
    assert total == pytest.approx(result["total_g"])
    assert all(
        g / result["step_g"] == pytest.approx(round(g / result["step_g"])) for g in parts.values()
    )
    for key in result["target"]:
        got = sum(g * composition[flour][key] for flour, g in parts.items()) / total
        assert result["got"][key] == pytest.approx(got, abs=1e-6)
    away = distance(parts, composition, result["target"])
    assert result["distance"] == pytest.approx(away, abs=1e-6)


def test_the_worked_blend_is_near_the_worked_figures(found: dict[str, Said]) -> None:
    result = found["worked"].answer["result"]
    assert set(result["target"]) == {"protein", "fat", "fibre"}
    assert [round(result["target"][key], 1) for key in ("protein", "fat")] == [5.4, 1.1]
    hand = {
        "flour-rice-white": 46, "flour-buckwheat-whole": 14, "flour-millet": 4,
        "starch-potato-ciqual": 28, "starch-corn": 4, "flour-rice-sweet-shiratama": 9,
    }  # fmt: skip
    assert list(result["composition"]) == list(hand)
    assert result["distance"] <= distance(hand, result["composition"], result["target"]) + 1e-9


@pytest.mark.parametrize("name", CLASHES)
def test_limits_that_clash_are_named_and_truly_clash(found: dict[str, Said], name: str) -> None:
    said = found[name]
    assert said.code == 4, said.stdout
    result = said.answer["result"]
    fences = _fences(result)
    assert _least(result, fences) is None
    told = " ".join(problem["ask"] for problem in said.answer["problems"]).casefold()
    for fence in fences:
        others = [other for other in fences if other is not fence]
        if _least(result, others) is not None:  # this one is part of every clash
            assert fence.label.split()[0] in told, fence


@pytest.mark.parametrize("name", CLASHES)
def test_an_offered_limit_opens_the_way_and_a_tighter_one_does_not(
    many: Many, book: Path, found: dict[str, Said], name: str
) -> None:
    asked = [
        (problem["where"], option["line"])
        for problem in found[name].answer["problems"]
        for option in problem["options"]
        if problem["where"].startswith("--limit")
    ]
    calls = [
        [*_matched(CLASHES[name]), "--answer", f"{where}={line}", "--json", "--book", str(book)]
        for where, line in asked
    ]
    assert calls or name == "too much wanted"
    for (where, line), said in zip(asked, many(calls), strict=True):
        assert said.code == 0, (where, line, said.stdout[:800])
        result = said.answer["result"]
        fences = _fences(result)
        (moved,) = [fence for fence in fences if fence.label == line]
        others = [fence for fence in fences if fence is not moved]
        low = _least(result, [*others, moved._replace(low_g=moved.low_g + 1)])
        high = _least(result, [*others, moved._replace(high_g=moved.high_g - 1)])
        assert low is None or high is None, (where, line)


FEW_SEEDS = range(18)


def _few(seed: int) -> tuple[list[str], int, int, float]:
    """Few flours, at most so many of them, none below so many grams, and so much protein."""
    chance = Random(500 + seed)  # noqa: S311
    flours = chance.sample(FLOURS, chance.randint(3, 5))
    most, least = chance.randint(1, len(flours)), chance.randint(0, 15)
    protein = round(chance.uniform(3, 6.5), 2)
    words = ["--from", ",".join(flours), "--match", "F2", "--total", chance.choice(("60", "80"))]
    words += ["--limit", f"at most {most} flours", "--least", str(least)]
    return [*words, "--limit", f"protein >= {protein}"], most, least, protein


@pytest.fixture(scope="module")
def few(many: Many, book: Path) -> list[Said]:
    """The tasks with few flours allowed."""
    return many([["blend", *_few(seed)[0], "--json", "--book", str(book)] for seed in FEW_SEEDS])


@pytest.mark.parametrize("seed", FEW_SEEDS)
def test_few_flours_and_least_grams_are_kept_at_the_least_distance(
    few: list[Said], seed: int
) -> None:
    _, most, least, protein = _few(seed)
    result = few[seed].answer["result"]
    names, total = list(result["composition"]), round(result["total_g"])
    rows = all_blends(len(names), total)
    keeps = ((rows > 0).sum(axis=1) <= most) & ((rows == 0) | (rows >= least)).all(axis=1)
    table = np.array([[result["composition"][n][k] for k in result["target"]] for n in names])
    got = rows[keeps] @ table / total
    got = got[got[:, list(result["target"]).index("protein")] >= protein - 1e-9]
    if not len(got):
        assert few[seed].code == 4
        return
    assert few[seed].code == 0, few[seed].stdout[:800]
    apart = got - np.array(list(result["target"].values()))
    nearest = float(np.sqrt((apart**2).sum(axis=1)).min())
    assert result["distance"] == pytest.approx(nearest, abs=1e-6)


@pytest.fixture(scope="module")
def schema(many: Many) -> Any:
    """The schema that the program prints for blends."""
    (said,) = many([["schema", "blend"]])
    return json.loads(said.stdout)


@pytest.mark.parametrize("name", [*map(str, SEEDS), "worked", *CLASHES])
def test_a_blend_fits_its_schema(found: dict[str, Said], schema: Any, name: str) -> None:
    answer = only_object(found[name].stdout)
    jsonschema.validate(answer, schema)
    assert misfits(answer["result"]) == []


def test_bad_limits_and_flours_are_asked_or_refused(many: Many, book: Path, schema: Any) -> None:
    calls = [["blend", "--from", AT_HAND, "--match", "F2", *words] for words, _ in HOSTILE.values()]
    calls += [["blend", "--from", flours, "--match", "F2"] for flours in FROM_HOSTILE.values()]
    codes = [*(code for _, code in HOSTILE.values()), *(3 for _ in FROM_HOSTILE)]
    said = many([[*call, "--json", "--book", str(book)] for call in calls])
    for name, code, one in zip([*HOSTILE, *FROM_HOSTILE], codes, said, strict=True):
        assert one.code == code, (name, one.stdout[:800])
        answer = only_object(one.stdout)
        jsonschema.validate(answer, schema)
        assert answer["problems"], name
        assert "Traceback" not in one.stderr
