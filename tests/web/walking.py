"""Every page of the app, found from its routes and from the links its pages hold."""

import re
from collections.abc import Iterator
from dataclasses import dataclass, field
from html.parser import HTMLParser
from itertools import product
from urllib.parse import parse_qs, unquote, urljoin, urlsplit

from starlette.routing import Match, Route
from starlette.testclient import TestClient

from krume.web import application

NAMES = ("F2", "T1", "101", "CLASS7", "dial", "2027-06-12", "flour-rice-white", "1")
"""What a place in an address may be called in the demo studio, where no link says it."""

_PLACE = re.compile(r"\{(\w+)(?::\w+)?\}")
_EACH = 1
_WORDLESS = {"hidden", "submit", "button", "reset", "image"}


@dataclass(slots=True)
class Seen(HTMLParser):
    """What a page holds, as far as the tests ask."""

    html: str
    links: list[str] = field(default_factory=list)
    fetched: list[str] = field(default_factory=list)
    ids: list[str] = field(default_factory=list)
    headings: int = 0
    mains: int = 0
    language: str = ""
    unlabelled: list[str] = field(default_factory=list)
    inline: list[str] = field(default_factory=list)
    _labelled: set[str] = field(default_factory=set)
    _asked: list[tuple[str, str]] = field(default_factory=list)
    _inside_label: int = 0

    def __post_init__(self) -> None:
        HTMLParser.__init__(self)
        self.feed(self.html)
        self.unlabelled = [shown for key, shown in self._asked if key not in self._labelled]

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        said = {name: value or "" for name, value in attrs}
        if "id" in said:
            self.ids.append(said["id"])
        self.headings += tag == "h1"
        self.mains += tag == "main" or said.get("role") == "main"
        self._count(tag, said)
        self._addresses(tag, said)
        self._labels(tag, said)

    def handle_endtag(self, tag: str) -> None:
        self._inside_label -= tag == "label"

    def _count(self, tag: str, said: dict[str, str]) -> None:
        if tag == "html":
            self.language = said.get("lang", "")
        if tag == "style" or (tag == "script" and "src" not in said):
            self.inline.append(f"<{tag}>")
        self.inline += [f"{tag} {name}" for name in said if name == "style" or name[:2] == "on"]

    def _addresses(self, tag: str, said: dict[str, str]) -> None:
        if tag == "a" and "href" in said:
            self.links.append(said["href"])
        elif "href" in said and tag in ("link", "use", "image"):
            self.fetched.append(said["href"])
        self.fetched += [said[name] for name in ("src", "srcset", "action", "data") if name in said]

    def _labels(self, tag: str, said: dict[str, str]) -> None:
        if tag == "label":
            self._inside_label += 1
            self._labelled.add(said.get("for", ""))
        is_asked = tag in ("textarea", "select") or (
            tag == "input" and said.get("type", "text") not in _WORDLESS
        )
        named = said.get("aria-label") or said.get("aria-labelledby") or self._inside_label
        if is_asked and not named:
            self._asked.append((said.get("id", "no id"), said.get("name", "no name")))


def patterns() -> tuple[str, ...]:
    """The routes that answer a GET, each once."""
    return tuple(dict.fromkeys(route.path for route in _routes()))


def _routes() -> tuple[Route, ...]:
    found = (route for route in application(None).routes if isinstance(route, Route))
    return tuple(route for route in found if route.methods and "GET" in route.methods)


def pattern_of(path: str) -> str | None:
    """The route that answers a path."""
    scope = {"type": "http", "method": "GET", "path": unquote(path), "root_path": ""}
    matches = (route.path for route in _routes() if route.matches(scope)[0] == Match.FULL)
    return next(matches, None)


@dataclass(slots=True)
class Walk:
    """Pages by their route, what each route answers with, and links that lead nowhere."""

    by_pattern: dict[str, list[str]] = field(default_factory=dict)
    kinds: dict[str, str] = field(default_factory=dict)
    dead: list[str] = field(default_factory=list)
    faults: list[str] = field(default_factory=list)
    _counts: dict[tuple[str, tuple[str, ...]], int] = field(default_factory=dict)
    _waiting: list[tuple[str, str]] = field(default_factory=list)
    _met: set[str] = field(default_factory=set)

    def go(self, client: TestClient, also: tuple[str, ...] = ()) -> "Walk":
        """Follow every kind of link, from each route by the demo's own names and from `also`."""
        for pattern in patterns():
            self._waiting += [(address, "the routes") for address in _guessed(client, pattern)]
        self._follow(client)
        for address in also:
            self._look(client, address, "the test")
        self._follow(client)
        return self

    def _follow(self, client: TestClient) -> None:
        while self._waiting:
            address, origin = self._waiting.pop(0)
            if address not in self._met and self._is_new_kind(address):
                self._met.add(address)
                self._look(client, address, origin)

    def _is_new_kind(self, address: str) -> bool:
        parts = urlsplit(address)
        kind = (pattern_of(parts.path) or parts.path, tuple(sorted(parse_qs(parts.query))))
        self._counts[kind] = self._counts.get(kind, 0) + 1
        return self._counts[kind] <= _EACH

    def _look(self, client: TestClient, address: str, origin: str) -> None:
        answer = client.get(address, follow_redirects=False)
        if answer.status_code >= 500:
            self.faults.append(f"{address} answers {answer.status_code}")
        if answer.status_code >= 400:
            self.dead.append(f"{origin} leads to {address}: {answer.status_code}")
        pattern = pattern_of(urlsplit(address).path) or address
        if answer.is_redirect:
            self.kinds.setdefault(pattern, "a way on")
            self._add(answer.headers["location"], address)
        if answer.status_code >= 300:
            return
        self.kinds[pattern] = answer.headers["content-type"]
        if not is_page(self.kinds[pattern]):
            return
        self.by_pattern.setdefault(pattern, []).append(address)
        for link in Seen(answer.text).links:
            self._add(link, address)

    def _add(self, link: str, origin: str) -> None:
        whole = urlsplit(urljoin(f"http://krume{origin}", link))
        if whole.netloc == "krume":
            query = f"?{whole.query}" if whole.query else ""
            self._waiting.append((whole.path + query, origin))


def is_page(kind: str) -> bool:
    """Whether an answer is a page, not a file or a machine's answer."""
    return kind.startswith("text/html")


def _guessed(client: TestClient, pattern: str) -> Iterator[str]:
    """The first address of a route that answers; one without a name is taken as it is."""
    places = [found[0] for found in _PLACE.finditer(pattern)]
    for names in product(NAMES, repeat=len(places)):
        address = pattern
        for place, name in zip(places, names, strict=True):
            address = address.replace(place, name, 1)
        if not places or client.get(address, follow_redirects=False).status_code == 200:
            yield address
            return
