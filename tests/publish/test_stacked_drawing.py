"""Drawings below each other: all of them, in order, none over another."""

from krume.publish import Shown, cuts_drawing, stacked_drawing
from tests.build.studio import tree
from tests.publish.cakes import cake_cut


def test_each_drawing_keeps_its_name_and_stands_below_the_one_before() -> None:
    parts = [Shown(f"Part {k}", cuts_drawing([cake_cut()], ident=f"p{k}"), "below") for k in (1, 2)]
    root = tree(stacked_drawing(parts, title="Both", ident="w"))
    inner = [child for child in root if child.tag.endswith("svg")]
    assert len(inner) == 2
    first, second = ((float(each.attrib["y"]), float(each.attrib["height"])) for each in inner)
    assert second[0] > sum(first)
    assert float(root.attrib["viewBox"].split()[3]) > sum(second)
    assert [child.text for child in root if child.tag.endswith("title")] == ["Both"]
    assert all("aria-labelledby" in each.attrib for each in inner)
