"""A child with another blend names its parent and follows it."""

import pytest

from krume.design import Formula, read
from krume.design.varying import blend_lineage, blended, follow, lineage_of, with_head
from tests.design.varying.studio import demo

CHANGED = {
    "40 g white rice flour\n20 g teff flour\n30 g potato starch\n9 g sweet rice flour\n"
    "6 g maize starch": "46 g white rice flour\n14 g buckwheat flour\n4 g millet flour\n"
    "28 g potato starch\n4 g maize starch\n9 g sweet rice flour"
}


def _text(found: Formula) -> str:
    return "\n".join(line.text for line in found.source_lines) + "\n"


def _child() -> Formula:
    text = _text(demo("F2"))
    for old, new in CHANGED.items():
        assert old in text
        text = text.replace(old, new)
    plain = read(text, eggs_region="eu").value
    return read(with_head(text, blend_lineage("F2", demo("F2"), plain)), eggs_region="eu").value


def test_the_head_is_read_back_as_it_was_written() -> None:
    child = _child()
    head = lineage_of(child)
    assert head is not None
    assert head.parent == "F2"
    assert head.blend[:2] == ("46 g white rice flour", "14 g buckwheat flour")
    assert head == blend_lineage("F2", demo("F2"), child)
    assert child.name == "Tidewick vanilla sponge"


def test_of_an_unchanged_parent_the_child_is_as_it_was_made() -> None:
    child = _child()
    head = lineage_of(child)
    assert head is not None
    made = blended(demo("F2"), head, step_g=1.0)
    followed = follow(made, made, child.lines)
    assert not followed.follows
    assert not followed.decisions


def test_all_but_the_blend_follows_the_parent() -> None:
    head = lineage_of(_child())
    assert head is not None
    parent = read(_text(demo("F2")).replace("130 g caster sugar", "120 g caster sugar")).value
    grams = {line.name: line.mass_g for line in blended(parent, head, step_g=1.0)}
    assert grams["caster sugar"] == 120.0
    assert grams["buckwheat flour"] == 14.0
    assert "teff flour" not in grams


@pytest.mark.parametrize("step_g", [1.0, 0.1])
def test_with_more_flour_in_the_parent_the_blend_grows_alike(step_g: float) -> None:
    head = lineage_of(_child())
    assert head is not None
    parent = read(_text(demo("F2")).replace("40 g white rice flour", "50 g white rice flour")).value
    lines = blended(parent, head, step_g=step_g)
    flour = [line for line in lines if "flour" in line.name or "starch" in line.name]
    assert sum(line.mass_g or 0.0 for line in flour) == pytest.approx(115.0)
    assert flour[0].mass_g == pytest.approx(46 * 115 / 105, abs=step_g)


def test_an_older_head_is_taken_out_and_other_lines_stay() -> None:
    head = blend_lineage("F2", demo("F2"), _child())
    again = with_head(with_head(_text(demo("F2")), head), head)
    assert again.count("Parent: F2") == 1
    assert again.count("Parent was:") == 1
    for line in demo("F2").source_lines:
        assert line.text in again
