"""A real browser for the tests: Debian's Chromium, and no way out of this machine."""

from collections.abc import Iterator
from pathlib import Path
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import Browser, Page, Route, sync_playwright

CHROMIUM = Path("/usr/bin/chromium")
_OWN_SCHEMES = {"file", "data", "blob", "about"}


# One browser per module: while it is open, no other test of the thread can run an event loop.
@pytest.fixture(scope="module")
def browser() -> Iterator[Browser]:
    """Chromium, started once per module; a machine without it fails, and is never skipped."""
    if not CHROMIUM.exists():
        pytest.fail(f"{CHROMIUM} is missing: sudo apt-get install chromium libatomic1")
    with sync_playwright() as playwright:
        started = playwright.chromium.launch(
            executable_path=CHROMIUM, args=["--no-sandbox", "--disable-gpu"]
        )
        yield started
        started.close()


@pytest.fixture
def page(browser: Browser) -> Iterator[Page]:
    """A fresh page; one that asks for anything from another machine fails its test."""
    outside: list[str] = []

    def keep_inside(route: Route) -> None:
        address = urlsplit(route.request.url)
        if address.scheme in _OWN_SCHEMES or address.hostname == "127.0.0.1":
            route.continue_()
        else:
            outside.append(route.request.url)
            route.abort()

    context = browser.new_context()
    context.route("**/*", keep_inside)
    yield context.new_page()
    context.close()
    assert outside == []
