"""The card on paper: tagged, embedded, complete, the same bytes for the same card."""

import hashlib
import io
import subprocess
import sys
from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from pypdf import PdfReader

from krume.base import InputError, Interval
from krume.publish import BenchCard, ModelBake, card_pdf
from tests.design.studio import C1, C2, F1, F3, F4, F5, S1
from tests.publish.bench import HOLD, NOTE, card, long_formula, named

HOSTILE = (
    '#panic("x") $ * _ @ref <label> `raw` \\ " \' // /* ~ = + - [ ] { } #import "/etc/passwd": *'
)
A5 = (148 / 25.4 * 72, 210 / 25.4 * 72)


def pdf(made: BenchCard, paper: str = "a5") -> PdfReader:
    return PdfReader(io.BytesIO(card_pdf(made, paper)))


def root_of(reader: PdfReader) -> Any:
    return reader.trailer["/Root"]


def text_of(reader: PdfReader) -> str:
    return " ".join("\n".join(page.extract_text() for page in reader.pages).split())


@pytest.mark.parametrize("made", [F1, F3, F4, F5, C1, C2, S1], ids=lambda made: made.name)
def test_every_row_of_every_card_is_on_the_paper_in_order(made: object) -> None:
    found = card(made)  # type: ignore[arg-type]
    text = text_of(pdf(found))
    at = 0
    for row in found.rows:
        here = text.find(row.take, at)
        assert here >= 0, row.take
        at = here
        for word in (row.add, row.display):
            assert word in text[here:]


def test_lines_to_weigh_twice_are_marked_by_a_word_on_the_paper() -> None:
    text = text_of(pdf(card(F3)))
    assert "Weigh twice: xanthan gum, caster sugar. Weigh the eggs (by count ± 16 g)." in text
    assert "xanthan gum one step of 0.1 g is 40 % of it twice 0.25 70.3" in text
    assert "yolks of 4 eggs weigh about 70 weigh" in text
    assert "caster sugar, for the whites twice 60 60" in text
    assert "Weigh twice" not in text_of(pdf(card(C2)))


def test_the_hazel_sponge_is_one_card_with_all_that_belongs_on_it() -> None:
    found = card(F1, dial_c=182)
    reader = pdf(found)
    text = text_of(reader)
    assert len(reader.pages) == 1
    for words in (
        *("round Ø 20 × 7 cm", "182", "255", "± 20", "34–40", "95", "page 1 of 1"),
        *("144 + 87.5 + 63 + 167.5 + 5 + 75 = 542 g", NOTE, "draft 1, 2027-06-10"),
        *("krume 0.1.0, data 3fa9c1d2e4b5", "No gluten sentence: evidence not judged yet."),
        *("Cool in the tin 10 minutes", "Contains nuts (hazelnut), egg."),
    ):
        assert words in text


def test_the_pdf_is_tagged_titled_and_says_its_language() -> None:
    reader = pdf(card(F1))
    root = root_of(reader)
    assert root["/StructTreeRoot"]["/K"]
    assert root["/MarkInfo"]["/Marked"]
    assert root["/Lang"] == "en"
    assert root["/ViewerPreferences"]["/DisplayDocTitle"]
    assert reader.metadata is not None
    assert reader.metadata.title == "Orl hazel sponge"
    assert b"pdfuaid:part" in root["/Metadata"].get_data()


def test_headings_and_table_headers_are_tags_not_only_looks() -> None:
    reader = pdf(card(F1))
    kinds = list(tags(root_of(reader)["/StructTreeRoot"]["/K"]))
    assert kinds.count("/H1") == 1
    assert kinds.count("/TH") == 5
    assert kinds.count("/TR") == len(card(F1).rows) + 1


def tags(node: object) -> list[str]:
    """Kinds of all structure elements under a node."""
    item = node.get_object() if hasattr(node, "get_object") else node
    if isinstance(item, list):
        return [kind for child in item for kind in tags(child)]
    if not isinstance(item, dict) or "/S" not in item:
        return []
    return [str(item["/S"]), *(tags(item["/K"]) if "/K" in item else [])]


def test_all_fonts_are_in_the_file_and_are_the_packed_ones() -> None:
    for page in pdf(card(named(F1, "Фундук שלום"))).pages:
        resources: Any = page["/Resources"]
        for font in resources["/Font"].values():
            inner = font.get_object()["/DescendantFonts"][0].get_object()
            assert "/FontFile2" in inner["/FontDescriptor"]
            name = str(inner["/BaseFont"])
            assert "AtkinsonHyperlegibleNext" in name or "DejaVuSans" in name


def test_a_batch_too_long_for_one_card_goes_on_under_the_same_head() -> None:
    made = card(long_formula(40))
    reader = pdf(made)
    pages = [" ".join(page.extract_text().split()) for page in reader.pages]
    assert len(pages) > 1
    for number, page in enumerate(pages, start=1):
        assert page.startswith("Long")
        assert f"{number} of {len(pages)}" in page
        assert f"page {number} of {len(pages)}" in page
        assert "take add, g display was" in page
        assert ("goes on on the next card" in page) == (number < len(pages))
    text = " ".join(pages)
    assert all(f"{row.number} {row.take}" in text for row in made.rows if row.number)


def test_a_bowl_that_goes_on_says_what_the_display_shows() -> None:
    rows = card(long_formula(1)).rows
    many = [replace(rows[1], number=n, display=str(10 * n)) for n in range(1, 60)]
    text = text_of(pdf(replace(card(S1), rows=(rows[0], *many))))
    assert "Dry bowl goes on: the display shows" in text


