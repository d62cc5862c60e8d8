"""The torte plan on paper: a page of work and one to pin up, words as text, drawn to scale."""

import io
import re
from dataclasses import replace
from typing import Any

import pytest
from pypdf import PdfReader

from krume.base import InputError
from krume.publish import PLAN_PAPERS, Hold, TorteSheet, plan_pdf
from tests.publish.bench import NOTE
from tests.publish.plans import MADE_OF, called, sheet

HOSTILE = '#panic("x") $ * _ @ref <label> `raw` \\ " \' #import "/etc/passwd": *'


def pdf(made: TorteSheet, paper: str = "a4") -> PdfReader:
    return PdfReader(io.BytesIO(plan_pdf(made, paper)))


def text_of(reader: PdfReader) -> str:
    return " ".join("\n".join(page.extract_text() for page in reader.pages).split())


@pytest.mark.parametrize("paper", PLAN_PAPERS)
@pytest.mark.parametrize("name", MADE_OF)
def test_a_demo_plan_is_one_page_of_work_and_one_to_pin_up(name: str, paper: str) -> None:
    plan = sheet(name)
    reader = pdf(plan, paper)
    assert len(reader.pages) == 2
    text = " ".join(reader.pages[0].extract_text().split())
    assert "From the side and from above" in reader.pages[1].extract_text()
    for row in (*plan.rows, plan.total):
        assert row.name in text
        assert row.grams.replace("\u202f", " ") in text.replace("\u202f", " ")
    for words in (*plan.slices, NOTE, "50 mm on this paper", "krume 0.1.0", "2027-06-10"):
        assert words in text


def test_the_words_in_the_drawing_are_text_too() -> None:
    text = " ".join(pdf(sheet("T3")).pages[0].extract_text().split())
    assert "ring Ø 220 mm" in text
    assert "Section at 1 : 1.5" in text
    assert text.count("set cream") == 2


def test_papers_are_as_large_as_they_are() -> None:
    sizes = {}
    for paper in PLAN_PAPERS:
        box = pdf(sheet("T1"), paper).pages[0].mediabox
        sizes[paper] = (float(box.width), float(box.height))
    assert sizes["a4"] == pytest.approx((595.28, 841.89), abs=0.1)
    assert sizes["letter"] == pytest.approx((612.0, 792.0), abs=0.1)


def test_the_drawing_is_a_figure_with_its_sentence() -> None:
    root: Any = pdf(sheet("T1")).trailer["/Root"]
    assert root["/MarkInfo"]["/Marked"]
    assert "Section of Orl hazel torte to scale, 203 mm wide and 66 mm high." in alts(root)


def alts(root: Any) -> set[str]:
    found: set[str] = set()
    stack = [root["/StructTreeRoot"]]
    while stack:
        node = stack.pop()
        node = node.get_object() if hasattr(node, "get_object") else node
        if isinstance(node, dict):
            found |= {str(node["/Alt"])} if "/Alt" in node else set()
            kids = node.get("/K", [])
            stack.extend(kids if isinstance(kids, list) else [kids])
    return found


def test_a_hold_and_what_opens_it_are_printed() -> None:
    text = text_of(pdf(sheet("T1", hold=Hold("L-008 may contain wheat.", "a valid test."))))
    assert re.search(r"HELD: L-008 may contain wheat\. To open it: a valid test\.", text)


@pytest.mark.parametrize("name", [HOSTILE, "תורטה", "Torte 🥜", "Torte " * 60])
def test_any_name_becomes_a_plan_and_is_only_words(name: str) -> None:
    assert plan_pdf(called(name)).startswith(b"%PDF-1.7")


def test_the_same_plan_is_the_same_bytes() -> None:
    assert plan_pdf(sheet("T2")) == plan_pdf(sheet("T2"))


def test_a_torte_plan_is_not_printed_on_a_card() -> None:
    with pytest.raises(InputError, match="a4 or letter"):
        plan_pdf(sheet("T1"), "a5")


def test_what_a_slice_holds_leaves_the_first_page_to_the_work_and_its_caution() -> None:
    eaten = tuple(
        f"Carbohydrate in 1 of {n} slices: about 31 g, from 27 to 35 g." for n in "123456"
    )
    pages = [page.extract_text() for page in pdf(replace(sheet("T1"), eaten=eaten)).pages]
    assert len(pages) == 2
    assert "Local law decides" in pages[0]
    assert "Carbohydrate" not in pages[0]
    assert "Carbohydrate" in pages[1]
