"""The app as a browser meets it: served on a free port of this machine, in a thread or alone."""

import socket
import subprocess
import sys
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from functools import cache
from importlib.resources import files
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

import uvicorn
from playwright.sync_api import Browser, BrowserContext, ConsoleMessage, Page, Route
from starlette.responses import PlainTextResponse
from starlette.types import ASGIApp, Receive, Scope, Send

from krume.usecases import Asked, init_book
from krume.web import application

HOST = "127.0.0.1"
_READY_S = 30.0
_GONE = threading.Event()
_OWN_SCHEMES = {"file", "data", "blob", "about"}


@contextmanager
def served(book: Path) -> Iterator[str]:
    """The app over a book on a free port, in a thread of this process; gives its address.

    A book that is not there is made, as the command does.
    """
    if not book.exists():
        init_book(Asked(book=book))
    _GONE.clear()
    with socket.create_server((HOST, 0)) as listening:
        config = uvicorn.Config(
            _behind_the_cut(application(book)),
            log_level="critical",
            access_log=False,
            ws="none",
            lifespan="off",
        )
        server = uvicorn.Server(config)
        thread = threading.Thread(target=server.run, args=([listening],), daemon=True)
        thread.start()
        try:
            yield f"http://{HOST}:{listening.getsockname()[1]}"
        finally:
            server.should_exit = True
            thread.join(_READY_S)


@contextmanager
def served_alone(book: Path, port: int = 0) -> Iterator[tuple[subprocess.Popen[str], str]]:
    """The app as a person starts it, a process of its own; gives it and its address."""
    words = [sys.executable, "-m", "krume", "serve", "--port", str(port), "--book", str(book)]
    with subprocess.Popen(
        words, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True
    ) as process:
        try:
            yield process, _said(process)
        finally:
            process.kill()


def _said(process: subprocess.Popen[str]) -> str:
    """The address a server tells once it listens."""
    assert process.stdout is not None
    for line in process.stdout:
        word = next((w for w in line.split() if w.startswith("http://")), "")
        if word:
            return word.rstrip("/.")
    raise AssertionError("the server ended before it told its address")


@dataclass
class Heard:
    """What a page said that it should not: on its console, and to other machines."""

    lines: list[str] = field(default_factory=list)
    outside: list[str] = field(default_factory=list)

    def listen(self, page: Page) -> None:
        """Hear all that a page says; a page that is not there may say so once."""
        page.on("console", self._console)
        page.on("pageerror", lambda error: self.lines.append(str(error)))

    def _console(self, message: ConsoleMessage) -> None:
        if "the server responded with a status of 404" not in message.text:
            self.lines.append(message.text)


@contextmanager
def visit(
    browser: Browser, width: int = 360, height: int = 740, **options: Any
) -> Iterator[tuple[BrowserContext, Page, Heard]]:
    """A person's own browser window; it may ask only this machine."""
    heard = Heard()

    def keep_inside(route: Route) -> None:
        address = urlsplit(route.request.url)
        if address.scheme in _OWN_SCHEMES or address.hostname == HOST:
            route.continue_()
        else:
            heard.outside.append(route.request.url)
            route.abort()

    context = browser.new_context(viewport={"width": width, "height": height}, **options)
    context.route("**/*", keep_inside)
    context.set_default_timeout(15_000)
    page = context.new_page()
    heard.listen(page)
    try:
        yield context, page, heard
    finally:
        context.close()


@cache
def _axe() -> str:
    return (files("axe_playwright_python") / "axe.min.js").read_text(encoding="utf-8")


def violations(page: Page, rules: tuple[str, ...] = ()) -> list[str]:
    """What axe finds wrong with a page as it stands, each with the first place it is at."""
    if not page.evaluate("'axe' in window"):
        page.evaluate(_axe())
    only = {"runOnly": {"type": "rule", "values": list(rules)}} if rules else {}
    found = page.evaluate("async (options) => (await axe.run(document, options)).violations", only)
    return [f"{each['id']}: {each['nodes'][0]['html'][:160]}" for each in found]


def cut(context: BrowserContext) -> None:
    """Take the network away; what a worker's page may still get through is not taken in either."""
    _GONE.set()
    context.set_offline(True)


def joined(context: BrowserContext) -> None:
    """Give the network back."""
    context.set_offline(False)
    _GONE.clear()


def _behind_the_cut(app: ASGIApp) -> ASGIApp:
    """The app, which hears nothing that is sent to it while the network is taken away."""

    async def heard(scope: Scope, receive: Receive, send: Send) -> None:
        if scope["type"] == "http" and scope["method"] == "POST" and _GONE.is_set():
            await PlainTextResponse("gone", status_code=503)(scope, receive, send)
        else:
            await app(scope, receive, send)

    return heard
