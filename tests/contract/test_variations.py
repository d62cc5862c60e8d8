"""Variations: the fat reckoned from the packed tables, allergens from the lines, and no promise."""

import json
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from tests.contract.conftest import Many, Said
from tests.contract.shape import misfits, only_object
from tests.contract.variation_sums import by_ingredient, fat_gap_g

SWAPS: dict[str, list[str]] = {
    "sunflower": ["F1", "--swap", "hazelnut=sunflower"],
    "sunflower, butter": ["F1", "--swap", "hazelnut=sunflower", "--fat", "butter"],
    "sunflower, bare": ["F1", "--swap", "hazelnut=sunflower", "--fat", "none"],
    "pistachio": ["F1", "--swap", "hazelnut=pistachio"],
    "almond": ["F1", "--swap", "hazelnut=almond"],
    "walnut for walnut's place": ["F4", "--swap", "walnut=sunflower"],
    "peanut": ["F4", "--swap", "walnut=peanut"],
    "sesame": ["F4", "--swap", "walnut=sesame"],
    "oil for butter": ["F2", "--swap", "butter=sunflower oil"],
    "wheat": ["F2", "--swap", "teff=wheat flour"],
    "oats": ["F2", "--swap", "teff=oat flour"],
    "honey": ["F2", "--swap", "sugar=honey"],
    "less sugar": ["F2", "--cut", "sugar 20 %"],
    "walnuts too": ["F2", "--add", "40 g walnut"],
    "two at once": ["F1", "--swap", "hazelnut=sunflower", "--swap", "buckwheat=teff"],
    "without milk": ["F2", "--for", "dairy-free"],
    "without nuts": ["F1", "--for", "without nuts"],
    "tart without egg": ["F7", "--for", "egg-free"],
}
NUTS = {
    "sunflower": ("hazelnuts", "sunflower-kernels-dried", 40.0),
    "pistachio": ("hazelnuts", "pistachios-raw", 40.0),
    "walnut for walnut's place": ("walnuts-english", "sunflower-kernels-dried", 115.0),
}
TOLD = {
    "sunflower": ([], ["nuts (hazelnut)"]),
    "sunflower, butter": (["milk"], ["nuts (hazelnut)"]),
    "pistachio": (["nuts (pistachio)"], ["nuts (hazelnut)"]),
    "peanut": (["peanut"], ["nuts (walnut)"]),
    "sesame": (["sesame"], ["nuts (walnut)"]),
    "oil for butter": ([], ["milk"]),
    "wheat": (["cereals containing gluten (wheat)"], []),
    "oats": (["cereals containing gluten (oat)"], []),
    "tart without egg": ([], ["egg"]),
}
REFUSED = {
    "vegan sponge": (["F1", "--for", "vegan"], 4),
    "set cream": (["C2", "--for", "vegetarian"], 4),
    "eggs of a foam": (["F2", "--swap", "eggs=flax"], 4),
    "unknown grain": (["F1", "--swap", "hazelnut=fonio"], 3),
    "blank composition": (["F2", "--swap", "eggs=aquafaba"], 3),
    "no such line": (["F1", "--swap", "walnut=hazelnut"], 3),
    "which line": (["F2", "--swap", "rice=teff"], 3),
    "nothing comes": (["F1", "--swap", "hazelnut="], 3),
    "minus": (["F1", "--swap", "hazelnut=-40 g sunflower"], 3),
    "nan": (["F1", "--swap", "hazelnut=nan g sunflower"], 3),
    "more than there is": (["F1", "--swap", "100 g hazelnut=sunflower"], 3),
    "twice given away": (
        ["F1", "--swap", "hazelnut=sunflower", "--swap", "hazelnut=pistachio"], 3,
    ),
    "more than all": (["F2", "--cut", "sugar 200 %"], 3),
    "gluten is no wish": (["F1", "--for", "gluten-free"], 3),
    "markup": (["F1", "--swap", "<b>hazelnut</b>=sunflower"], 3),
}  # fmt: skip
PROMISES = ("nut-free", "nut free", "free of nuts", "free from nuts", "no nuts")


@pytest.fixture(scope="module")
def found(many: Many, book: Path) -> dict[str, Said]:
    """Every variation of this page, the formulas read, and what was refused."""
    calls = {name: ["vary", *words] for name, words in SWAPS.items()}
    calls |= {name: ["vary", *words] for name, (words, _) in REFUSED.items()}
    calls |= {f"read {name}": ["read", name] for name in ("F1", "F2", "F4", "F7")}
    said = many([[*call, "--json", "--book", str(book)] for call in calls.values()])
    return dict(zip(calls, said, strict=True))


def _result(said: Said) -> dict[str, Any]:
    assert said.code == 0, said.stdout[:1500] + said.stderr
    result: dict[str, Any] = said.answer["result"]
    return result


