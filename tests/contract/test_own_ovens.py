"""An oven of one's own: what recorded bakes do to the minutes, and what is not believed."""

import re
import shutil
from functools import cache
from pathlib import Path
from typing import Any, NamedTuple

import pytest

from krume.bake import Bake, Oven, batter_of, simulate
from krume.design import read
from krume.size import read_tin
from tests.contract.conftest import Many, Said
from tests.contract.shape import misfits, only_object

WEAK = 0.85
DIAL_OFFSET_C = -12


class Cake(NamedTuple):
    """A cake of the demo as its block says it."""

    family: str
    density_g_ml: float
    tin: str
    oven_c: float


CAKES = {
    "F1": Cake("separated", 0.48, "round 20 x 7 cm", 170),
    "F2": Cake("separated", 0.48, "round 20 x 7 cm", 170),
    "F4": Cake("nut", 0.50, "round 22 x 5 cm", 170),
    "F6": Cake("butter", 0.85, "round 18 x 7 cm", 165),
}
# What was recorded, and what is asked then.
RECORDED: dict[str, tuple[str, ...]] = {
    "same sponge": ("F1", "F1", "F1"),
    "same butter cake": ("F6", "F6", "F6"),
    "three cakes": ("F1", "F4", "F6"),
}


@cache
def _texts(plain: Path) -> dict[str, str]:
    found = {}
    for path in plain.rglob("*.txt"):
        if path.stem in CAKES:
            found[path.stem] = path.read_text(encoding="utf-8")
    return found


@cache
def _true_bake(text: str, name: str, heat: float) -> tuple[Bake, float]:
    cake = CAKES[name]
    formula = read(text).value
    batter = batter_of(
        formula, family=cake.family, density_g_ml=cake.density_g_ml, density_measured=False
    ).value
    tin = read_tin(cake.tin).value
    assert batter is not None
    assert tin is not None
    return simulate(batter, tin, Oven(cake.oven_c, heat=heat), cells=(18, 24)), batter.mass_g


def _record(text: str, name: str, heat: float, day: int, minutes: float | None = None) -> str:
    cake = CAKES[name]
    bake, mass_g = _true_bake(text, name, heat)
    core_min = minutes if minutes is not None else bake.rule_minutes[0]
    dial_c = cake.oven_c - DIAL_OFFSET_C
    return (
        f"{name}, {cake.tin}, {mass_g:.0f} g, dial {dial_c:g}, {core_min:.1f} min, "
        f"core {bake.core_c:g}, 2027-06-{day:02d}"
    )


def _odd(oven: dict[str, Any]) -> list[str]:
    """Why records are not believed, those of the demo's invented trials left out."""
    return [flag["reason"] for flag in oven["flagged"] if flag["code"] != "bake-invented"]


class Kitchen(NamedTuple):
    """A book whose oven is weak, and the words that were recorded in it."""

    book: Path
    recorded: Said
    asked: dict[str, Said]


@pytest.fixture(scope="module")
def texts(plain: Path) -> dict[str, str]:
    """The demo's own texts as a book of plain files has them."""
    found = _texts(plain)
    assert found.keys() >= CAKES.keys()
    return found


@pytest.fixture(scope="module")
def kitchens(
    many: Many, book: Path, texts: dict[str, str], tmp_path_factory: pytest.TempPathFactory
) -> dict[str, Kitchen]:
    """Each kitchen with its three bakes, and all cakes asked in it."""
    made = {}
    for key, names in RECORDED.items():
        own = tmp_path_factory.mktemp("weak") / "book"
        shutil.copytree(book, own)
        words = ["oven", "--json", "--book", str(own)]
        for day, name in enumerate(names, start=1):
            words += ["--bake", _record(texts[name], name, WEAK, day)]
        calls = [words]
        calls += [
            ["bake", name, "--oven-name", "deck", "--json", "--book", str(own)] for name in CAKES
        ]
        recorded, *asked = many(calls)
        made[key] = Kitchen(own, recorded, dict(zip(CAKES, asked, strict=True)))
    return made


@pytest.fixture(scope="module")
def unknown(many: Many, book: Path, tmp_path_factory: pytest.TempPathFactory) -> dict[str, Any]:
    """The minutes of each cake before anything was recorded: no bake counts, real or invented."""
    own = tmp_path_factory.mktemp("fresh") / "book"
    shutil.copytree(book, own)
    asked = many([["bake", name, "--json", "--book", str(own)] for name in CAKES])
    found = {}
    for name, one in zip(CAKES, asked, strict=True):
        (learnt,) = [n["text"] for n in one.answer["notices"] if n["code"] == "oven-learnt"]
        before = re.search(r"before any bake in it (\d+)–(\d+)", learnt)
        assert before, learnt
        found[name] = tuple(map(int, before.groups()))
    return found


@pytest.mark.parametrize("key", RECORDED)
def test_three_bakes_of_a_weak_oven_are_taken(kitchens: dict[str, Kitchen], key: str) -> None:
    one = kitchens[key].recorded
    assert one.code == 0, one.stdout + one.stderr
    answer = only_object(one.stdout)
    assert misfits(answer["result"]) == []
    (oven,) = answer["result"]["ovens"]
    assert oven["bakes"] == 3
    assert _odd(oven) == []
    assert oven["offset_c"] == DIAL_OFFSET_C
    heat = oven["heat"]
    assert heat["low"] < WEAK < heat["high"]
    assert heat["best"] < 0.95
    before = oven["prior_heat"]
    assert heat["high"] - heat["low"] < 0.75 * (before["high"] - before["low"])


