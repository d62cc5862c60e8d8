"""A person at the app: finds things by what they are called, and each touch is counted."""

from dataclasses import dataclass, field
from typing import Literal

from playwright.sync_api import Locator, Page

Role = Literal["link", "button"]

_MOST_KEYS = 160
_KEPT = """async () => {
  const cache = await caches.open((await caches.keys()).at(-1) ?? "none");
  const paths = (await cache.keys()).map((each) => new URL(each.url).pathname);
  const all = ["", "/clock", "/cup", "/end", "/state"].map((end) => location.pathname + end);
  const all_here = [...all, "/offline"].every((each) => paths.includes(each));
  return Boolean(navigator.serviceWorker.controller) && all_here;
}"""
_IS_THERE = "(node) => node === document.activeElement"

OWN_TEXT = """\
Aunt Ilse's lemon cake
Tin: round 20 x 7 cm
Oven: 170

60 g rice flour
50 g potato starch
5 eggs
130 g caster sugar
20 g butter
4 g lemon juice

Beat yolks and sugar, whisk the whites, fold in the flours.
Bake 35 minutes, core 95 C.
"""


@dataclass(slots=True)
class Person:
    """Whoever holds the phone, or sits at the keys; `steps` is what was done, in words."""

    page: Page
    by_keys: bool = False
    steps: list[str] = field(default_factory=list)
    touches: int = 0

    def tap(self, role: Role, name: str) -> None:
        """Touch what is called so."""
        self.touch(self.page.get_by_role(role, name=name, exact=True).first, name)

    def touch(self, target: Locator, word: str) -> None:
        """Touch a thing, or come to it by keys and press it."""
        self.steps.append(word)
        self.touches += 1
        if not self.by_keys:
            target.click()
            return
        self._come_to(target, word)
        self.page.keyboard.press("Enter")

    def write(self, label: str, text: str) -> None:
        """Type into the box of a label; coming to it is a touch, its letters are not."""
        box = self.page.get_by_label(label).first
        self.steps.append(f"type into {label}")
        self.touches += 1
        if self.by_keys:
            self._come_to(box, label)
            self.page.keyboard.press("Control+a")
            self.page.keyboard.insert_text(text)
        else:
            box.fill(text)

    def _come_to(self, target: Locator, word: str) -> None:
        target.wait_for(state="visible")
        for _ in range(_MOST_KEYS):
            if target.evaluate(_IS_THERE):
                return
            self.page.keyboard.press("Tab")
        raise AssertionError(f"the keys never come to {word}")

    def more(self, name: str) -> None:
        """Open what stands behind “More”, and take it."""
        self.touch(self.page.locator("summary", has_text="More").first, "More")
        self.tap("link", name)

    def paste(self, text: str) -> None:
        """From the first page of an empty book to what was understood of one's own text."""
        self.tap("link", "Paste a formula")
        self.write("Paste it, or type it", text)
        self.tap("button", "Read it")
        self.page.wait_for_url("**/formulas/*")

    def answer_all(self) -> int:
        """Answer every question by a tap on its first answer; says how many there were."""
        count = 0
        choices = self.page.locator("form button.choice")
        while choices.count():
            with self.page.expect_navigation():
                self.touch(choices.first, choices.first.inner_text())
            count += 1
            assert count <= 12, self.page.locator(".asked").all_inner_texts()
        return count

    def panel(self) -> str:
        """The one panel of the bench that is shown."""
        name = self.page.locator("[data-panel]:not([hidden])").first.get_attribute("data-panel")
        return name or ""

    def at_the_bench(self) -> None:
        """Wait until the bench answers a hand."""
        self.page.locator(".bench[data-ready=yes]").wait_for()

    def weigh_row(self) -> bool:
        """Do what the bench says next, as it says it; False once all of it is in."""
        panel = self.panel()
        if panel == "tare":
            self.tap("button", "It shows 0")
        elif panel == "add":
            self.tap("button", "It’s in")
        elif panel == "number":
            figure = self.page.locator("[data-x=about] .n").inner_text()
            self.write("What does the display show?", figure.removesuffix("g").strip())
            self.tap("button", "It shows that")
        return panel != "done"

    def weigh_all(self, most: int = 60) -> None:
        """Weigh whatever is left."""
        for _ in range(most):
            if not self.weigh_row():
                return
        raise AssertionError(f"still at {self.panel()} after {most} rows")

    def all_kept(self) -> None:
        """Wait until the book has all that this device holds of the weighing."""
        self.page.wait_for_function("() => localStorage.length === 0", timeout=60_000)

    def kept_pages(self) -> None:
        """Wait until the pages of this bench would open without the network."""
        for _ in range(300):
            if self.page.evaluate(_KEPT):
                return
            self.page.wait_for_timeout(100)
        raise AssertionError("the pages of the bench are never kept")

    def slip(self, over_g: float) -> None:
        """Pour too much of the row that is shown."""
        shows = float(self.page.locator("[data-x=display]").inner_text())
        self.tap("link", "It says something else")
        self.write("What does the display show?", f"{shows + over_g:g}")
        self.tap("button", "It shows that")
        self.page.locator(".ways .out").first.wait_for()
