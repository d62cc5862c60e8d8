"""Each example runs, says something, and comes to the figures of the demo studio."""

import importlib
from pathlib import Path
from typing import Any

import pytest

ROOT = Path(__file__).resolve().parents[2]

EXAMPLES = sorted(path.stem for path in (ROOT / "examples").glob("*.py"))


def _main(name: str) -> Any:
    return importlib.import_module(f"examples.{name}").main()


def test_every_example_stands_in_the_list_and_is_tried_here() -> None:
    listed = (ROOT / "examples" / "README.md").read_text(encoding="utf-8")
    tried = {name.removeprefix("test_") for name in globals() if name.startswith("test_")}
    assert EXAMPLES
    assert [name for name in EXAMPLES if f"`{name}.py`" not in listed or name not in tried] == []


def test_read_a_formula(capsys: pytest.CaptureFixture[str]) -> None:
    formula = _main("read_a_formula")
    assert [line.mass_g for line in formula.lines] == [100.0, 255.0, 120.0]
    assert "line 5: Which size are the eggs?" in capsys.readouterr().out


def test_check_the_balance(capsys: pytest.CaptureFixture[str]) -> None:
    found = _main("check_the_balance")
    assert found.percent["egg"] == pytest.approx(242.9, abs=0.05)
    assert found.findings == ()
    assert "egg: 242.9 %" in capsys.readouterr().out


def test_weigh_these_twice(capsys: pytest.CaptureFixture[str]) -> None:
    found = _main("weigh_these_twice")
    assert [line.name for line in found.weigh_twice] == ["xanthan gum", "eggs", "caster sugar"]
    said = capsys.readouterr().out
    assert "xanthan gum: 0.1 g does 1.43 to xanthan" in said
    assert "16 g of eggs move the minutes most" in said


def test_vary_a_formula() -> None:
    found = _main("vary_a_formula")
    assert found.allergens.lost == ("nuts (hazelnut)",)
    assert [change.after_g for change in found.changes] == [0.0, 40.0, 3.7]


def test_size_for_another_tin(capsys: pytest.CaptureFixture[str]) -> None:
    found = _main("size_for_another_tin")
    assert found.factor.by_area == pytest.approx(0.81)
    assert {option.eggs.make_up_g for option in found.options} == {0.0}
    assert "4 eggs, everything x 0.8" in capsys.readouterr().out


def test_choose_a_blend(capsys: pytest.CaptureFixture[str]) -> None:
    found = _main("choose_a_blend")
    assert sum(part.mass_g for part in found.parts) == 105
    assert found.distance <= 0.264
    assert "9 g sweet rice flour, was 9 g" in capsys.readouterr().out


def test_rescue_a_slip(capsys: pytest.CaptureFixture[str]) -> None:
    found = _main("rescue_a_slip")
    assert [way.kind for way in found.options] == ["jar", "leave", "hold"]
    assert found.options[0].jar_g == 31.5
    assert "keep 31.5 g in a jar, worst shift 0.0 points" in capsys.readouterr().out


def test_bake_in_a_tin(capsys: pytest.CaptureFixture[str]) -> None:
    found = _main("bake_in_a_tin")
    assert found.core_c == 95.0
    assert found.minutes.low < found.minutes.high
    assert "The core to reach is 95.0 C" in capsys.readouterr().out


def test_bake_two_loads(capsys: pytest.CaptureFixture[str]) -> None:
    found = _main("bake_two_loads")
    assert found.last == 1
    assert all(load.later_min > 0.5 for load in found.loads)
    assert "less heat between the tins" in capsys.readouterr().out


def test_build_a_torte(capsys: pytest.CaptureFixture[str]) -> None:
    found = _main("build_a_torte")
    assert found.height_mm == 66.0
    assert sum(layer.mass_g for layer in found.layers) == pytest.approx(1194.9, abs=0.05)
    assert "66.0 mm, 1194.9 g" in capsys.readouterr().out


def test_fill_a_ring(capsys: pytest.CaptureFixture[str]) -> None:
    found = _main("fill_a_ring")
    assert found.cream_l == pytest.approx(1.80, abs=0.005)
    said = capsys.readouterr().out
    assert "4 cartons of whipping cream, 138 ml left" in said
    assert "5.7 or 6.3 silver leaves" in said


def test_what_is_wet_by_when(capsys: pytest.CaptureFixture[str]) -> None:
    found = _main("what_is_wet_by_when")
    assert found.standing.verdict == "firm enough"
    assert found.moisture.base.crisp_mass_g == pytest.approx(210, abs=3)
    said = capsys.readouterr().out
    assert "Dark ganache gives" in said
    assert "soft already" in said


def test_cool_a_cake(capsys: pytest.CaptureFixture[str]) -> None:
    found = _main("cool_a_cake")
    assert found.way == "rack"
    out = capsys.readouterr().out
    assert "Cut it into layers" in out
    assert "Roll it 3 to 7 min after the oven" in out
    assert "another 54 to 67 min" in out


