"""A real browser is there for the tests that need one."""

import pytest
from playwright.sync_api import Page


def test_the_browser_lays_out_a_page(page: Page) -> None:
    page.set_viewport_size({"width": 360, "height": 640})
    page.set_content("<title>a page</title><main style='width:50%'>text</main>")
    box = page.locator("main").bounding_box()
    assert page.title() == "a page"
    assert box is not None
    assert box["width"] == pytest.approx((360 - 16) / 2, abs=1)
