"""How quickly pages answer over a full book, how heavy they are, and how a key is felt."""

import random
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from itertools import count
from pathlib import Path
from statistics import median

from jinja2 import Environment
from playwright.sync_api import Browser, sync_playwright
from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import HTMLResponse
from starlette.routing import Route
from starlette.testclient import TestClient

from benchmarks.edits import EDITS, Edit
from benchmarks.measure import Row
from krume.store import Book, add_texts
from krume.usecases import Asked, load_demo
from krume.usecases.book.book import demo_files
from krume.web import application
from tests.browser import CHROMIUM
from tests.web.browsing import served
from tests.web.killing import killed, lost

FORMULAS, TRIALS, TIMES, EDITED, TAPS, KILLS = 1_000, 5_000, 20, 7, 12, 100
WISH_MS, WISH_KB = 100.0, 150.0
OWN = "http://127.0.0.1"
PAGES = (
    *("/", "/formulas", "/formulas?search=number+7", "/formulas/F2", "/formulas/F2?why=starch"),
    *("/formulas/F2?tin=round+24+x+7+cm", "/formulas/F2/edit", "/bench/F2", "/bake/F2"),
    *("/slip/F2", "/vary/F2", "/blend", "/blend/F2", "/eggs", "/teach/F2", "/tortes"),
    *("/tortes/T1", "/tortes/T1/label", "/orders", "/orders/101", "/orders/102"),
    *("/plan/2027-06-12", "/trials", "/trials?formula=F2", "/sums", "/sums/dial"),
    *("/pantry", "/pantry/lots", "/ovens", "/ovens/tins", "/oven", "/settings", "/health"),
)
SAME = "starlette and jinja, as many lines"

# A tap is felt once the next number is drawn: in the frame after it.
FELT = """async (selector) => {
  const button = [...document.querySelectorAll(selector)].find((b) => b.checkVisibility());
  const start = performance.now();
  button.click();
  document.body.getBoundingClientRect();
  return performance.now() - start;
}"""
BARE = """<!doctype html><title>a</title><button>a</button><output>0</output><script>
document.querySelector("button").onclick = () => {
  const output = document.querySelector("output");
  output.textContent = Number(output.textContent) + 1;
};</script>"""


def full_book(path: Path) -> None:
    """The demo studio with a thousand formulas and five thousand trials."""
    files, chance = dict(demo_files()), random.Random(1)  # noqa: S311
    own = [files[f"formulas/F{number}.txt"].decode() for number in range(1, 7)]
    for number in range(FORMULAS):
        name, _, rest = chance.choice(own).partition("\n")
        files[f"formulas/N{number}.txt"] = f"{name} number {number}\n{rest}".encode()
    head = files["trials.csv"].decode().splitlines()[0]
    rows = (
        f"x{n},N{n % FORMULAS},170,0.48,9,35,95,48,49,519,464,good,invented" for n in range(TRIALS)
    )
    files["trials.csv"] = ("\n".join([head, *rows]) + "\n").encode()
    add_texts(Book(path), files)


def rows() -> list[Row]:
    """Pages over a full book, their weight, a tap without network, and saves that are killed."""
    with tempfile.TemporaryDirectory() as folder:
        full_book(Path(folder) / "full")
        return [*_page_rows(Path(folder) / "full"), _tap_row(Path(folder)), _kill_row(Path(folder))]


def _page_rows(book: Path) -> list[Row]:
    """Each page as it stands and after each kind of edit, beside a bare page and the limit."""
    found, after, sizes = [], {}, []
    with TestClient(application(book), base_url=OWN) as client:
        for path in PAGES:
            text = client.get(path).text
            sizes.append(len(text.encode()) / 1000)
            with _bare(text) as bare:
                own_ms, peer_ms = _p95_ms(client, path), _p95_ms(bare, "/")
            taken = {name: _edited_ms(client, path, book, EDITS[name]) for name in EDITS}
            worst = max(taken, key=lambda name: taken[name])
            after[path, worst] = taken[worst]
            found += [
                Row(f"{path}, p95", own_ms, peer_ms, "ms", SAME),
                Row(f"{path} after {worst}, p95", taken[worst], peer_ms, "ms", SAME),
            ]
    slowest = max(row.own for row in found[::2])
    page, edit = max(after, key=lambda each: after[each])
    return [
        *found,
        _limit("slowest page, p95", slowest, WISH_MS, "ms"),
        _limit(
            f"slowest after an edit, p95: {page} after {edit}", after[page, edit], WISH_MS, "ms"
        ),
        _limit("heaviest page", max(sizes), WISH_KB, "kB"),
    ]


def _limit(what: str, own: float, most: float, unit: str) -> Row:
    return Row(what, own, most, unit, "what is wished", 1.0)


def _p95_ms(client: TestClient, path: str) -> float:
    """Of twenty times, the one that a single other is slower than; the first is left out."""
    client.get(path)
    return _p95([_get_ms(client, path) for _ in range(TIMES)])


def _edited_ms(client: TestClient, path: str, book: Path, edit: Edit) -> float:
    """The first time after an edit, for edit upon edit."""
    taken = []
    for _ in range(EDITED):
        edit(book, next(_numbers))
        taken.append(_get_ms(client, path))
    return _p95(taken)


_numbers = count(1)


def _get_ms(client: TestClient, path: str) -> float:
    start = time.process_time()
    client.get(path)
    return (time.process_time() - start) * 1000


def _p95(taken: list[float]) -> float:
    return sorted(taken)[round(0.95 * len(taken)) - 1]


@contextmanager
def _bare(text: str) -> Iterator[TestClient]:
    """A page of as many lines, filled in by a template and served by nothing else."""
    template = Environment(autoescape=True).from_string(
        "{% for line in lines %}{{ line }}\n{% endfor %}"
    )
    lines = text.splitlines()

    def same(_: Request) -> HTMLResponse:
        return HTMLResponse(template.render(lines=lines))

    with TestClient(Starlette(routes=[Route("/", same)]), base_url=OWN) as client:
        yield client


def _tap_row(folder: Path) -> Row:
    """A tap at the bench with the network gone, beside a bare page's."""
    load_demo(Asked(book=folder / "demo"))
    with served(folder / "demo") as address, sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=CHROMIUM, args=["--no-sandbox"])
        own_ms, peer_ms = _taps_ms(browser, f"{address}/bench/F2"), _bare_taps_ms(browser)
        browser.close()
    return Row("a tap at the bench, no network", own_ms, peer_ms, "ms", "a bare page's tap")


def _taps_ms(browser: Browser, address: str) -> float:
    context = browser.new_context(viewport={"width": 360, "height": 740})
    page = context.new_page()
    page.goto(address)
    page.locator(".bench[data-ready=yes]").wait_for()
    context.set_offline(True)
    taps = [page.evaluate(FELT, "[data-panel]:not([hidden]) .strip.in") for _ in range(TAPS // 2)]
    context.close()
    return float(median(taps))


def _bare_taps_ms(browser: Browser) -> float:
    page = browser.new_page()
    page.set_content(BARE)
    taps = [page.evaluate(FELT, "button") for _ in range(TAPS)]
    return float(median(taps))


def _kill_row(folder: Path) -> Row:
    """Saves that were said to be kept and are gone, after the app was killed a hundred times."""
    book = folder / "killed"
    load_demo(Asked(book=book))
    told = killed(book, times=KILLS)
    gone = len(lost(book, told))
    return Row(f"saves lost in {KILLS} kills", gone, told.total, "saves", "saves answered", 0.0)
