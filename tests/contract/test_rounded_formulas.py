"""Grams rounded to a scale: the sum kept, and no other whole steps closer to the formula."""

import re
from pathlib import Path
from random import Random
from typing import Any

import pytest

from tests.contract.conftest import Many, Said
from tests.contract.invented import sponge
from tests.contract.whole_steps import counted_out, squeezed, worst_error

CALC_SEEDS = range(40)
SIZE_SEEDS = range(12)
TINS = ("round 16 x 7 cm", "round 24 x 7 cm", "square 20 x 7 cm")
TENTH = 0.1


def _masses(seed: int) -> tuple[list[float], float]:
    chance = Random(seed)  # noqa: S311
    step = chance.choice((0.1, 1.0, 5.0))
    lines = chance.randint(2, 5 if seed % 2 else 9)
    return [round(chance.uniform(5.1, 60) * step, 3) for _ in range(lines)], step


@pytest.fixture(scope="module")
def rounded(many: Many) -> list[Said]:
    """The quick sum on masses from seeds."""
    calls = []
    for seed in CALC_SEEDS:
        masses, step = _masses(seed)
        words = f"masses={','.join(map(str, masses))}", f"step={step}"
        calls.append(["calc", "round-to-scale", *words, "--json"])
    return many(calls)


@pytest.mark.parametrize("seed", CALC_SEEDS)
def test_no_other_whole_steps_of_that_sum_are_closer(rounded: list[Said], seed: int) -> None:
    masses, step = _masses(seed)
    found = rounded[seed].answer["result"]["masses_g"]
    steps = round(sum(found) / step)
    assert all(g / step == pytest.approx(round(g / step), abs=1e-6) for g in found)
    assert abs(steps - sum(masses) / step) <= 0.5 + 1e-6
    least = squeezed(masses, step_g=step, steps=steps)
    assert worst_error(masses, found) == pytest.approx(least, abs=1e-9)
    if len(masses) <= 5:
        assert counted_out(masses, step_g=step, steps=steps) == pytest.approx(least, abs=1e-9)


@pytest.fixture(scope="module")
def sized(many: Many, book: Path, tmp_path_factory: pytest.TempPathFactory) -> list[Said]:
    """Invented sponges in other tins, on a scale of 1 g and on one of 0.1 g."""
    folder = tmp_path_factory.mktemp("sized")
    calls = []
    for seed in SIZE_SEEDS:
        (folder / f"{seed}.txt").write_text(sponge(seed).text, encoding="utf-8")
        scale, tin = ("1", "0.1")[seed % 2], TINS[seed % 3]
        words = ["size", f"{seed}.txt", "--tin", tin, "--scale", scale]
        calls.append([*words, "--json", "--book", str(book)])
    return many(calls, cwd=folder)


def _options(said: Said) -> list[dict[str, Any]]:
    assert said.code == 0, said.stdout
    options: list[dict[str, Any]] = said.answer["result"]["options"]
    return [option for option in options if option["factor"] != 1]


@pytest.mark.parametrize("seed", SIZE_SEEDS)
def test_a_sized_formula_is_rounded_as_close_as_whole_steps_can_be(
    sized: list[Said], seed: int
) -> None:
    step = (1.0, 0.1)[seed % 2]
    for option in _options(sized[seed]):
        whole = option["kind"] == "whole"
        weighed = [x for x in option["lines"] if not (whole and x["ingredient"].startswith("egg"))]
        pairs = [(x["before_g"] * option["factor"], x["mass_g"]) for x in weighed]
        pairs = [(m, g) for m, g in pairs if abs(max(1, round(m / step)) * step / m - 1) <= TENTH]
        exact, grams = [m for m, _ in pairs], [g for _, g in pairs]
        steps = round(sum(grams) / step)
        assert abs(steps - sum(exact) / step) <= 0.5 + 1e-6
        least = squeezed(exact, step_g=step, steps=steps)
        assert worst_error(exact, grams) == pytest.approx(least, abs=1e-9), option["text"]


@pytest.mark.parametrize("seed", SIZE_SEEDS)
def test_whole_eggs_stay_whole_when_grams_are_rounded(sized: list[Said], seed: int) -> None:
    for option in [o for o in _options(sized[seed]) if o["kind"] == "whole"]:
        (egg,) = [x for x in option["lines"] if x["ingredient"].startswith("egg")]
        assert egg["mass_g"] == pytest.approx(option["eggs"]["count"] * 51)
        assert option["total_g"] == pytest.approx(sum(x["mass_g"] for x in option["lines"]))


def test_a_pinch_too_small_for_the_scale_is_kept_and_named(many: Many) -> None:
    words = ["calc", "round-to-scale", "masses=32.4,0.25,16.2", "step=1", "--json"]
    (said,) = many([words])
    result = said.answer["result"]
    assert result["masses_g"][1] == pytest.approx(0.25)
    assert result["too_fine"] == [False, True, False]
    assert re.search(r"0\.25 g", said.answer["notices"][0]["text"])


@pytest.mark.parametrize("masses", ["", "-1,3", "nan,3", "inf,3", "3;x"])
def test_what_cannot_be_weighed_is_asked(many: Many, masses: str) -> None:
    (said,) = many([["calc", "round-to-scale", f"masses={masses}", "step=1", "--json"]])
    assert said.code == 3, said.stdout
    assert said.answer["problems"][0]["ask"]


@pytest.mark.parametrize("step", ["0", "-1", "nan", "inf"])
def test_a_scale_without_steps_is_asked(many: Many, step: str) -> None:
    (said,) = many([["calc", "round-to-scale", "masses=3,4", f"step={step}", "--json"]])
    assert said.code == 3, said.stdout
