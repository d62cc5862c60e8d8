"""The nearest blend: as near as any on the grid, within what was typed, with what goes with it."""

from collections.abc import Callable
from dataclasses import replace
from pathlib import Path

import pytest

from krume.usecases import Asked, BlendResult, BlendWish, choose_blend, read_formula
from tests.usecases.blends import FLOURS, LIMITS, WITHOUT_TEFF, distance_of, keeps, nearest

COVERS = ("result",)


@pytest.fixture(scope="module")
def without_teff(book: Path) -> BlendResult:
    """The blend of F2 without teff, within the studio's limits."""
    answer = choose_blend(WITHOUT_TEFF, Asked(book=book))
    assert answer.exit_code == 0, answer.problems
    return answer.result


def test_the_target_is_the_formulas_own_blend_by_the_packed_rows(without_teff: BlendResult) -> None:
    protein = (40 * 5.95 + 20 * 13.3 + 30 * 0.0 + 9 * 6.3 + 6 * 0.26) / 105
    assert without_teff.target["protein"] == pytest.approx(protein)
    assert list(without_teff.target) == ["protein", "fat", "fibre"]


def test_it_is_no_farther_than_the_blend_worked_out_on_paper(without_teff: BlendResult) -> None:
    paper = dict(zip(without_teff.composition, (46, 14, 4, 28, 4, 9), strict=True))
    assert keeps(without_teff, list(paper), list(paper.values()))
    assert without_teff.distance is not None
    assert without_teff.distance <= distance_of(without_teff, paper) + 1e-12


def test_it_keeps_each_limit_and_the_total_to_the_gram(without_teff: BlendResult) -> None:
    masses = {part.ingredient: part.mass_g for part in without_teff.parts}
    assert sum(masses.values()) == 105
    assert all(mass == round(mass) and mass > 0 for mass in masses.values())
    assert keeps(without_teff, list(masses), list(masses.values()))
    assert masses["flour-rice-sweet-shiratama"] == 9


def test_the_distance_is_that_of_what_it_says_it_holds(without_teff: BlendResult) -> None:
    masses = {part.ingredient: part.mass_g for part in without_teff.parts}
    assert without_teff.distance == pytest.approx(distance_of(without_teff, masses))
    assert without_teff.proven
    assert (without_teff.bound or 0) <= (without_teff.distance or 0) + 1e-9


def test_composition_has_each_flour_at_hand_in_its_order_and_no_other(
    without_teff: BlendResult,
) -> None:
    assert list(without_teff.composition) == [
        "flour-rice-white",
        "flour-buckwheat-whole",
        "flour-millet",
        "starch-potato-ciqual",
        "starch-corn",
        "flour-rice-sweet-shiratama",
    ]
    assert all(None not in held.values() for held in without_teff.composition.values())


def test_no_move_of_a_gram_comes_nearer(without_teff: BlendResult) -> None:
    keys = list(without_teff.composition)
    found = {part.ingredient: part.mass_g for part in without_teff.parts}
    base = [found.get(key, 0.0) for key in keys]
    for giver in range(len(keys)):
        for taker in range(len(keys)):
            for grams in (1, 2, 3):
                moved = list(base)
                moved[giver] -= grams
                moved[taker] += grams
                if giver != taker and min(moved) >= 0 and keeps(without_teff, keys, moved):
                    trial = dict(zip(keys, moved, strict=True))
                    assert distance_of(without_teff, trial) >= (without_teff.distance or 0) - 1e-9


@pytest.mark.parametrize(
    ("flours", "limits", "total_g"),
    [
        ("white rice flour, buckwheat flour, potato starch", ("starch 30..50",), 40),
        ("white rice flour, teff flour, maize starch, sweet rice flour", ("rice >= 5 g",), 24),
        ("brown rice flour, millet flour, tapioca starch", ("starch <= 33.3", "millet 3 g"), 30),
        ("sorghum flour, quinoa flour, potato starch", (), 25),
    ],
)
def test_no_blend_on_a_small_grid_is_nearer(
    demo: Asked, flours: str, limits: tuple[str, ...], total_g: float
) -> None:
    wish = BlendWish(flours, match="F2", limits=limits, total_g=total_g)
    result = choose_blend(wish, demo).result
    assert result.distance == pytest.approx(nearest(result, list(result.composition)))


def test_nothing_is_held_to_what_was_not_typed(demo: Asked) -> None:
    result = choose_blend(BlendWish(FLOURS, match="F2"), demo).result
    assert result.limits == ()
    assert [finding.code for finding in result.findings] == ["sweet_rice-high"]
    assert result.findings[0].limit == "sweet rice 5..12"
    held = choose_blend(BlendWish(FLOURS, match="F2", limits=("sweet rice 5..12",)), demo).result
    assert (held.distance or 0) > (result.distance or 0)
    assert "sweet_rice-high" not in [finding.code for finding in held.findings]


def test_left_out_flours_stay_out_and_stay_in_the_composition(demo: Asked) -> None:
    wish = replace(WITHOUT_TEFF, without=("teff", "millet"))
    result = choose_blend(wish, demo).result
    assert result.without == ("flour-millet",)
    assert "flour-millet" in result.composition
    assert "flour-millet" not in [part.ingredient for part in result.parts]
    paper = dict(zip(result.composition, (48, 16, 0, 28, 4, 9), strict=True))
    assert result.distance is not None
    assert result.distance <= distance_of(result, paper) + 1e-12


