"""A formula's text with another blend in it: only the blend's lines change."""

from collections.abc import Callable, Iterable
from dataclasses import replace

import pytest

from krume.design import read
from krume.usecases import Asked, BlendLine
from krume.usecases.blend.flours import Flour, flours_named
from krume.usecases.blend.match import Match, aim_of
from krume.usecases.blend.text import (
    bare_text,
    child_text,
    count_notices,
    findings_of,
    name_that_reads_back,
    step_notices,
    what_changed,
)
from krume.usecases.sold.papers import papers_of

TEXT = (
    "Plain sponge\r\nBaked: 50 mm high, 300 g (measured)\r\n\r\n"
    "60 g white rice flour, sifted\r\n20 g teff flour\r\n40 g potato starch\r\n"
    "10 g white rice flour\r\n100 g caster sugar\r\n\r\n"
    "Sift the three flours.\r\nToast the teff first.\r\n"
)


def matched(name: str, asked: Asked) -> Match:
    """The formula a name means, as a match."""
    found = aim_of(name, None, ("protein",), asked, papers_of(asked)).match
    assert found is not None
    return found


def rows(names: Iterable[tuple[str, float]], asked: Asked) -> tuple[
    tuple[BlendLine, ...], dict[str, Flour]
]:  # fmt: skip
    """Lines of a blend and its flours."""
    pairs = dict(names)
    read_flours = flours_named(", ".join(pairs), asked, {}).value
    flours = {flour.key: flour for flour in read_flours}
    parts = [BlendLine(f.key, f.name, pairs[f.name], 0.0) for f in flours.values()]
    return tuple(parts), flours


@pytest.fixture
def match(demo: Asked, write: Callable[[str], str]) -> Match:
    """A sponge with a flour on two lines, and a twin question already answered."""
    answered = replace(demo, answers=("line 7=10 g white rice flour, for later",))
    return matched(write(TEXT), answered)


def test_lines_of_the_blend_change_in_place_and_all_others_stay(match: Match, demo: Asked) -> None:
    parts, flours = rows([("white rice flour", 75.0), ("buckwheat flour", 15.5),
                          ("potato starch", 40.0)], demo)  # fmt: skip
    assert child_text(match, parts, flours) == (
        "Plain sponge, without teff flour\r\nBaked: 50 mm high, 300 g (plan)\r\n\r\n"
        "75 g white rice flour, sifted\r\n40 g potato starch\r\n15.5 g buckwheat flour\r\n"
        "100 g caster sugar\r\n\r\nSift the three flours.\r\nToast the teff first.\r\n"
    )


def test_the_same_blend_leaves_its_lines_as_they_were(demo: Asked) -> None:
    match = matched("F2", demo)
    same, flours = rows([(p.flour.name, p.mass_g) for p in match.parts], demo)
    source = match.read.source.text
    assert child_text(match, same, flours).splitlines()[1:] == source.splitlines()[1:]
    assert what_changed(match, same) == ", another blend"


def test_steps_that_speak_of_what_is_gone_are_told(match: Match, demo: Asked) -> None:
    parts, flours = rows([("white rice flour", 90.0), ("potato starch", 40.0)], demo)
    child = read(child_text(match, parts, flours)).value
    assert [n.text.partition(":")[0] for n in step_notices(match, parts, child)] == [
        "step 2 still speaks of teff flour"
    ]
    assert [n.code for n in count_notices(child, parts)] == ["step-counts-flours"]
    kept, _ = rows([("white rice flour", 1.0), ("teff flour", 1.0), ("potato starch", 1.0)], demo)
    assert count_notices(child, kept) == ()


def test_a_blend_for_no_formula_is_a_text_of_its_own_that_reads_back(demo: Asked) -> None:
    parts, flours = rows([("white rice flour", 60.0), ("tapioca starch", 40.0)], demo)
    formula = read(bare_text(parts, flours)).value
    assert [(line.ingredient, line.mass_g) for line in formula.lines] == [
        ("flour-rice-white", 60.0),
        ("starch-tapioca", 40.0),
    ]


@pytest.mark.parametrize("name", ["millet", "teff", "sorghum", "white rice flour"])
def test_the_words_that_are_written_mean_the_same_flour(demo: Asked, name: str) -> None:
    (flour,) = flours_named(name, demo, {}).value
    line = read(f"Test\n\n40 g {name_that_reads_back(flour)}\n").value.lines[0]
    assert line.ingredient == flour.key


def test_a_share_outside_the_usual_comes_with_the_limit_to_type(demo: Asked) -> None:
    match = matched("F2", demo)
    parts, flours = rows([("white rice flour", 85.0), ("potato starch", 20.0)], demo)
    found = findings_of(read(child_text(match, parts, flours), eggs_region="eu").value)
    assert [(f.code, f.limit) for f in found] == [
        ("starch-low", "starch 30..50"),
        ("sweet_rice-low", "sweet rice 5..12"),
    ]
    assert found[0].value == pytest.approx(100 * 20 / 105)
