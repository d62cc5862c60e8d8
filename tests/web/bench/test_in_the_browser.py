"""The bench under a hand, in a real browser: clicks, keys, a cut line, two pages."""

import re

import pytest
from axe_playwright_python.sync_playwright import Axe  # type: ignore[import-untyped]
from playwright.sync_api import Browser, BrowserContext, Page, Route, expect

from krume.store import KeptStep, book_at, steps_of, trials_of
from krume.usecases import bench_of
from tests.browser import browser, page
from tests.web.bench.conftest import Served
from tests.web.browsing import cut, joined

__all__ = ["browser", "page"]

COVERS = ("addresses",)
PHONE = {"width": 360, "height": 740}
DESK = {"width": 1280, "height": 900}
PLAIN = ("in", "got", "not-weighed")


@pytest.fixture
def phone(page: Page) -> Page:
    """A phone's page."""
    page.set_viewport_size(PHONE)  # type: ignore[arg-type]
    return page


def opened(page: Page, served: Served, name: str = "F2") -> Page:
    page.goto(f"{served.address}/bench/{name}")
    page.wait_for_selector('.bench[data-ready="yes"]')
    return page


def steps(served: Served, name: str = "F2") -> list[KeptStep]:
    """What the book kept, once all of it has come in."""
    bench = bench_of(name, served.asked)
    return list(steps_of(book_at(served.asked.book), bench.key)) if bench.key else []


def panel(page: Page) -> str:
    found = page.locator("main [data-panel]:not([hidden])").first.get_attribute("data-panel")
    return found or ""


def press(page: Page) -> None:
    """The lowest strip of the panel that is shown."""
    page.locator("main .strip.in:visible").click()


def shows(page: Page) -> str:
    return page.locator('[data-x="display"]').inner_text()


def type_in(page: Page, grams: str) -> None:
    """The number by the big keys."""
    for key in grams:
        page.locator(f'[data-key="{key}"]').click()
    press(page)


def weigh_on(page: Page) -> None:
    """Go on to the end as the page says, eggs as planned."""
    for _ in range(60):
        now = panel(page)
        if now == "done":
            return
        if now == "number":
            type_in(page, page.locator('[data-x="about"] .n').inner_text().removesuffix("g"))
        else:
            press(page)
    pytest.fail("the weighing has no end")


def until(page: Page, question: str) -> None:
    """Wait until the page says yes; its policy lets no waiting script in."""
    for _ in range(300):
        if page.evaluate(question):
            return
        page.wait_for_timeout(50)
    pytest.fail(f"never: {question}")


def kept(page: Page) -> None:
    """Wait until nothing waits on the device."""
    until(page, "() => !Object.keys(localStorage).some((key) => key.startsWith('krume bench'))")


def to_the_slip(page: Page) -> None:
    press(page)
    assert shows(page) == "40"
    press(page)
    assert shows(page) == "60"
    page.get_by_text("It says something else").click()
    type_in(page, "66")
    page.wait_for_selector(".out >> nth=2")


def test_a_weighing_with_a_slip_by_clicks_to_its_trial(phone: Page, served: Served) -> None:
    opened(phone, served)
    assert panel(phone) == "tare"
    to_the_slip(phone)
    expect(phone.locator('[data-x="slip-text"]')).to_have_text("Teff flour is 6 g over.")
    titles = phone.locator(".out .head > span:first-child").all_inner_texts()
    assert titles == ["Same blend, more of it", "Leave it as it is", "Hold the total at 105"]
    adds = phone.locator(".out.first .adds .n").all_inner_texts()
    assert adds == ["+12", "+39", "+11.7", "+7.8"]
    phone.locator(".out.first").click()
    assert phone.locator('[data-x="was"]').inner_text() == "Card corrected. Put 31.5 g in a jar."
    assert (shows(phone), panel(phone)) == ("78", "add")
    phone.locator('[data-x="back"]').click()
    assert panel(phone) == "slip"
    phone.wait_for_selector(".out >> nth=2")
    phone.locator(".out.first").click()
    displays = []
    while panel(phone) == "add":
        displays.append(shows(phone))
        press(phone)
    assert displays == ["78", "117", "128.7", "136.5"]
    expect(phone.locator('[data-panel="tare"] [data-x="jar"]')).to_contain_text("31.5 g of it")
    weigh_on(phone)
    kept(phone)
    phone.locator('[data-panel="done"] .strip.in').click()
    phone.get_by_role("button", name="Whisk is out").click()
    phone.get_by_role("button", name="In the oven").click()
    phone.get_by_role("button", name="It is out").click()
    phone.get_by_label("Height in the middle").fill("49")
    phone.get_by_label("Core when it came out").fill("95")
    phone.get_by_label("One word").fill("springy")
    phone.get_by_role("button", name="Keep it").click()
    phone.wait_for_url("**/trials/*")
    expect(phone.locator("h1")).to_contain_text("Tidewick vanilla sponge")
    trial = trials_of(book_at(served.asked.book))[0]
    assert (trial.centre_mm, trial.core_c, trial.word, trial.edge_mm) == (49, 95, "springy", None)
    assert bench_of("F2", served.asked).key == ""


