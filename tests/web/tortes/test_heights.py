"""Handles on the page of a torte: by form, by script, kept by a tap, a clash named."""

import re

from playwright.sync_api import Page, expect
from starlette.testclient import TestClient

from tests.browser import browser, page
from tests.web.bench.conftest import Served, served

__all__ = ["browser", "page", "served"]


def height(text: str) -> str:
    found = re.search(r"Heights add to ([\d.]+) mm", text)
    return found[1] if found else ""


def test_a_height_that_is_tried_moves_all_that_follows_and_keeps_nothing(
    client: TestClient,
) -> None:
    as_written = client.get("/tortes/T1").text
    tried = client.get("/tortes/T1", params={"h5": "12", "h7": "10"}).text
    assert (height(as_written), height(tried)) == ("66", "60")
    assert "384.9" in as_written
    assert "329.9" in tried
    assert "version 1, as it is now" in tried


def test_a_clash_is_named_with_what_fills_the_ring(client: TestClient) -> None:
    text = client.get("/tortes/T3", params={"h6": "15"}).text
    assert "The ring has 60 mm of height; 66 mm is needed" in text
    assert "2 x 11 mm of C2 fill the ring" in text
    way = re.search(r'href="(/tortes/T3[^"]*)">2 x 11', text)
    assert way is not None
    assert "It cannot stand" not in client.get(way[1].replace("&amp;", "&")).text


def test_what_is_no_height_stays_as_it_is_written(client: TestClient) -> None:
    for wrong in ("much", "-3", "0", "9999", "nan"):
        assert height(client.get("/tortes/T1", params={"h5": wrong}).text) == "66"


def test_one_tap_keeps_it_and_a_clash_keeps_nothing(own: TestClient) -> None:
    kept = own.post("/tortes/T1/heights", data={"h5": "12", "seen": "1"})
    assert kept.url.path == "/tortes/T1"
    assert "version 2, as it is now" in kept.text
    assert height(kept.text) == "60"
    late = own.post("/tortes/T1/heights", data={"h5": "13", "seen": "1"})
    assert late.status_code == 409
    assert 'name="h5" inputmode="decimal" autocomplete="off" value="13"' in late.text
    clash = own.post("/tortes/T3/heights", data={"h6": "15", "seen": "1"})
    assert clash.status_code == 422
    assert "Nothing was kept" in clash.text
    assert "version 1, as it is now" in clash.text


def test_under_a_hand_the_sums_follow_and_the_way_out_fills_the_ring(
    page: Page, served: Served
) -> None:
    page.set_viewport_size({"width": 360, "height": 740})
    page.goto(f"{served.address}/tortes/T3")
    more = page.get_by_role("button", name="F4, layer: 1 mm more")
    more.click()
    expect(page.locator("[data-live=clash]")).to_contain_text("62 mm is needed")
    page.get_by_role("link", name="2 x 13 mm of C2 fill the ring").click()
    expect(page.locator("[data-live=sums]")).to_contain_text("The ring is full: 60 of 60 mm")
    page.get_by_role("slider", name="C4 on top, slider").fill("6")
    expect(page.locator("[data-live=fit]")).to_contain_text("2 x 14 mm of C2")
    page.get_by_role("link", name="2 x 14 mm of C2 fill the ring").click()
    page.get_by_role("button", name="Keep as a new version").click()
    expect(page.locator("#versions")).to_contain_text("version 2, as it is now")
    assert page.locator("#f-h9").input_value() == "6"
