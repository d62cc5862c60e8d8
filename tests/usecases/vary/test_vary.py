"""Variations on the demo book: allergens, papers, price, limits, and never the word about nuts."""

import json
import re
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from krume.base import StoreError
from krume.design import read, varying
from krume.pantry import find, ingredients
from krume.usecases import Answer, Asked, VaryResult, VaryWish, plain, vary_each, vary_formula
from krume.usecases.vary.papers import side_of, traces_open, vary_book
from tests.agreement import agrees
from tests.usecases.conftest import PLAIN

COVERS = ["child", "papers", "result", "ways"]
FORBIDDEN = re.compile(r"\bnut[\s-]*free\b|\bfree (?:of|from) nuts?\b|\bno nuts\b", re.IGNORECASE)


def swapped(name: str, swap: str, asked: Asked, **more: object) -> Answer[VaryResult]:
    return vary_formula(name, VaryWish((swap,), **more), asked)  # type: ignore[arg-type]


@pytest.mark.source("reference-book", "40 g of hazelnuts: fat made up")
@pytest.mark.parametrize(
    ("swap", "gap", "butter"),
    [("hazelnut=sunflower", "3.7", "4.5"), ("hazelnut=pistachio", "6.2", "7.5")],
)
def test_the_fat_of_the_worked_nuts_is_made_up_as_printed(
    demo: Asked, swap: str, gap: str, butter: str
) -> None:
    result = swapped("F1", swap, demo).result
    assert result.gaps is not None and agrees(result.gaps.fat_g, gap)
    assert result.make_up is not None and agrees(result.make_up.as_butter_g, butter)


def test_sunflower_loses_the_nut_and_gains_no_milk_on_its_own(demo: Asked) -> None:
    answer = swapped("F1", "hazelnut=sunflower", demo)
    result = answer.result
    assert answer.exit_code == 0
    assert result.allergens is not None
    assert (result.allergens.lost, result.allergens.gained) == (("nuts (hazelnut)",), ())
    assert result.allergens.us.lost == ("tree nut (hazelnut)",)
    assert result.gaps is not None and result.gaps.fat_g == pytest.approx(3.716)
    assert result.left is not None and abs(result.left.fat_g or 9) <= 0.05
    rows = {c.name: (c.before_g, c.after_g) for c in result.changes}
    assert rows == {
        "ground hazelnuts": (40, 0), "ground sunflower kernels": (0, 40), "sunflower oil": (0, 3.7)
    }  # fmt: skip
    (told,) = [n.text for n in answer.notices if n.code == "fat-made-up"]
    assert "4.5 g (--fat butter)" in told and "It would bring milk" in told


def test_butter_is_taken_where_it_is_asked_for_and_brings_milk(demo: Asked) -> None:
    answer = swapped("F1", "hazelnut=sunflower", demo, fat="butter")
    assert answer.result.allergens is not None
    assert answer.result.allergens.gained == ("milk",)
    assert answer.result.claims is not None
    assert "dairy-free by its lines" in answer.result.claims.lost
    assert "fat-brings-milk" in {n.code for n in answer.notices}


def test_pistachio_is_one_nut_for_another_at_its_price(demo: Asked) -> None:
    result = swapped("F1", "hazelnut=pistachio", demo, fat="none").result
    assert result.allergens is not None and result.price is not None
    assert (result.allergens.lost, result.allergens.gained) == (
        ("nuts (hazelnut)",), ("nuts (pistachio)",)
    )  # fmt: skip
    assert (result.price.before, result.price.after) == (0.64, 1.68)
    assert result.price.difference == pytest.approx(1.04)


def test_the_lots_of_the_house_say_where_nuts_are_used_and_what_stands_in_the_way(
    demo: Asked,
) -> None:
    result = swapped("F1", "hazelnut=sunflower", demo).result
    assert result.kitchen == "Made where nuts are used: hazelnut, walnut."
    assert result.gluten is not None
    assert result.gluten.missing_before == ("L-008",)
    assert result.gluten.missing_after == ("ground sunflower kernels",)
    assert result.allergens is not None
    assert result.allergens.traces_lost == ()
    assert any("Whether traces of cereals containing gluten (wheat)" in t for t in result.unknown)
    assert any("no lot of ground sunflower" in text for text in result.unknown)