def test_all_of_it_goes_by_keys_alone(page: Page, served: Served) -> None:
    page.set_viewport_size(DESK)  # type: ignore[arg-type]
    opened(page, served)
    for _ in range(40):
        if panel(page) == "done":
            break
        if panel(page) == "number":
            about = page.locator('[data-x="about"] .n').inner_text().removesuffix("g")
            page.keyboard.type(about)
            page.keyboard.press("Enter")
            continue
        for _ in range(12):
            if page.evaluate("document.activeElement.matches('.strip.in')"):
                break
            page.keyboard.press("Tab")
        page.keyboard.press("Enter")
    assert panel(page) == "done"
    kept(page)
    assert sum(step.kind in PLAIN for step in steps(served)) == 13


STILL_WORKS = re.compile(
    r"Still works\. Your weighings are kept on this phone\. "
    r"What the book says here is of \d{4}-\d\d-\d\d \d\d:\d\d\."
)


def test_with_the_line_cut_it_goes_on_and_every_step_is_there_once(
    phone: Page, served: Served
) -> None:
    context: BrowserContext = phone.context
    opened(phone, served)
    press(phone)
    press(phone)
    kept(phone)
    cut(context)
    phone.get_by_text("It says something else").click()
    type_in(phone, "66")
    phone.wait_for_selector(".out >> nth=2")
    expect(phone.locator('[data-x="lost"]')).to_have_text(STILL_WORKS)
    adds = phone.locator(".out.first .adds .n").all_inner_texts()
    assert adds == ["+12", "+39", "+11.7", "+7.8"]
    phone.locator(".out.first").click()
    assert shows(phone) == "78"
    for _ in range(4):
        press(phone)
    assert panel(phone) == "tare"
    before = len(steps(served))
    joined(context)
    kept(phone)
    expect(phone.locator('[data-x="lost"]')).to_be_hidden()
    assert before == 2
    there = steps(served)
    assert [s.kind for s in there] == ["tare", "in", "got", "choose", "in", "in", "in", "in"]
    assert [s.got_g for s in there if s.kind == "in"] == [40.0, 52.0, 39.0, 11.7, 7.8]
    weigh_on(phone)
    kept(phone)
    assert sum(s.kind in PLAIN for s in steps(served)) == 14


def test_a_reload_opens_where_it_was_and_brings_what_waited(phone: Page, served: Served) -> None:
    opened(phone, served)
    for _ in range(3):
        press(phone)
    kept(phone)
    opened(phone, served)
    assert shows(phone) == "90"
    phone.route("**/said", lambda route: route.abort())
    press(phone)
    assert shows(phone) == "99"
    phone.unroute("**/said")
    opened(phone, served)
    assert shows(phone) == "99"
    kept(phone)
    assert [s.kind for s in steps(served)] == ["tare", "in", "in", "in"]


DEAF = """() => {
    const asked = window.fetch;
    window.fetch = (address, options) =>
        String(address).endsWith("/state") ? new Promise(() => {}) : asked(address, options);
}"""
"""A page that does not look by itself: it hears of the other one only when it says something."""


def test_two_pages_at_once_lose_nothing(browser: Browser, phone: Page, served: Served) -> None:
    opened(phone, served)
    device = browser.new_context(viewport=PHONE)  # type: ignore[arg-type]
    other = opened(device.new_page(), served)
    other.wait_for_load_state("networkidle")
    other.evaluate(DEAF)
    press(phone)
    press(phone)
    kept(phone)
    press(other)
    until(other, "() => document.querySelector('[data-x=display]').textContent === '60'")
    press(other)
    kept(other)
    device.close()
    phone.evaluate("document.dispatchEvent(new Event('visibilitychange'))")
    until(phone, "() => document.querySelector('[data-x=display]').textContent === '90'")
    there = steps(served)
    assert [(s.kind, s.position) for s in there if s.kind == "in"] == [("in", 1), ("in", 2)]
    assert bench_of("F2", served.asked).found.now == 3


