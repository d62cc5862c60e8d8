"""`krume vary` as a person types it: allergens first, grams second, wide and narrow."""

import re
from pathlib import Path

from tests.cli.conftest import Run


def test_allergens_stand_before_the_grams(run: Run) -> None:
    said = run("vary", "F1", "--swap", "hazelnut=sunflower")
    assert said.code == 0
    places = [
        said.out.index(word)
        for word in ("Allergens", "Lost: nuts (hazelnut)", "Grams", "Balance", "Not known")
    ]
    assert places == sorted(places)
    assert "Made where nuts are used: hazelnut, walnut." in said.out
    assert re.search(r"–\s+3\.7\s+g sunflower oil\s+makes up the fat", said.out)
    assert "not taken\n  unasked" in said.out or "not taken unasked" in said.out


def test_a_narrow_page_has_no_line_wider_than_itself(run: Run) -> None:
    said = run("vary", "F1", "--swap", "hazelnut=pistachio", "--fat", "butter", columns=40)
    assert said.code == 0
    assert max(len(line) for line in said.out.splitlines()) <= 40
    assert "  butter\n    – → 7.5 g\n    makes up the fat" in said.out


def test_the_answer_fits_its_schema_and_the_contract(run: Run) -> None:
    result = run("vary", "F1", "--swap", "hazelnut=sunflower", "--json").json["result"]
    assert result["allergens"]["lost"] == ["nuts (hazelnut)"]
    assert {"ingredient", "before_g", "after_g", "why"} <= set(result["changes"][0])
    assert result["lines"][4]["mass_g"] == 40


def test_nothing_to_vary_is_a_wrong_usage(run: Run) -> None:
    said = run("vary", "F1")
    assert said.code == 2
    assert "--swap" in said.err


def test_a_line_that_is_not_there_is_asked_with_the_lines_that_are(run: Run) -> None:
    said = run("vary", "F1", "--swap", "walnut=pecans")
    assert said.code == 3
    assert "--answer '--swap=ground hazelnuts=pecans'" in said.out
    answered = run("vary", "F1", "--swap", "walnut=pecans", "--answer", "--swap=hazelnut=pecans")
    assert answered.code == 0


def test_eggs_that_carry_the_foam_are_a_limit(run: Run) -> None:
    said = run("vary", "F1", "--for", "vegan")
    assert said.code == 4
    assert "carry the foam" in said.out
    assert "A small trial first" in said.out.replace("\n", " ")


def test_both_rules_for_cocoa_are_printed(run: Run) -> None:
    said = run("vary", "F1", "--swap", "10 g buckwheat=cocoa")
    assert "Two rules are in use" in said.out
    assert "weight for weight (common practice)" in said.out
    assert "140 g caster sugar" in said.out


def test_milk_that_is_lost_and_prices_that_miss_are_told(run: Run) -> None:
    said = run("vary", "F6", "--for", "dairy-free")
    assert said.code == 0
    assert "Lost: milk" in said.out
    assert "no price for rice drink" in said.out


def test_a_child_is_written_and_its_family_shown(run: Run, tmp_path: Path) -> None:
    new = tmp_path / "kid.txt"
    said = run("vary", "F1", "--swap", "hazelnut=sunflower", "--write", str(new))
    assert str(new) in said.out
    assert "Parent: F1\n" in new.read_text(encoding="utf-8")
    again = run("vary", "F1", "--swap", "hazelnut=sunflower", "--write", str(new))
    assert again.code == 5
    family = run("vary", "F1", "--children", "--child", str(new))
    assert family.code == 0
    assert "as it was when this was made" in family.out


def test_traces_and_facts_that_change_are_printed(run: Run) -> None:
    said = run("vary", "F1", "--swap", "hazelnut=sunflower", "--fat", "butter", "--market", "us")
    assert "Gained: milk" in said.out
    assert "No longer: dairy-free by its lines." in said.out
    assert "Lost: tree nut (hazelnut)" in said.out


def test_an_unread_allergen_is_never_printed_as_nothing(run: Run) -> None:
    words = " ".join(run("vary", "F2", "--swap", "butter=margarine").out.split())
    assert "Lost: not known, what margarine brings is not known" in words
    assert "Gained: what margarine brings is not known" in words
    assert "Gained: nothing" not in words
