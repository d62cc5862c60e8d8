"""The words of a torte plan for paper and JSON."""

import json

import pytest

from krume.publish import plan_dict
from krume.publish.torte_plan import Section
from krume.publish.torte_words import printed_plan, scale_for
from krume.usecases import plain
from tests.publish.plans import MADE_OF, called, sheet


@pytest.mark.parametrize(
    ("name", "scale"), [("T1", "1 : 1.5"), ("T3", "1 : 1.5"), ("TART", "1 : 2")]
)
def test_the_section_is_drawn_at_the_scale_it_states(name: str, scale: str) -> None:
    plan = sheet(name)
    section = printed_plan(plan, room_mm=194.0)["section"]
    assert isinstance(section, dict)
    assert section["scale"] == scale
    assert section["wide"] * float(scale[4:]) == pytest.approx(plan.section.wide_mm)


def test_the_scale_is_the_first_that_fits_width_and_height() -> None:
    assert scale_for(Section("", 100.0, 150.0, "", ""), room_mm=194.0) == 1.5
    assert scale_for(Section("", 100.0, 160.0, "", ""), room_mm=194.0) == 2.0
    assert scale_for(Section("", 5000.0, 160.0, "", ""), room_mm=194.0) == 10.0


@pytest.mark.parametrize("name", MADE_OF)
def test_the_json_of_a_plan_holds_all_of_it(name: str) -> None:
    data = json.loads(json.dumps(plain(plan_dict(sheet(name)))))
    assert data["name"]
    assert len(data["rows"]) == len(sheet(name).rows)
    assert data["section"]["svg"].startswith("<svg")


def test_every_sign_on_paper_is_in_the_fonts() -> None:
    said = json.dumps(printed_plan(called("Torte 🥜"), room_mm=194.0), ensure_ascii=False)
    assert "🥜" not in said
    assert "[peanuts]" in said
