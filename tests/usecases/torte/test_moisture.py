"""`krume.usecases.torte.moisture`: what is wet by when, in sentences."""

from pathlib import Path

import pytest

from krume.usecases import Asked, MoistureResult, MoistureUntil
from krume.usecases.torte.build import torte_of
from krume.usecases.torte.moisture import moisture_of


def moves(demo: Asked, name: str) -> MoistureResult:
    found = moisture_of(torte_of(name, demo))
    assert found is not None
    return found


def written(folder: Path, text: str) -> str:
    file = folder / "mine.txt"
    file.write_text(text, encoding="utf-8")
    return str(file)


def test_t1_says_who_gives_who_takes_and_from_when_it_is_best(demo: Asked) -> None:
    found = moves(demo, "T1")
    said = {part.of: part.verdict for part in found.parts}
    assert said == {"F1": "takes", "C1": "gives", "C5": "takes"}
    assert found.temp_c == 5.0
    assert found.set_h == 4.0
    assert found.best_from_h is not None and 4 < found.best_from_h.best < 36
    assert any("best from then on" in line for line in found.lines)


def test_a_syrup_counts_with_the_disc_it_stands_in(demo: Asked) -> None:
    found = moves(demo, "T1")
    sponge = next(part for part in found.parts if part.of == "F1")
    assert sponge.count == 3
    assert sponge.water_g == pytest.approx(384.9 * 0.3215 + 134.4 * 0.538, rel=0.01)


def test_the_base_of_the_tart_is_told_to_be_soft_as_planned_and_what_crisp_weighs(
    demo: Asked,
) -> None:
    found = moves(demo, "TART")
    assert found.base is not None
    assert found.best_until_h == MoistureUntil(0.0, 0.0, 0.0)
    assert found.base.crisp_mass_g == pytest.approx(210, abs=3)
    said = " ".join(found.lines)
    assert "soft already" in said
    assert "times as long" in said
    assert "An order of magnitude" in said


def test_a_torte_that_is_not_kept_cold_stands_in_the_room(demo: Asked, tmp_path: Path) -> None:
    text = "Warm\nSlices: 12\n\n2 layers of F1, 14 mm\n10 mm C3 between the layers\n"
    assert moves(demo, written(tmp_path, text)).temp_c == 20.0


def test_goods_without_a_composition_are_named_and_nothing_is_guessed(
    demo: Asked, tmp_path: Path
) -> None:
    cream = "Odd\nDensity: 0.8 g/ml\n\n200 g fonio flour\n100 g water\n"
    (tmp_path / "K8.txt").write_text(cream, encoding="utf-8")
    text = "Mine\nSlices: 12\n\n2 layers of F1, 14 mm\n10 mm K8 between the layers\n"
    found = moves(demo, written(tmp_path, text))
    assert found.why_not is not None and "fonio" in found.why_not
    assert found.parts == () and found.svg is None
    assert found.lines[0].startswith("What water moves is not known")


def test_a_cake_that_is_not_said_how_heavy_it_bakes_is_named(demo: Asked, tmp_path: Path) -> None:
    cake = "Plain\nTin: round 20 x 7 cm\nBaked: 50 mm high\nEggs: EU sizes\n\n"
    cake += "100 g white rice flour\n5 eggs, medium\n120 g caster sugar\n"
    (tmp_path / "K7.txt").write_text(cake, encoding="utf-8")
    text = "Mine\nSlices: 12\n\n2 layers of K7, 14 mm\n10 mm C1 between the layers\n"
    assert moves(demo, written(tmp_path, text)).why_not is not None


def test_no_sentence_calls_a_food_safe(demo: Asked) -> None:
    found = moves(demo, "T3")
    assert "safe" not in " ".join((*found.lines, found.caution)).casefold()


def test_chocolate_in_the_plan_is_told_as_a_film(demo: Asked, tmp_path: Path) -> None:
    (tmp_path / "K6.txt").write_text(
        "Brushed chocolate\nDensity: 1.3 g/ml\n\n100 g dark chocolate, 60 %\n", encoding="utf-8"
    )
    shell = "Dry base\nTin: tart ring 24 x 2.5 cm\nFamily: tart\n"
    shell += "Baked: shell 25 mm high, 3 mm thick, 203 g\nEggs: EU sizes\n\n"
    shell += "100 g white rice flour\n50 g buckwheat flour\n50 g potato starch\n"
    shell += "110 g cold butter\n65 g icing sugar\n1 egg, medium\n"
    (tmp_path / "K5.txt").write_text(shell, encoding="utf-8")
    bare = "Bare\nKeep: cold\nSlices: 10\n\n1 shell of K5\n380 g C3 in the shell\n"
    film = bare.replace("380 g", "35 g K6 in the shell\n380 g")
    without, behind = (moves(demo, written(tmp_path, text)).base for text in (bare, film))
    assert without is not None and behind is not None
    assert not without.has_film and behind.has_film
    assert without.planned_h.best is not None and behind.planned_h.best is not None
    assert behind.planned_h.best > 2 * without.planned_h.best > 0


def test_of_tiers_each_is_asked_by_its_own_name(demo: Asked, tmp_path: Path) -> None:
    found = moves(demo, written(tmp_path, "Two\nSlices: 30\n\ntier of T3\ntier of T1\n"))
    assert found.why_not is not None and "T3, T1" in found.why_not


def test_where_nothing_moves_nothing_is_said_to_follow(demo: Asked, tmp_path: Path) -> None:
    found = moves(demo, written(tmp_path, "Bare\nSlices: 8\n\n2 layers of F1, 14 mm\n"))
    assert found.best_from_h is None
    assert "nothing follows from it" in " ".join(found.lines)
    assert found.svg is not None and "best from" not in found.svg
