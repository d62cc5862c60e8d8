"""A drawing as a file: the same drawing with the page's own colours in it, by day."""

import re
from importlib.resources import files

from krume.publish import cuts_drawing, drawing_file
from krume.publish.drawing_file import INKS
from tests.build.studio import tree
from tests.publish.cakes import cake_cut

TOKENS = files("krume.publish").joinpath("static/tokens.css").read_text(encoding="utf-8")


def test_its_inks_are_the_tokens_by_day() -> None:
    for name, ink in INKS.items():
        found = re.search(rf"--{name}: (?:light-dark\()?(#[0-9a-f]{{6}})", TOKENS)
        assert found is not None
        assert found[1] == ink


def test_every_class_of_a_drawing_has_its_ink_in_the_file() -> None:
    made = drawing_file(cuts_drawing([cake_cut()], ident="a"))
    used = {word for words in re.findall(r'class="([^"]+)"', made) for word in words.split()}
    assert used
    assert all(f".{word}" in made for word in used)


def test_it_stands_by_itself_with_its_size_and_its_name_first() -> None:
    root = tree(drawing_file(cuts_drawing([cake_cut()], ident="a")))
    assert root.attrib["width"] == root.attrib["viewBox"].split()[2]
    assert [child.tag.rpartition("}")[2] for child in root][:2] == ["title", "desc"]