@pytest.mark.parametrize("name", SWAPS)
def test_changes_are_the_whole_way_from_the_parent_to_the_child(
    found: dict[str, Said], name: str
) -> None:
    parent = by_ingredient(_result(found[f"read {SWAPS[name][0]}"])["lines"])
    result = _result(found[name])
    child = by_ingredient(result["lines"])
    changed = {change["ingredient"]: change for change in result["changes"]}
    for key in parent.keys() | child.keys():
        before, after = parent.get(key, 0.0), child.get(key, 0.0)
        if key[0] in changed:
            assert changed[key[0]]["before_g"] == pytest.approx(before)
            assert changed[key[0]]["after_g"] == pytest.approx(after)
            assert changed[key[0]]["why"]
        else:
            assert before == pytest.approx(after), key
    assert result["total_g"] == pytest.approx(sum(child.values()))
    assert result["total_before_g"] == pytest.approx(sum(parent.values()))


@pytest.mark.parametrize("name", NUTS)
def test_the_fat_made_up_is_the_gap_of_the_packed_tables(found: dict[str, Said], name: str) -> None:
    result = _result(found[name])
    gap = fat_gap_g(*NUTS[name])
    assert result["gaps"]["fat_g"] == pytest.approx(gap, abs=1e-6)
    assert result["make_up"]["mass_g"] == pytest.approx(gap, abs=result["step_g"] / 2 + 1e-9)
    assert result["make_up"]["as_butter_g"] == pytest.approx(gap / 0.82, rel=1e-6)


def test_the_worked_gaps_are_met(found: dict[str, Said]) -> None:
    gaps = {name: _result(found[name])["gaps"]["fat_g"] for name in ("sunflower", "pistachio")}
    assert gaps == pytest.approx({"sunflower": 3.7, "pistachio": 6.2}, abs=0.05)
    butter = {change["name"]: change for change in _result(found["sunflower, butter"])["changes"]}
    assert butter["butter"]["after_g"] == pytest.approx(4.5)


@pytest.mark.parametrize("name", TOLD)
def test_allergens_gained_and_lost_are_told(found: dict[str, Said], name: str) -> None:
    allergens = _result(found[name])["allergens"]
    assert (allergens["gained"], allergens["lost"]) == TOLD[name]


def _contains(many: Many, names: list[list[str]], market: str) -> list[set[str]]:
    calls = [["calc", "allergens", f"ingredients={','.join(row)}", f"market={market}", "--json"]
             for row in names]  # fmt: skip
    return [set(said.answer["result"]["contains"]) for said in many(calls)]


@pytest.mark.parametrize("market", ["eu", "us"])
def test_allergens_are_those_of_the_lines(many: Many, found: dict[str, Said], market: str) -> None:
    names = [name for name in SWAPS if name != "less sugar"]
    rows = []
    for name in names:
        lines = _result(found[name])["lines"]
        rows.append([line["name"] for line in lines if line["mass_g"] > 0])
        before = _result(found[f"read {SWAPS[name][0]}"])["lines"]
        rows.append([line["name"] for line in before])
    sets = _contains(many, rows, market)
    for name, after, before in zip(names, sets[::2], sets[1::2], strict=True):
        told = _result(found[name])["allergens"][market]
        assert set(told["gained"]) == after - before, name
        assert set(told["lost"]) == before - after, name


def test_nothing_ever_promises_that_there_are_no_nuts(
    many: Many, book: Path, found: dict[str, Said]
) -> None:
    printed = many([["vary", *SWAPS[name], "--book", str(book)] for name in SWAPS])
    for said in [*printed, *(found[name] for name in SWAPS)]:
        words = said.stdout.casefold()
        assert not [promise for promise in PROMISES if promise in words]
    assert "Made where nuts are used" in found["sunflower"].stdout


def test_butter_is_not_brought_into_a_cake_without_milk_unasked(found: dict[str, Said]) -> None:
    result = _result(found["sunflower"])
    assert not [line for line in result["lines"] if "butter" in line["ingredient"]]
    assert "milk" in " ".join(notice["text"] for notice in found["sunflower"].answer["notices"])


def test_a_child_that_is_written_reads_as_its_lines(many: Many, book: Path, tmp_path: Path) -> None:
    words = ["vary", "F1", "--swap", "hazelnut=sunflower", "--write", "child.txt"]
    read = ["read", "child.txt"]
    calls = [[*call, "--json", "--book", str(book)] for call in (words, read)]
    made, again = many(calls, cwd=tmp_path)
    lines = by_ingredient(_result(again)["lines"])
    assert lines == pytest.approx(by_ingredient(_result(made)["lines"]))


@pytest.mark.parametrize("name", REFUSED)
def test_what_cannot_be_varied_is_asked_or_refused(found: dict[str, Said], name: str) -> None:
    said = found[name]
    assert said.code == REFUSED[name][1], said.stdout[:800]
    assert said.answer["problems"]
    assert "Traceback" not in said.stderr


def test_every_variation_fits_its_schema(many: Many, found: dict[str, Said]) -> None:
    (printed,) = many([["schema", "vary"]])
    schema = json.loads(printed.stdout)
    for name in [*SWAPS, *REFUSED]:
        answer = only_object(found[name].stdout)
        jsonschema.validate(answer, schema)
        assert misfits(answer["result"]) == []
