"""The page's own sums in a real browser, called with plain values."""

import base64
from importlib.resources import files
from typing import Any

from playwright.sync_api import Page

STATIC = files("krume.web") / "static"


def call(page: Page, module: str, function: str, many: list[list[Any]]) -> list[Any]:
    """The answers of a function of a module of the page, one for each list of arguments."""
    text = base64.b64encode((STATIC / module).read_bytes()).decode()
    found: list[Any] = page.evaluate(
        """async ([address, name, many]) => {
            const module = await import(address);
            return many.map((each) => module[name](...each));
        }""",
        [f"data:text/javascript;base64,{text}", function, many],
    )
    return found


def module_page(page: Page, address: str) -> None:
    """A page of the app itself, from which its modules may be imported by address."""
    page.goto(f"{address}/health")