def test_oats_ask_for_gluten_evidence(demo: Asked) -> None:
    result = swapped("F2", "teff=rolled oats", demo).result
    assert any("gluten evidence" in text for text in result.unknown)
    assert result.allergens is not None
    assert result.allergens.gained == ("cereals containing gluten (oat)",)


SHEET = """Name: oat drink
Class: other
Role: liquid
Water: 90 g
Fat: 1.5 g
Protein: 1 g
Carbohydrate: 6.6 g
Carbohydrate basis: available
Sugars: 4 g
Fibre: 0.8 g
Contains: oats
"""


def test_a_suppliers_sheet_opens_what_the_pantry_does_not_know(own_demo: Asked) -> None:
    assert swapped("F6", "milk=oat drink", own_demo).exit_code == 3
    book = own_demo.book
    assert book is not None
    (book / "suppliers").mkdir()
    (book / "suppliers" / "oat.txt").write_text(SHEET, encoding="utf-8")
    answer = swapped("F6", "milk=oat drink", own_demo)
    assert answer.exit_code == 0, answer.problems
    assert answer.result.gaps is not None
    assert answer.result.gaps.fat_g == pytest.approx(30 * (3.27 - 1.5) / 100)
    assert any("gluten evidence" in text for text in answer.result.unknown)


def test_both_rules_for_cocoa_stand_side_by_side(demo: Asked) -> None:
    ways = swapped("F1", "10 g buckwheat=cocoa", demo).result.ways
    masses = [{line.name: line.mass_g for line in way.lines} for way in ways]
    assert [way.key for way in ways] == ["weight-for-weight", "more-liquid"]
    assert masses[0]["caster sugar"] == 135 and "water" not in masses[0]
    assert masses[1]["caster sugar"] == 140 and masses[1]["water"] == 5
    assert swapped("F1", "hazelnut=pecans", demo).result.ways == ()


def test_less_sugar_says_what_it_costs_and_which_bands_it_leaves(demo: Asked) -> None:
    result = vary_formula("F2", VaryWish(cuts=("sugar 20 %",)), demo).result
    assert result.balance is not None
    assert any(text.startswith("Sugar 99 %") for text in result.balance.findings_gained)
    assert any("foam" in text for text in result.unknown)
    assert result.total_g == pytest.approx(493)


def test_a_finding_that_goes_is_told_too(demo: Asked, write: Callable[[str], str]) -> None:
    text = "Sponge\nFamily: separated\n\n60 g white rice flour\n40 g potato starch\n250 g egg\n"
    path = write(text + "180 g caster sugar\n8 g sweet rice flour\n")
    result = vary_formula(path, VaryWish(cuts=("sugar 30 g",)), demo).result
    assert result.balance is not None
    assert any(text.startswith("Sugar 1") for text in result.balance.findings_lost)


@pytest.mark.parametrize("wish", ["vegan", "egg-free", "without eggs"])
@pytest.mark.parametrize("name", ["F1", "F2", "F5", "F6", "C1"])
def test_without_the_egg_that_carries_it_there_is_no_answer(
    name: str, wish: str, demo: Asked
) -> None:
    answer = vary_formula(name, VaryWish(wishes=(wish,)), demo)
    assert answer.exit_code == 4
    assert "egg-carries" in {problem.code for problem in answer.problems}
    assert all(limit.text for limit in answer.result.limits)


def test_what_can_be_done_of_a_vegan_sponge_is_shown_beside_its_limit(demo: Asked) -> None:
    answer = vary_formula("F2", VaryWish(wishes=("vegan",)), demo)
    assert answer.exit_code == 4
    assert answer.result.allergens is not None
    assert answer.result.allergens.lost == ("milk",)