def test_the_blend_with_a_record_for_every_flour_is_the_one_without_millet(
    demo: Asked, without_teff: BlendResult
) -> None:
    found = without_teff.open_blend
    assert found is not None
    assert found.without == ("millet flour",)
    typed = choose_blend(replace(WITHOUT_TEFF, without=("millet flour",)), demo).result
    assert typed.parts == found.parts
    assert typed.open_blend is None


def test_a_wanted_profile_needs_no_formula(demo: Asked) -> None:
    wish = BlendWish(FLOURS, want="protein 6, fibre 2.6", limits=("starch 30..50",))
    result = choose_blend(wish, demo).result
    assert result.match is None
    assert result.total_g == 100
    assert list(result.target) == ["protein", "fibre"]
    assert result.got["protein"] == pytest.approx(6, abs=0.3)


def test_more_may_be_matched_and_then_counts_into_the_distance(demo: Asked) -> None:
    wish = replace(WITHOUT_TEFF, also=("starch", "water"))
    result = choose_blend(wish, demo).result
    assert list(result.target) == ["protein", "fat", "fibre", "starch", "water"]
    assert result.target["starch"] == pytest.approx(100 * 36 / 105)


def test_what_cannot_hold_together_has_no_blend_and_each_way_out_opens_it(demo: Asked) -> None:
    limits = ("starch 60..70", "potato starch <= 20", "maize starch <= 10 g")
    wish = BlendWish(FLOURS, match="F2", limits=limits)
    answer = choose_blend(wish, demo)
    assert answer.exit_code == 4
    assert answer.result.parts == ()
    assert [problem.where for problem in answer.problems] == ["--limit", "--limit 2", "--limit 3"]
    for problem in answer.problems:
        (option,) = problem.options
        again = replace(demo, answers=(f"{problem.where}={option.line}",))
        assert choose_blend(wish, again).exit_code == 0, option.line


def test_a_premix_is_ten_blends_and_their_dust(demo: Asked) -> None:
    made = choose_blend(replace(WITHOUT_TEFF, cakes=10), demo).result.premix
    assert made is not None
    assert made.total_g == pytest.approx(1050 * 1.02, abs=1)
    assert made.portion_g == 105
    assert made.order[-1].in_bowl_g == made.total_g


def test_what_is_sifted_with_a_blend_goes_into_its_premix(demo: Asked) -> None:
    wish = BlendWish("white rice flour, potato starch, buckwheat flour, sweet rice flour",
                     match="F3", cakes=10)  # fmt: skip
    made = choose_blend(wish, demo).result.premix
    assert made is not None
    assert made.portion_g == pytest.approx(70.25)
    assert "xanthan gum" in [line.name for line in made.lines]


def test_the_text_with_the_new_blend_reads_back_as_that_blend(
    demo: Asked, tmp_path: Path, without_teff: BlendResult
) -> None:
    new = tmp_path / "child.txt"
    answer = choose_blend(replace(WITHOUT_TEFF, write=new), demo)
    assert answer.result.written == str(new)
    child, parent = (read_formula(name, demo).result for name in (str(new), "F2"))
    masses = {line.ingredient: line.mass_g for line in child.lines}
    for part in without_teff.parts:
        assert masses[part.ingredient] == part.mass_g
    assert "teff-grain-raw" not in masses
    assert child.name == f"{parent.name}, without teff flour"
    rest = [line.read for line in parent.lines if line.ingredient not in masses]
    assert rest == ["20 g teff flour"]


def test_nothing_is_written_while_the_formula_asks_something(
    demo: Asked, write: Callable[[str], str], tmp_path: Path
) -> None:
    text = "Sponge\n\n60 g white rice flour\n40 g potato starch\n5 eggs\n100 g caster sugar\n"
    new = tmp_path / "child.txt"
    wish = BlendWish("buckwheat flour, potato starch", match=write(text), write=new)
    answer = choose_blend(wish, demo)
    assert answer.exit_code == 3
    assert not new.exists()
    told = choose_blend(replace(wish, write=None), demo)
    assert told.exit_code == 0
    assert "formula-asks" in [notice.code for notice in told.notices]


def test_the_small_bake_is_one_egg_and_its_share_of_the_blend(without_teff: BlendResult) -> None:
    small = without_teff.small
    assert small is not None
    assert (small.egg_g, small.blend_g) == (51, 21)
    assert "51 g takes 21 g" in small.text


def test_it_says_that_composition_is_not_taste(demo: Asked) -> None:
    codes = [notice.code for notice in choose_blend(WITHOUT_TEFF, demo).notices]
    assert "composition-only" in codes
    assert "step-counts-flours" in codes


def test_without_any_list_the_flours_of_the_book_are_taken_and_said(demo: Asked) -> None:
    answer = choose_blend(BlendWish(match="F2", limits=LIMITS), demo)
    codes = [notice.code for notice in answer.notices]
    assert {"flours-of-the-book", "flour-of-old-lot"} <= set(codes)
    assert "flour-millet" not in answer.result.composition
    assert "teff-grain-raw" in answer.result.composition