def test_when_the_fridge_was_off(capsys: pytest.CaptureFixture[str]) -> None:
    found = _main("when_the_fridge_was_off")
    assert found.verdict == "discard"
    assert [order.name for order in found.orders] == ["101"]
    said = capsys.readouterr().out
    assert "C1: discard" in said
    assert "F1: keep" in said
    assert "begin by Friday" in said
    assert "out of the freezer into the fridge by" in said


def test_keep_it_cold(capsys: pytest.CaptureFixture[str]) -> None:
    found = _main("keep_it_cold")
    assert found.days == 3
    said = capsys.readouterr().out
    assert "Count on 3 days" in said
    assert "C1 (Vanilla custard cream)" in said


def test_name_the_allergens(capsys: pytest.CaptureFixture[str]) -> None:
    found = _main("name_the_allergens")
    words = {market: list(label.contains) for market, label in found.items()}
    assert words["us"] == ["egg", "milk", "tree nut (hazelnut)"]
    assert words["eu"] == words["uk"] == ["egg", "milk", "nuts (hazelnut)"]
    assert words["ca"] == words["au-nz"] == ["egg", "hazelnut", "milk"]
    shown = capsys.readouterr().out
    assert "Lemon syrup (sugar, water, lemon juice)" in shown
    assert "Buckwheat is a known allergen" in shown


def test_label_what_is_in_it(capsys: pytest.CaptureFixture[str]) -> None:
    found = _main("label_what_is_in_it")
    assert found.contains == ("egg", "milk", "nuts (hazelnut)")
    assert found.gluten.claim_allowed is False
    assert "L-008" in capsys.readouterr().out


def test_print_a_label(capsys: pytest.CaptureFixture[str]) -> None:
    found = _main("print_a_label")
    assert [file.format for file in found.files] == ["pdf", "html", "txt", "json"]
    assert found.labels[0].durability.use_by == "2027-06-12"
    shown = capsys.readouterr().out
    assert "Net weight 1574 g" in shown
    assert "C2 runs out first: 2027-06-12." in shown


def test_cost_and_price(capsys: pytest.CaptureFixture[str]) -> None:
    found = _main("cost_and_price")
    assert [str(each) for each in (found.direct, found.full, found.price_for_margin)] == [
        "62.63",
        "88.46",
        "126.37",
    ]
    assert "break-even: 19 tortes a month" in capsys.readouterr().out


def test_plan_the_days(capsys: pytest.CaptureFixture[str]) -> None:
    found = _main("plan_the_days")
    assert found.tasks[-1].end.strftime("%a %H:%M") == "Sat 14:00"
    assert "box: T1" in capsys.readouterr().out


def test_learn_your_oven(capsys: pytest.CaptureFixture[str]) -> None:
    offset, heat, before, after = _main("learn_your_oven")
    assert offset.startswith("Reads low: true is 12 °C below the dial")
    assert "weaker than the usual oven" in heat and "from 3 bakes." in heat
    assert before.startswith("From 4 bakes in deck (invented)")
    assert after.startswith("From 3 bakes in deck (2 of this cake): ")
    assert "before any bake in it" in capsys.readouterr().out


def test_buy_the_eggs(capsys: pytest.CaptureFixture[str]) -> None:
    found = _main("buy_the_eggs")
    assert [(buy.count, buy.over) for buy in found.buy] == [(90, 0)]
    assert found.left[0].left_g == pytest.approx(405.0)
    assert "C5 can take 600 g white" in capsys.readouterr().out


def test_make_the_sheets(capsys: pytest.CaptureFixture[str]) -> None:
    found = _main("make_the_sheets")
    stale = {each.file for each in found.verified if not each.is_fresh}
    assert "c5-bench-card.pdf" in stale
    assert "f1-bench-card.pdf" not in stale
    assert "c5-bench-card.pdf: older than its text C5" in capsys.readouterr().out


def test_do_a_quick_sum(capsys: pytest.CaptureFixture[str]) -> None:
    dial, gelatine = _main("do_a_quick_sum")
    assert dial == 169.0
    assert gelatine == pytest.approx(8.944, abs=0.0005)
    assert "169.0 C (336.2 F)" in capsys.readouterr().out


def test_tell_what_a_slice_holds(capsys: pytest.CaptureFixture[str]) -> None:
    found = _main("tell_what_a_slice_holds")
    (only,) = found.carbohydrate.slices
    assert only.count == 16
    assert only.without_fibre_g.best == pytest.approx(23.3, abs=0.1)
    out = capsys.readouterr().out
    assert "Carbohydrate in 1 of 16 slices" in out
    assert "Per portion" in out


def test_find_a_lot(capsys: pytest.CaptureFixture[str]) -> None:
    butter = _main("find_a_lot")
    assert [cake.code for cake in butter.not_ruled_out] == ["L270610-1"]
    assert "L-008 is in 1 making." in capsys.readouterr().out


def test_can_she_eat_it(capsys: pytest.CaptureFixture[str]) -> None:
    order, torte = _main("can_she_eat_it")
    assert (order.verdict, torte.verdict) == ("no", "not yet")
    said = capsys.readouterr().out
    assert "the ground hazelnuts may contain wheat" in said