def test_a_tart_without_its_egg_is_answered_with_a_warning(demo: Asked) -> None:
    answer = vary_formula("F7", VaryWish(wishes=("egg-free",)), demo)
    assert answer.exit_code == 0
    assert any("not known" in text for text in answer.result.unknown)
    assert answer.result.claims is not None
    assert answer.result.allergens is not None and answer.result.allergens.lost == ("egg",)


def test_a_wish_nobody_knows_is_asked_with_what_there_is(demo: Asked) -> None:
    answer = vary_formula("F1", VaryWish(wishes=("gluten-free",)), demo)
    assert answer.exit_code == 3
    (problem,) = answer.problems
    assert (problem.where, "krume label" in problem.ask) == ("--for", True)
    for option in problem.options:
        asked = replace(demo, answers=(f"--for={option.line}",))
        assert vary_formula("F1", VaryWish(wishes=("gluten-free",)), asked).exit_code in (0, 4)


@pytest.mark.parametrize("fat", ["sugar", "flurble", "plant block", "-1"])
def test_a_fat_that_is_none_is_asked(fat: str, demo: Asked) -> None:
    answer = swapped("F1", "hazelnut=sunflower", demo, fat=fat)
    assert answer.exit_code == 3
    (problem,) = answer.problems
    assert problem.where == "--fat"
    asked = replace(demo, answers=("--fat=oil",))
    assert swapped("F1", "hazelnut=sunflower", asked, fat=fat).exit_code == 0


def test_the_second_swap_has_a_place_of_its_own(demo: Asked) -> None:
    wish = VaryWish(("hazelnut=pecans", "rice flour=teff"))
    (problem,) = vary_formula("F1", wish, demo).problems
    assert problem.where == "--swap 2"
    asked = replace(demo, answers=(f"--swap 2={problem.options[0].line}",))
    assert vary_formula("F1", wish, asked).exit_code == 0


def test_an_unsettled_text_is_asked_before_anything_is_varied(
    bare: Asked, write: Callable[[str], str]
) -> None:
    answer = swapped(write(PLAIN), "sugar=honey", bare)
    assert answer.exit_code == 3
    assert answer.result.changes == ()


def test_without_a_book_nothing_is_made_up_about_it(
    bare: Asked, write: Callable[[str], str]
) -> None:
    path = write(PLAIN.replace("5 eggs", "5 eggs, EU M") + "\n")
    path = write("Nut\n\n40 g ground walnuts\n100 g caster sugar\n60 g rice starch\n")
    result = swapped(path, "walnuts=sunflower", bare).result
    assert result.price is None
    assert result.kitchen == "Made where nuts are used: walnut."
    assert any("kitchen" in text for text in result.unknown)


def test_a_child_is_written_once_and_read_again_without_a_question(
    demo: Asked, tmp_path: Path
) -> None:
    new = tmp_path / "kid.txt"
    answer = swapped("F1", "hazelnut=sunflower", demo, write=new)
    assert answer.result.written == str(new)
    assert "child-asks" not in {n.code for n in answer.notices}
    assert new.read_text(encoding="utf-8") == answer.result.text
    with pytest.raises(StoreError, match="kid"):
        swapped("F1", "hazelnut=pistachio", demo, write=new)
    assert new.read_text(encoding="utf-8") == answer.result.text


def test_nothing_is_written_while_a_limit_stands(demo: Asked, tmp_path: Path) -> None:
    new = tmp_path / "kid.txt"
    wish = VaryWish(wishes=("vegan",), write=new)
    assert vary_formula("F2", wish, demo).result.written is None
    assert not new.exists()


def test_a_thing_for_itself_is_said_to_change_nothing(demo: Asked) -> None:
    answer = swapped("F1", "hazelnut=hazelnuts", demo)
    assert answer.result.changes == ()
    assert "nothing-changed" in {n.code for n in answer.notices}