@pytest.mark.parametrize("key", RECORDED)
@pytest.mark.parametrize("name", CAKES)
def test_the_minutes_of_a_weak_oven_hold_its_truth(
    kitchens: dict[str, Kitchen], texts: dict[str, str], key: str, name: str
) -> None:
    one = kitchens[key].asked[name]
    assert one.code == 0, one.stdout + one.stderr
    minutes = one.answer["result"]["minutes"]
    truth = _true_bake(texts[name], name, WEAK)[0].minutes
    assert minutes["low"] <= truth <= minutes["high"]
    assert minutes["best"] == pytest.approx(truth, rel=0.06)


@pytest.mark.parametrize("key", RECORDED)
def test_a_cake_that_was_recorded_is_a_third_narrower(
    kitchens: dict[str, Kitchen], unknown: dict[str, Any], key: str
) -> None:
    for name in set(RECORDED[key]):
        minutes = kitchens[key].asked[name].answer["result"]["minutes"]
        low, high = unknown[name]
        assert minutes["high"] - minutes["low"] < 2 / 3 * (high - low), name


@pytest.mark.parametrize("key", RECORDED)
def test_another_cake_is_narrower_too(
    kitchens: dict[str, Kitchen], unknown: dict[str, Any], key: str
) -> None:
    for name in CAKES.keys() - set(RECORDED[key]):
        minutes = kitchens[key].asked[name].answer["result"]["minutes"]
        low, high = unknown[name]
        assert minutes["high"] / minutes["low"] < 0.93 * high / low, name


def test_the_answer_says_from_how_many_bakes(kitchens: dict[str, Kitchen]) -> None:
    answer = kitchens["same sponge"].asked["F1"].answer
    (text,) = [n["text"] for n in answer["notices"] if n["code"] == "oven-learnt"]
    minutes = answer["result"]["minutes"]
    assert "3 bakes in deck" in text
    assert "3 of this cake" in text
    assert f"{minutes['low']}–{minutes['high']} min" in text
    assert "invented" not in text


@pytest.fixture(scope="module")
def odd(
    many: Many, book: Path, texts: dict[str, str], tmp_path_factory: pytest.TempPathFactory
) -> dict[str, list[Said]]:
    """Records that fight, asked in books of their own."""
    bakes = {
        "two that fight": [20.0, 50.0],
        "one of three": [37.0, 38.0, 20.0],
        "one twice": [37.8, 37.8],
    }
    said = {}
    for key, minutes in bakes.items():
        own = tmp_path_factory.mktemp("odd") / "book"
        shutil.copytree(book, own)
        end = ["--json", "--book", str(own)]
        calls = []
        for day, one in enumerate(minutes, start=1):
            record = _record(texts["F1"], "F1", 1.0, 1 if key == "one twice" else day, one)
            calls.append(["oven", "--bake", record, *end])
        calls += [["oven", *end], ["bake", "F1", *end]]
        said[key] = many(calls)
    return said


def test_two_records_that_contradict_one_another_are_both_flagged(
    odd: dict[str, list[Said]],
) -> None:
    *_, oven, bake = odd["two that fight"]
    (deck,) = oven.answer["result"]["ovens"]
    assert deck["bakes"] == 0
    assert len(_odd(deck)) == 2
    words = " ".join(_odd(deck))
    assert "20 min" in words
    assert "50 min" in words
    minutes = bake.answer["result"]["minutes"]
    assert minutes["high"] / minutes["low"] > 1.7


def test_the_record_that_differs_from_two_is_flagged_alone(odd: dict[str, list[Said]]) -> None:
    *_, oven, bake = odd["one of three"]
    (deck,) = oven.answer["result"]["ovens"]
    (reason,) = _odd(deck)
    assert "20 min" in reason
    assert deck["bakes"] == 2
    minutes = bake.answer["result"]["minutes"]
    assert minutes["low"] > 30
    assert minutes["low"] <= 37.5 <= minutes["high"]


def test_the_same_record_twice_counts_once(odd: dict[str, list[Said]]) -> None:
    *_, oven, _bake = odd["one twice"]
    (deck,) = oven.answer["result"]["ovens"]
    assert deck["bakes"] == 1


UNREAD = [
    "", "rubbish", "F1", "F1, dial 182, nan min, core 95", "F1, dial 182, 0 min, core 95",
    "F1, dial 182, -5 min, core 95", "F1, dial 182, 38 min, core nan", "F1, 38 min, core 95",
    "F1, dial 182, 38 min, core 20", "F1, dial 182, 38 min, core 130",
    "F1, dial 182, 5000 min, core 95", "F1, dial 95, 38 min, core 95",
    "F1, dial 900, 38 min, core 95", "F99, dial 182, 38 min, core 95",
    "F1, round 5 x 2 cm, dial 182, 38 min, core 95", "F1, 0 g, dial 182, 38 min, core 95",
    "F1, dial 182, 38-34 min, skewer", "F1, dial 182, 38 min, core 95, 2027-13-45",
]  # fmt: skip
UNSHOWN = ["", "160", "dial 160", "dial 160: nan", "dial nan: 148", "dial 160: 300"]


def test_a_record_that_cannot_be_is_asked_and_not_kept(many: Many, book: Path) -> None:
    end = ["--json", "--book", str(book)]
    calls = [["oven", "--bake", text, *end] for text in UNREAD]
    calls += [["oven", "--reading", text, *end] for text in UNSHOWN]
    before, *said, after = many([["oven", *end], *calls, ["oven", *end]])
    for words, one in zip(calls, said, strict=True):
        assert one.code == 3, words
        answer = only_object(one.stdout)
        assert answer["ok"] is False
        assert all(len(problem["ask"].split()) > 3 for problem in answer["problems"]), words
        assert "Traceback" not in one.stderr
    assert after.answer["result"] == before.answer["result"]
