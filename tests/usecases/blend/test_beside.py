"""What stands beside the nearest blend: swaps, near blends of other flours, the open one."""

from dataclasses import replace
from datetime import date
from pathlib import Path

import pytest

from krume.usecases import Asked, BlendResult, BlendWish, choose_blend
from tests.usecases.blends import FLOURS, WITHOUT_TEFF, distance_of


@pytest.fixture(scope="module")
def found(book: Path) -> BlendResult:
    """The blend of F2 without teff."""
    return choose_blend(WITHOUT_TEFF, Asked(book=book)).result


def test_a_swap_puts_one_flour_in_for_what_is_missing_and_nothing_else(found: BlendResult) -> None:
    swap = next(each for each in found.one_for_one if each.name == "millet flour")
    masses = {part.ingredient: part.mass_g for part in swap.parts}
    assert masses == {
        "flour-rice-white": 40,
        "flour-millet": 20,
        "starch-potato-ciqual": 30,
        "starch-corn": 6,
        "flour-rice-sweet-shiratama": 9,
    }
    assert swap.distance == pytest.approx(distance_of(found, masses))
    assert swap.breaks == ()


def test_swaps_come_nearest_first_and_say_what_they_break(found: BlendResult) -> None:
    distances = [swap.distance for swap in found.one_for_one]
    assert distances == sorted(distances)
    assert len(distances) == 6
    first = found.one_for_one[0]
    assert (first.name, first.breaks) == ("buckwheat flour", ("buckwheat <= 16 g",))
    assert (found.distance or 0) < first.distance


def test_nothing_missing_needs_no_swap(demo: Asked) -> None:
    result = choose_blend(BlendWish(f"{FLOURS}, teff flour", match="F2"), demo).result
    assert result.one_for_one == ()
    assert result.match is not None
    assert result.match.missing == ()
    assert result.distance == pytest.approx(0, abs=1e-9)


def test_near_blends_are_of_other_flours_and_farther_away(found: BlendResult) -> None:
    used = [{part.ingredient for part in each.parts} for each in found.alternatives]
    used.append({part.ingredient for part in found.parts})
    assert all(one != other for at, one in enumerate(used) for other in used[at + 1 :])
    distances = [found.distance or 0, *(each.distance for each in found.alternatives)]
    assert distances == sorted(distances)
    assert found.alternatives[0].without == ("millet flour",)


def test_a_day_before_the_record_ran_out_there_is_nothing_to_open(demo: Asked) -> None:
    result = choose_blend(WITHOUT_TEFF, replace(demo, on=date(2027, 5, 30))).result
    assert result.open_blend is None
    assert {record.state for record in result.evidence} == {"good"}


def test_no_open_blend_is_offered_that_the_limits_forbid(demo: Asked) -> None:
    wish = replace(WITHOUT_TEFF, limits=(*WITHOUT_TEFF.limits, "millet >= 5 g"))
    result = choose_blend(wish, demo).result
    assert result.open_blend is None
    assert "flour-millet" in [part.ingredient for part in result.parts]


def test_other_blends_have_no_flour_by_the_gram(demo: Asked) -> None:
    wish = BlendWish("wheat flour, white rice flour, potato starch", match="F2")
    result = choose_blend(wish, demo).result
    assert result.alternatives
    least = min(part.mass_g for other in result.alternatives for part in other.parts)
    assert least >= 0.02 * 105


def test_a_limit_by_the_gram_still_leaves_other_blends(demo: Asked) -> None:
    wish = BlendWish(FLOURS, match="F2", limits=("sweet rice 1 g",))
    result = choose_blend(wish, demo).result
    assert result.alternatives
    for other in result.alternatives:
        grams = {part.name: part.mass_g for part in other.parts}
        assert grams["sweet rice flour"] == 1