def test_no_swap_of_a_nut_or_a_seed_says_the_word_a_kitchen_with_nuts_never_says(
    demo: Asked,
) -> None:
    names = [i.label_name for i in ingredients() if i.role == "nut"]
    names = sorted({name for name in names if find(name).key is not None})
    assert len(names) > 20
    for formula, line in (("F1", "hazelnut"), ("F4", "walnut")):
        wishes = [VaryWish((f"{line}={name}",)) for name in names]
        wishes.append(VaryWish(wishes=("without nuts",)))
        wishes.append(VaryWish(wishes=("nut-free",)))
        for wish, answer in zip(wishes, vary_each(formula, wishes, demo), strict=True):
            said = json.dumps([plain(answer.result), plain(answer.problems), plain(answer.notices)])
            assert not FORBIDDEN.search(said), (formula, wish.swaps)
            if answer.exit_code == 0 and answer.result.changes:
                assert answer.result.kitchen is not None
                assert answer.result.kitchen.startswith("Made where nuts are used")


def test_many_ways_are_the_same_as_each_by_itself(demo: Asked) -> None:
    wishes = [VaryWish((f"hazelnut={name}",)) for name in ("pecans", "sunflower", "walnuts")]
    together = [plain(answer.result) for answer in vary_each("F1", wishes, demo)]
    assert together == [plain(vary_formula("F1", wish, demo).result) for wish in wishes]


def test_changes_add_up_to_the_difference_of_the_whole(demo: Asked) -> None:
    wishes = [
        VaryWish(("butter=oil", "milk=soya drink")), VaryWish(cuts=("sugar 15 %",)),
        VaryWish(added=("40 g apple puree",)),
    ]  # fmt: skip
    for answer in vary_each("F6", wishes, demo):
        result = answer.result
        moved = sum((c.after_g or 0) - (c.before_g or 0) for c in result.changes)
        assert result.total_g is not None and result.total_before_g is not None
        assert moved == pytest.approx(result.total_g - result.total_before_g, abs=1e-6)
        assert len(varying.HELD) == 4


def test_traces_are_lost_only_where_every_bag_of_the_child_has_been_read() -> None:
    wheat = ("cereals containing gluten (wheat)",)
    assert traces_open(wheat, ()) == ()
    (text,) = traces_open(wheat, ("a", "b", "c", "d"))
    assert text.endswith("there is no lot of a, b, c and 1 more.")


def test_nothing_that_is_cut_out_stays_in_the_steps_of_a_dairy_free_child(demo: Asked) -> None:
    for wish in (VaryWish(cuts=("butter 100 %",)), VaryWish(added=("40 g walnuts",))):
        result = vary_formula("F2", wish, demo).result
        assert "milk" in (result.allergens.lost if result.allergens else ())
        steps = (result.text or "").partition("\n\nWeigh")[2]
        assert steps
        assert "butter" not in steps.casefold()


def test_a_lots_line_says_which_bag_the_papers_are_read_from(demo: Asked) -> None:
    text = "Own\n\n50 g buckwheat flour\n40 g ground hazelnuts\n100 g caster sugar\n"
    plain = side_of("Own", read(text).value, vary_book(demo, "eu", None))
    book = vary_book(demo, "eu", None)
    (hazel,) = [lot for lot in book.papers.lots if lot.key == "L-008"]
    (tested,) = [lot for lot in book.papers.lots if lot.key == "L-001"]
    other = replace(tested, key="L-908", ingredient=hazel.ingredient)
    both = replace(book, papers=replace(book.papers, lots=(*book.papers.lots, other)))
    named = read(text.replace("Own\n", "Own\nLots: L-908\n", 1)).value
    assert plain.said["eu"].may_contain
    assert "L-008" in side_of("Own", read(text).value, both).missing
    assert "L-008" not in side_of("Own", named, both).missing


def test_nothing_counts_as_lost_while_what_came_in_is_silent_about_its_allergens(
    demo: Asked,
) -> None:
    result = swapped("F2", "butter=margarine", demo).result
    assert result.allergens is not None
    assert (result.allergens.lost, result.allergens.eu.lost, result.allergens.us.lost) == (
        (),
        (),
        (),
    )
    assert result.allergens.open == ("margarine",)
    assert "Whether milk is gone is not known: margarine may hold it." in result.unknown
    spoken = swapped("F2", "butter=sunflower oil", demo).result
    assert spoken.allergens is not None
    assert (spoken.allergens.lost, spoken.allergens.open) == (("milk",), ())
