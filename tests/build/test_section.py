"""The section: well formed, named in a sentence, with figures that are those of the torte."""

import re
from dataclasses import replace
from itertools import pairwise

import pytest

from krume.base import InputError
from krume.build import cross_section, cross_sections, section_sentence, section_size_mm
from tests.build.studio import demo, torte_of, tree

SVG = "{http://www.w3.org/2000/svg}"
NAMES = ["T1", "T2", "T3", "TART"]


def words(drawing: str) -> list[str]:
    root = tree(drawing)
    return [text.text or "" for text in root.iter(f"{SVG}text")]


@pytest.mark.parametrize("name", NAMES)
def test_the_drawing_is_an_image_with_a_sentence_as_its_name(name: str) -> None:
    root = tree(cross_section(demo(name), ident="a"))
    assert root.get("role") == "img"
    assert root.get("aria-labelledby") == "a-name a-what"
    title, what = root.find(f"{SVG}title"), root.find(f"{SVG}desc")
    assert title is not None and what is not None
    assert title.text == section_sentence(demo(name))
    assert str(title.text).endswith(".")
    assert "g;" in str(what.text)


@pytest.mark.parametrize("name", NAMES)
def test_ids_are_used_and_none_is_twice(name: str) -> None:
    drawing = cross_section(demo(name))
    ids = re.findall(r' id="([^"]+)"', drawing)
    assert len(ids) == len(set(ids))
    assert set(re.findall(r"url\(#([^)]+)\)", drawing)) <= set(ids)


@pytest.mark.parametrize(
    ("name", "expected"),
    [
        ("T1", ["66", "14", "10", "4", "Ø 203 mm", "128.3", "224.0", "227.6", "1\u202f194.9"]),
        ("T2", ["Ø 74 mm", "74.4", "330.5", "753.1"]),
        ("T3", ["60", "12", "14", "8", "ring Ø 220 mm", "328.4", "1\u202f574.8"]),
        ("TART", ["25", "7.7", "3", "Ø 240 mm", "214.0", "380.0", "594.0"]),
    ],
)
def test_heights_and_grams_stand_beside_it(name: str, expected: list[str]) -> None:
    assert set(expected) <= set(words(cross_section(demo(name))))


@pytest.mark.parametrize("name", NAMES)
def test_the_grams_add_up_as_printed(name: str) -> None:
    said = [w.replace("\u202f", "") for w in words(cross_section(demo(name)))]
    grams = [float(w) for w in said if re.fullmatch(r"\d+\.\d", w)]
    total = max(grams)
    start = said.index("g")
    column = [float(w) for w in said[start + 1 :] if re.fullmatch(r"\d+\.\d", w)]
    assert sum(column) - total == pytest.approx(total, abs=0.05)


def test_one_unit_is_one_millimetre_and_a_bar_of_50_is_drawn() -> None:
    drawing = cross_section(demo("T1"))
    root = tree(drawing)
    view = [float(n) for n in str(root.get("viewBox")).split()]
    assert tuple(view[2:]) == pytest.approx(section_size_mm(demo("T1")), abs=0.01)
    assert re.search(r"h50M", drawing)
    assert "50 mm of torte" in words(drawing)


def test_two_tortes_share_one_scale_and_no_id() -> None:
    first, second = (tree(s) for s in cross_sections([demo("T1"), demo("T3")]))
    assert first.get("width") == second.get("width")
    assert str(first.get("viewBox")).split()[2] == str(second.get("viewBox")).split()[2]
    ids = [x.get("id") for root in (first, second) for x in root.iter() if x.get("id")]
    assert len(ids) == len(set(ids))


@pytest.mark.parametrize("name", ["<script>\"&'</script>", "\x00\x07", "Torte " * 300, "תורטה"])
def test_a_name_is_words_and_never_markup(name: str) -> None:
    drawing = cross_section(replace(demo("T1"), name=name))
    root = tree(drawing)
    assert "<script" not in drawing
    title = root.find(f"{SVG}title")
    assert title is not None and str(title.text).startswith("Section of")


def test_nothing_in_a_drawing_is_style_or_script_or_fetched() -> None:
    drawing = cross_section(demo("T1"))
    assert not re.search(r"style=|<script|<style|href|https?://(?!www\.w3\.org/2000/svg)", drawing)


def test_a_torte_of_twenty_thin_layers_keeps_its_labels_apart() -> None:
    torte = torte_of("20 layers of F1, 2 mm\n1 mm C1 between the layers")
    rows = re.findall(r'<text x="[\d.]+" y="([-\d.]+)" font-size="5" >', cross_section(torte))
    places = sorted({float(y) for y in rows})
    assert all(b - a > 5 for a, b in pairwise(places))


def test_a_torte_with_an_unknown_height_is_not_drawn() -> None:
    with pytest.raises(InputError, match="once every height"):
        cross_section(replace(demo("T1"), height_mm=None))


def test_a_height_stands_beside_the_middle_of_its_layer() -> None:
    found = re.findall(r'y="([\d.]+)" font-size="5" font-weight="800" text-anchor="end">(\d+)<',
                       cross_section(demo("T3")))  # fmt: skip
    middles = {(8, 4.0), (14, 15.0), (12, 28.0), (14, 41.0), (12, 54.0)}
    beside = {(int(said), round(float(y) - 1.75, 2)) for y, said in found}
    assert middles <= beside


def test_larger_words_keep_the_cake_as_it_is() -> None:
    small, large = (cross_section(demo("T1"), type_mm=size) for size in (5.0, 8.0))
    cake = re.compile(r"<g transform.*?</g>")
    assert cake.search(small) is not None
    assert cake.findall(small) == cake.findall(large)
    assert section_size_mm(demo("T1"), type_mm=8.0)[0] > section_size_mm(demo("T1"))[0]


def test_numbers_for_names_leave_the_drawing_narrower_and_its_grams_whole() -> None:
    torte = demo("T1")
    named, numbered = cross_section(torte), cross_section(torte, numbered=True)
    wide = [float(tree(each).attrib["viewBox"].split()[2]) for each in (named, numbered)]
    assert wide[1] < wide[0] - 15
    said = words(numbered)
    assert {str(number) for number in range(1, len(torte.layers) + 1)} <= set(said)
    assert "in all" in words(named)
    assert "in all" not in said
    assert said.count("227.6") == 1


def test_no_word_of_a_large_type_stands_outside_the_drawing() -> None:
    drawing = tree(cross_section(demo("T1"), type_mm=11.0, numbered=True))
    left, above, _, _ = (float(n) for n in drawing.attrib["viewBox"].split())
    for text in drawing.iter(f"{SVG}text"):
        size = float(text.attrib["font-size"])
        wide = len(text.text or "") * size * 0.9 if text.get("text-anchor") == "end" else 0.0
        assert float(text.attrib["y"]) - 0.75 * size >= above
        assert float(text.attrib["x"]) - wide >= left - 0.5 * size