def test_no_card_ends_with_a_tare_row() -> None:
    for count in range(6, 40):
        for page in pdf(card(long_formula(count))).pages:
            lines = [line for line in page.extract_text().splitlines() if line.strip()]
            begins = ("The batch goes", "Sum of")
            foot = next(i for i, line in enumerate(lines) if line.startswith(begins))
            assert "set the scale to 0" not in lines[foot - 1]


def test_a_hold_and_what_opens_it_stand_on_every_card() -> None:
    reader = pdf(card(long_formula(40), hold=HOLD))
    for page in reader.pages:
        text = " ".join(page.extract_text().split())
        assert f"HELD: {HOLD.text} To open it: {HOLD.opens}" in text


@pytest.mark.parametrize(
    ("paper", "size"), [("a5", A5), ("a4", (595.28, 841.89)), ("letter", (612, 792))]
)
def test_the_paper_is_the_one_asked_for(paper: str, size: tuple[float, float]) -> None:
    box = pdf(card(F1), paper).pages[0].mediabox
    assert (float(box.width), float(box.height)) == pytest.approx(size, abs=0.5)


def test_another_paper_is_refused_with_the_ones_there_are() -> None:
    with pytest.raises(InputError, match="a5, a4 or letter"):
        card_pdf(card(F1), "b5")


def test_a_date_that_is_none_is_refused() -> None:
    made = card(F1)
    with pytest.raises(InputError, match="2027-06-10"):
        card_pdf(replace(made, imprint=replace(made.imprint, date="10 June")))


def test_what_is_typed_is_never_code_on_paper() -> None:
    text = text_of(pdf(card(named(F1, HOSTILE))))
    assert text.count(HOSTILE) >= 2


def test_the_day_of_the_card_is_the_only_day_in_the_file() -> None:
    meta = pdf(card(F1)).metadata
    assert meta is not None
    assert meta.creation_date is not None
    assert meta.creation_date.date().isoformat() == "2027-06-10"


def test_two_processes_make_the_same_bytes() -> None:
    script = (
        "import hashlib; from krume.publish import card_pdf;"
        "from tests.publish.bench import card; from tests.design.studio import F1;"
        "print(hashlib.sha256(card_pdf(card(F1))).hexdigest())"
    )
    there = [
        subprocess.run(
            [sys.executable, "-c", script], capture_output=True, text=True, check=True
        ).stdout.strip()
        for _ in range(2)
    ]
    here = hashlib.sha256(card_pdf(card(F1))).hexdigest()
    assert there == [here, here]


def test_another_number_makes_other_bytes() -> None:
    lines = (replace(F1.lines[0], mass_g=51.0), *F1.lines[1:])
    assert card_pdf(card(F1)) != card_pdf(card(replace(F1, lines=lines)))


@settings(max_examples=40)
@given(st.text(max_size=60), st.text(max_size=60))
def test_any_name_at_all_becomes_a_card(name: str, note: str) -> None:
    made = card(named(F1, name))
    held = replace(HOLD, text=note)
    assert card_pdf(replace(made, hold=held)).startswith(b"%PDF-1.7")


@pytest.mark.parametrize("name", ["Very long title " * 60, "Unbrokentitle" * 400])
def test_a_name_too_long_for_a_card_is_cut_with_a_mark_and_pushes_no_number_off(name: str) -> None:
    made = card(named(F1, name))
    text = text_of(pdf(made))
    assert "…" in text
    assert all(row.display in text for row in made.rows)
    assert made.sum_text in text


def test_a_foot_longer_than_a_card_loses_no_word() -> None:
    made = card(F1)
    many = tuple(f"Sentence number {number} of a very long caution." for number in range(150))
    text = text_of(pdf(replace(made, cautions=many, hints=many)))
    assert all(text.count(sentence) == 2 for sentence in many)


@settings(max_examples=15)
@given(st.lists(st.integers(1, 160), min_size=1, max_size=30))
def test_rows_of_any_height_all_come_out(lengths: list[int]) -> None:
    made = card(S1)
    first, row = made.rows[:2]
    rows = [
        replace(row, number=at, take=f"n{at} " + "long words " * (length // 11))
        for at, length in enumerate(lengths)
    ]
    text = text_of(pdf(replace(made, rows=(first, *rows))))
    assert all(f"n{at}" in text for at in range(len(lengths)))


COOLED = "Turn out after 10 min; cut into layers after 75–115 min; fill after 110–190 min"
BAKE = ModelBake(
    Interval(25.0, 33.0, 43.0), 32.6, "core", 95.0, (0.0, 20.0, 40.0), (21.0, 60.0, 99.0)
)


def _count(count: int, **more: Any) -> tuple[int, str]:
    reader = pdf(card(long_formula(count), **more))
    text = "\n".join(page.extract_text() for page in reader.pages)
    return len(reader.pages), " ".join(text.split())


def test_the_small_curve_stands_only_where_it_costs_no_card() -> None:
    for count in (1, 8, 19):
        plain, drawn = _count(count, model=replace(BAKE, time_min=())), _count(count, model=BAKE)
        assert drawn[0] == plain[0]
        assert BAKE.text in drawn[1]
    assert "check from 25 33 latest 43 min" in _count(1, model=BAKE)[1]


def test_the_cooling_models_words_give_way_before_a_second_card() -> None:
    found = [(_count(count), _count(count, cooled=COOLED)) for count in (12, 18, 19)]
    assert all(longer[0] == plain[0] for plain, longer in found)
    said = ["By the cooling model" in longer[1] for _, longer in found]
    assert True in said and False in said
