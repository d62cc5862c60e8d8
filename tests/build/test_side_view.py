"""The side view: one drawing, described in words, refused while a height is not known."""

import pytest

from krume.base import Infeasible, InputError
from krume.build import build_torte, side_sentence, side_size_mm, side_view
from tests.build.studio import C1, PARTS, demo, plan_of, tree, without_density

SVG = "{http://www.w3.org/2000/svg}"


@pytest.mark.parametrize("name", ["T1", "T2", "T3", "TART"])
def test_it_is_one_drawing_with_a_name_and_a_description(name: str) -> None:
    torte = demo(name)
    root = tree(side_view(torte, ident="one"))
    assert root.find(f"{SVG}title") is not None
    described = root.find(f"{SVG}desc")
    assert described is not None and described.text
    assert f"{torte.slices[0].count} ×" in described.text
    ids = [each.get("id") for each in root.iter() if each.get("id")]
    assert all(str(each).startswith("one-") for each in ids)
    assert len(ids) == len(set(ids))


def test_the_legend_names_every_mark_that_is_seen_and_no_other() -> None:
    texts = [each.text for each in tree(side_view(demo("T3"))).iter(f"{SVG}text")]
    assert {"jelly", "set cream"} <= set(texts)
    assert "ganache" not in texts


def test_the_drawing_is_as_large_as_it_says() -> None:
    torte = demo("T1")
    wide, high = side_size_mm(torte)
    box = tree(side_view(torte)).get("viewBox")
    assert box is not None
    assert [float(x) for x in box.split()[2:]] == pytest.approx([wide, high], abs=0.01)
    assert wide > 203 and high > 66 + 203


def test_a_torte_with_an_unknown_height_is_not_drawn() -> None:
    plan = plan_of("A\n\n2 layers of F1, 14 mm\n200 g C1 between the layers")
    read = build_torte(plan, {**PARTS, "C1": without_density(C1)})
    assert not isinstance(read, Infeasible)
    with pytest.raises(InputError):
        side_view(read.value)


def test_the_sentence_says_what_is_seen() -> None:
    assert side_sentence(demo("T2")) == (
        "Lighthouse lemon roll from the side to scale, 330 mm long, cut into 12."
    )
