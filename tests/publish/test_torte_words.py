"""The words of a torte plan for paper and JSON."""

import json
import re
from dataclasses import replace

import pytest

from krume.build import Outline
from krume.publish import plan_dict, torte_sheet
from krume.publish.torte_plan import ROOM_MM
from krume.publish.torte_words import printed_plan
from krume.usecases import plain
from tests.build.studio import demo
from tests.publish.bench import IMPRINT
from tests.publish.plans import MADE_OF, called, sheet


@pytest.mark.parametrize(("name", "scale"), [("T1", 1.5), ("T3", 1.5), ("TART", 2.0)])
def test_the_section_is_drawn_at_the_scale_it_states(name: str, scale: float) -> None:
    section = printed_plan(sheet(name))["section"]
    assert isinstance(section, dict)
    assert section["scale"] == f"1 : {scale:g}"
    view = re.search(r'viewBox="\S+ \S+ (\S+) ', section["svg"])
    assert view is not None
    assert section["wide"] * scale == pytest.approx(float(view[1]), abs=0.01)
    assert section["wide"] <= ROOM_MM


def test_words_in_the_drawing_are_as_large_on_paper_at_any_scale() -> None:
    for name in MADE_OF:
        paper = sheet(name).section.paper
        assert paper is not None
        sizes = {float(size) for size in re.findall(r'font-size="([^"]+)"', paper.svg)}
        assert max(sizes) / paper.scale == pytest.approx(10 / 3, abs=0.01)


def test_a_torte_too_wide_for_any_scale_takes_the_last() -> None:
    vast = torte_sheet(
        replace(demo("T1"), outline=Outline(400.0)), {}, IMPRINT, families={}
    ).section.paper
    assert vast is not None
    assert vast.scale == 10.0


@pytest.mark.parametrize("name", MADE_OF)
def test_the_json_of_a_plan_holds_all_of_it(name: str) -> None:
    data = json.loads(json.dumps(plain(plan_dict(sheet(name)))))
    assert data["name"]
    assert len(data["rows"]) == len(sheet(name).rows)
    assert data["section"]["svg"].startswith("<svg")


def test_every_sign_on_paper_is_in_the_fonts() -> None:
    said = json.dumps(printed_plan(called("Torte 🥜")), ensure_ascii=False)
    assert "🥜" not in said
    assert "[peanuts]" in said