def test_a_key_is_answered_without_the_network(phone: Page, served: Served) -> None:
    opened(phone, served)
    press(phone)
    phone.route("**/said", lambda _: None)
    answered = phone.evaluate(
        """() => {
            document.querySelector('[data-panel="add"] .strip.in').click();
            return document.querySelector('[data-x="display"]').textContent;
        }"""
    )
    assert answered == "60"


def test_a_number_that_cannot_be_is_asked_again(phone: Page, served: Served) -> None:
    opened(phone, served)
    press(phone)
    press(phone)
    phone.get_by_text("It says something else").click()
    type_in(phone, "30")
    expect(phone.locator('[data-x="wrong"]')).to_contain_text("40 g are in already")
    phone.locator("#shows").fill("")
    press(phone)
    expect(phone.locator('[data-x="wrong"]')).to_contain_text("Type what the display shows")


def test_too_little_is_no_slip_until_there_is_no_more(phone: Page, served: Served) -> None:
    opened(phone, served)
    press(phone)
    phone.get_by_text("It says something else").click()
    type_in(phone, "30")
    assert (shows(phone), phone.locator('[data-x="add"]').inner_text()) == ("40", "10")
    phone.get_by_text("It says something else").click()
    phone.get_by_role("button", name="There is no more").click()
    expect(phone.locator('[data-x="slip-text"]')).to_contain_text("10 g short")
    phone.wait_for_selector(".out")
    phone.locator(".out.first").click()
    assert panel(phone) == "add"


@pytest.mark.parametrize("size", [PHONE, DESK])
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_every_panel_passes_axe_and_nothing_moves_sideways(
    page: Page, served: Served, size: dict[str, int], scheme: str
) -> None:
    said: list[str] = []
    page.on("console", lambda message: said.append(message.text))
    page.set_viewport_size(size)  # type: ignore[arg-type]
    page.emulate_media(color_scheme=scheme)  # type: ignore[arg-type]
    opened(page, served)

    def look() -> None:
        found = [each["id"] for each in Axe().run(page).response["violations"]]
        assert found == [], page.url
        assert page.evaluate("document.documentElement.scrollWidth") <= size["width"]

    look()
    to_the_slip(page)
    look()
    page.locator(".out.first").click()
    look()
    page.get_by_text("It says something else").click()
    look()
    page.locator('[data-x="scale"]').click()
    weigh_on(page)
    look()
    kept(page)
    for path in ("clock", "cup", "end"):
        page.goto(f"{served.address}/bench/F2/{path}")
        look()
    page.get_by_role("button", name="Keep it").click()
    page.wait_for_url("**/trials/*")
    look()
    page.goto(f"{served.address}/offline")
    look()
    page.goto(f"{served.address}/trials")
    look()
    assert said == []


def test_a_link_tapped_while_a_weighing_is_on_its_way_is_followed_once_it_is_kept(
    phone: Page, served: Served
) -> None:
    opened(phone, served)
    weigh_on(phone)
    kept(phone)
    held: list[Route] = []

    is_slow = True

    def hold(route: Route) -> None:
        if is_slow:
            held.append(route)
        else:
            route.fallback()

    phone.route("**/said", hold)
    phone.locator('[data-x="back"]:visible').click()
    weigh_on(phone)
    link = phone.locator('main [data-panel="done"] a:visible').first
    address = link.get_attribute("href") or ""
    link.click()
    assert phone.url.endswith("/bench/F2")
    is_slow = False
    for each in held:
        each.fallback()
    phone.wait_for_url(f"**{address}")
    assert any(step.kind == "undo" for step in steps(served))


SMALL = """() => [...document.querySelectorAll("main :is(button, a.strip, summary, input)")]
  .filter((node) => node.type !== "hidden" && node.checkVisibility())
  .map((node) => [node.textContent || node.name, Math.round(node.getBoundingClientRect().height)])
  .filter(([, height]) => height < 64)"""


