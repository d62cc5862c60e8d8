"""Quick sums of the contract with their published or worked figures, asked in one process."""

from typing import Any

import pytest

from tests.contract.conftest import Many, Said

SUMS: list[tuple[str, dict[str, Any]]] = [
    ("triangle-test n=12 alpha=0.05 correct=8", {"critical": 8, "p": 0.0188}),
    ("triangle-test n=24 alpha=0.05 correct=13", {"critical": 13, "p": 0.0284}),
    ("gluten-mix parts=50:8,94:5", {"ppm": 6.04}),
    ("gluten-mix parts=50:8,94:5,338:0", {"ppm": 1.80}),
    ("gluten-mix parts=100:20", {"ppm": 20.0, "us_gluten_free": False, "eu_gluten_free": True}),
    ("gluten-mix parts=250:10,40:325", {"ppm": 53.45}),
    ("eu-energy fat=18 carbohydrate=45 fibre=2 protein=6",
     {"energy_kj": 1549, "energy_kcal": 370}),
    ("eu-energy fat=100 carbohydrate=0 fibre=0 protein=0",
     {"energy_kj": 3700, "energy_kcal": 900}),
    ("quid part=100 total=460 evaporated=60", {"percent": 25.0}),
    ("atwater protein=12.56 fat=9.51 carbohydrate=0.72 food=egg", {"energy_kcal": 143.2}),
    ("atwater protein=12.56 fat=9.51 carbohydrate=0.72", {"energy_kcal": 138.7}),
    ("us-amount nutrient=calories amount=47", {"value": 45}),
    ("us-amount nutrient=fat amount=0.75", {"value": 1}),
    ("us-amount nutrient=sodium amount=145", {"value": 150}),
    ("us-daily-value nutrient=fat amount=12", {"percent": 15}),
    ("us-daily-value nutrient=added-sugars amount=25", {"percent": 50}),
    ("us-servings cake_g=1120 reference_g=80", {"per_container": 15, "serving_g": 74.7}),
    ("aw-sucrose percent=50", {"aw": 0.9348}),
    ("aw-glycerol percent=30", {"aw": 0.9163}),
    ("mould-free-days erh=80 temp=21", {"days": 26.9}),
    ("mould-free-days erh=80 temp=27", {"days": 17.5}),
    ("lethality times=0,2,4,6,8,10,12 temps=50,56,60,62,62,60,52 reference=60 z=4.7",
     {"minutes": 13.589}),
    ("cooling times=0,1,2,4,6 temps=57,33,20,9,4",
     {"stage_1_h": 1.92, "total_h": 5.6, "verdict": "pass"}),
    ("cooling times=0,1,2,4,6 temps=57,40,26,12,6", {"stage_1_h": 2.71, "verdict": "fail"}),
    ("cooling times=0,6 temps=57,4", {"verdict": "fail", "reason": "not-shown"}),
    ("boiling-point altitude=5000ft", {"temp_c": 94.90}),
    ("vapour-pressure temp=60", {"pressure_pa": 19946}),
    ("tin-volume shape=round diameter=8in height=2in", {"volume_ml": 1647.4}),
    ("tin-volume shape=ring-mould diameter=24 hole=8", {"volume_ml": 1263.3}),
    ("roll length=38 thickness=1.0 cream=0.4 core=0.8", {"diameter_cm": 8.38, "turns": 2.42}),
    ("bloom mass=10 from=160 to=200", {"by_root_g": 8.94, "by_ratio_g": 8.00}),
    ("soda-co2 mass=1 temp=100", {"volume_ml": 364.5}),
    ("egg-count mass=76.5 size=eu-m", {"count": 1, "make_up_g": 25.5}),
    ("dial want=170 offset=8", {"set_c": 162, "set_f": 323.6}),
    ("convert value=1 from=lb to=g", {"value": 453.59}),
    ("tcs aw=0.93 ph=4.1 heat_treated_packaged=no", {"verdict": "non-tcs"}),
    ("tcs aw=0.97 ph=6 heat_treated_packaged=yes", {"verdict": "assess"}),
    ("allergens ingredients=hazelnuts,butter,oats,lupin flour market=eu",
     {"contains": ["cereals containing gluten (oat)", "lupin", "milk", "nuts (hazelnut)"]}),
    ("allergens ingredients=coconut market=us", {"contains": []}),
]  # fmt: skip
REFUSED = [
    "convert value=250 from=g to=min",
    "mould-free-days erh=60 temp=21",
    "tin-volume shape=round diameter=-20 height=5",
    "specific-gravity empty=82 water=82 batter=100",
    "bloom mass=8 from=0 to=160",
    "gluten-mix parts=100:-3",
]


def _words(line: str) -> list[str]:
    name, *rest = line.split(" ")
    words = [name]
    for word in rest:
        if "=" in word:
            words.append(word)
        else:
            words[-1] += f" {word}"
    return words


@pytest.fixture(scope="module")
def said(many: Many) -> dict[str, Said]:
    """Every sum of this page, in one process."""
    lines = [line for line, _ in SUMS] + [*REFUSED, "gluten-mix parts=100:?,50:5"]
    answers = many([["calc", *_words(line), "--json"] for line in lines])
    return dict(zip(lines, answers, strict=True))


@pytest.mark.parametrize(("line", "results"), SUMS)
def test_a_sum_gives_its_published_or_worked_figure(
    said: dict[str, Said], line: str, results: dict[str, Any]
) -> None:
    one = said[line]
    assert one.code == 0, one.stdout + one.stderr
    result = one.answer["result"]
    for key, printed in results.items():
        if isinstance(printed, bool | str | list):
            found = sorted(result[key]) if isinstance(printed, list) else result[key]
            assert found == printed
        else:
            digits = len(str(printed).partition(".")[2])
            assert result[key] == pytest.approx(printed, abs=0.5 * 10**-digits + 1e-9), key
    assert one.answer["sources"]


@pytest.mark.parametrize("line", REFUSED)
def test_a_sum_that_cannot_be_is_asked_or_refused(said: dict[str, Said], line: str) -> None:
    one = said[line]
    assert one.code in (2, 3, 4), one.stdout
    assert one.answer["ok"] is False
    assert one.answer["problems"]


def test_an_unknown_part_gives_an_unknown_mixture(said: dict[str, Said]) -> None:
    result = said["gluten-mix parts=100:?,50:5"].answer["result"]
    assert result["ppm"] is None
    assert result["us_gluten_free"] is None
    assert result["eu_gluten_free"] is None
