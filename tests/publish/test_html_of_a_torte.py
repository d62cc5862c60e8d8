"""The torte plan as a page: its drawing inside, its policy right, nothing typed is markup."""

import base64
import hashlib
import re

import pytest

from krume.publish import Hold, plan_html
from tests.publish.plans import MADE_OF, called, sheet

HOSTILE = '<script>alert(1)</script> "><img src=x onerror=y>'


@pytest.mark.parametrize("name", MADE_OF)
def test_a_page_holds_its_two_drawings_and_its_figures(name: str) -> None:
    page, plan = plan_html(sheet(name)), sheet(name)
    assert page.count('<svg xmlns="http://www.w3.org/2000/svg" viewBox="-') == 2
    assert all(row.grams in page for row in plan.rows)
    assert page.count("<h1") == 1


def test_the_policy_allows_the_style_of_a_torte_page_and_nothing_inline() -> None:
    page = plan_html(sheet("T1"))
    (style,) = re.findall(r"<style>(.*?)</style>", page, re.DOTALL)
    digest = base64.b64encode(hashlib.sha256(style.encode()).digest()).decode()
    assert f"sha256-{digest}" in page
    assert ".m-sponge" in style
    assert not re.search(r"<[^>]+\sstyle=|<script", page)


def test_nothing_typed_is_markup() -> None:
    page = plan_html(called(HOSTILE))
    assert "<script>" not in page
    assert "<img" not in page
    assert "&lt;script&gt;" in page


def test_a_hold_stands_before_the_drawing() -> None:
    page = plan_html(sheet("T1", hold=Hold("L-008 may contain wheat.", "a valid test.")))
    assert page.index("L-008 may contain wheat.") < page.index('role="img"')