def test_everything_at_the_counter_takes_a_knuckle_and_the_lowest_strip_is_in_sight(
    phone: Page, served: Served
) -> None:
    opened(phone, served)

    def look() -> None:
        assert phone.evaluate(SMALL) == []
        box = phone.locator("main .strip.in:visible").bounding_box()
        assert box is not None
        assert box["y"] + box["height"] <= PHONE["height"] + 1

    look()
    press(phone)
    look()
    phone.get_by_text("It says something else").click()
    look()
    for height in (740, 640):
        phone.set_viewport_size({"width": 360, "height": height})
        key = phone.locator('[data-key="0"]:visible').bounding_box()
        strips = phone.locator(".numbering .act:visible").bounding_box()
        assert key is not None
        assert strips is not None
        assert key["y"] + key["height"] <= strips["y"], height
    phone.set_viewport_size(PHONE)  # type: ignore[arg-type]
    for path in ("clock", "cup", "end"):
        phone.goto(f"{served.address}/bench/F2/{path}")
        phone.wait_for_selector('.bench[data-ready="yes"]')
        look()


VOICES = """(languages) => {
  window.said = [];
  const voices = languages.map(([lang, localService]) => ({ lang, localService, name: lang }));
  Object.defineProperty(window, "speechSynthesis", { value: {
    getVoices: () => voices, cancel() {}, addEventListener() {},
    speak(words) { window.said.push([words.lang, words.text]); },
  } });
  window.SpeechSynthesisUtterance = class { constructor(text) { this.text = text; } };
}"""


@pytest.mark.parametrize(
    ("languages", "voices", "said"),
    [
        ('["en-GB"]', '[["en-GB", true]]', [["en-GB", "white rice flour. Stop at 40."]]),
        ('["de-DE", "en"]', '[["en-GB", true], ["de-DE", true]]', [["de-DE", "40"]]),
        ('["de-DE"]', '[["en-GB", true], ["de-DE", false]]',
         [["en-GB", "white rice flour. Stop at 40."]]),
    ],
)  # fmt: skip
def test_the_number_is_said_by_a_voice_of_this_device_in_the_persons_language(
    phone: Page, served: Served, languages: str, voices: str, said: list[list[str]]
) -> None:
    phone.add_init_script(
        f'Object.defineProperty(navigator, "languages", {{ value: {languages} }});'
        f"({VOICES})({voices});"
    )
    opened(phone, served)
    phone.get_by_role("button", name="Say the weights aloud").click()
    phone.evaluate("() => { window.said.length = 0; }")
    press(phone)
    assert phone.evaluate("window.said") == said


def test_without_a_voice_of_this_device_nothing_offers_to_speak(
    phone: Page, served: Served
) -> None:
    phone.add_init_script(f'({VOICES})([["en-GB", false]]);')
    opened(phone, served)
    expect(phone.locator("[data-x=aloud]")).to_be_hidden()


@pytest.mark.parametrize(
    ("lock", "is_told"),
    [
        ("{ request: () => Promise.resolve({}) }", False),
        ("{ request: () => Promise.reject(new Error()) }", True),
        ("undefined", True),
    ],
)
def test_a_screen_that_may_go_dark_is_told_of(
    phone: Page, served: Served, lock: str, *, is_told: bool
) -> None:
    phone.add_init_script(
        "delete Navigator.prototype.wakeLock;"
        if lock == "undefined"
        else f'Object.defineProperty(navigator, "wakeLock", {{ value: {lock} }});'
    )
    opened(phone, served)
    words = phone.get_by_text("This screen may go dark on its own.")
    expect(words).to_be_visible() if is_told else expect(words).to_be_hidden()


OTHERS = """async () => {
    const cache = await caches.open("krume bench other krume 0.0, data 0");
    await cache.put("/bench/F1", new Response("of another book"));
    localStorage.setItem("krume bench other F2", '[{"id": "z", "kind": "tare", "position": 0}]');
}"""
"""What a book that was served here before left on this device."""

OPENS = "async (path) => (await caches.match(path))?.text() ?? null"


def test_a_device_mixes_no_two_books_and_no_two_versions_of_the_program(
    phone: Page, served: Served
) -> None:
    phone.goto(f"{served.address}/health")
    phone.evaluate(OTHERS)
    opened(phone, served)
    until(phone, "() => navigator.serviceWorker.controller !== null")
    until(phone, "async () => (await caches.keys()).length === 1")
    (name,) = phone.evaluate("() => caches.keys()")
    made_by = phone.locator("html").get_attribute("data-made-by")
    assert name == f"krume bench {phone.locator('html').get_attribute('data-book')} {made_by}"
    assert phone.evaluate(OPENS, "/bench/F1") is None
    assert "bench" in phone.evaluate(OPENS, "/static/bench.js")
    press(phone)
    until(phone, "() => Object.keys(localStorage).length === 1")
    assert [step.client_id == "z" for step in steps(served)] == [False]
