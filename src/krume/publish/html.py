"""Sheets as pages: one file each, nothing fetched from anywhere, nothing typed is ever markup."""

import base64
import hashlib
from dataclasses import dataclass
from functools import cache
from importlib.resources import files
from typing import TYPE_CHECKING
from urllib.parse import quote

from krume.base import unturned
from krume.publish.card import BenchCard, CardRow, Hold, Imprint
from krume.publish.glyphs import GLYPHS
from krume.publish.sheet import dated, is_unbaked, made_by
from krume.publish.torte_plan import TorteSheet

if TYPE_CHECKING:
    from jinja2 import Environment

_WEIGHTS = (400, 600, 800)


@dataclass(frozen=True, slots=True)
class SheetFile:
    """One written file: its name in the folder, and in a few words what it is."""

    name: str
    what: str

    @property
    def href(self) -> str:
        """The name as an address beside the page."""
        return "./" + quote(self.name)


@dataclass(frozen=True, slots=True)
class Frame:
    """What every page has: title, style, glyphs, and the policy that lets nothing else in."""

    title: str
    style: str
    policy: str
    glyphs: dict[str, str]


@dataclass(frozen=True, slots=True)
class Group:
    """The rows of one tare."""

    tare: CardRow | None
    rows: tuple[CardRow, ...]


@dataclass(frozen=True, slots=True)
class IndexPage:
    """The page of a folder of sheets."""

    title: str
    summary: tuple[str, ...]
    held: tuple[Hold, ...]
    files: tuple[SheetFile, ...]
    missing: tuple[str, ...]
    imprint: Imprint


def card_html(card: BenchCard) -> str:
    """A bench card as a page of its own: for a phone, a desk and A5 paper."""
    from markupsafe import Markup

    return page_html(
        "bench_card.html",
        title=f"{card.name} · bench card",
        imprint=card.imprint,
        card=card,
        groups=_groups(card.rows),
        # The drawing escapes every word in it when it is made.
        strip=Markup(card.strip),  # noqa: S704
    )


def plan_html(sheet: TorteSheet) -> str:
    """A torte plan as a page of its own: for a phone, a desk and A4 paper."""
    from markupsafe import Markup

    # The drawing escapes every word in it when it is made.
    drawing = None if sheet.section.svg is None else Markup(sheet.section.svg)  # noqa: S704
    return page_html(
        "torte_plan.html",
        title=f"{sheet.name} · torte plan",
        imprint=sheet.imprint,
        more_css="torte.css",
        sheet=sheet,
        drawing=drawing,
        side=None if sheet.side_svg is None else Markup(sheet.side_svg),  # noqa: S704
    )


def index_html(page: IndexPage) -> str:
    """The page of a folder: what holds first, then each file, then what is not there yet."""
    return page_html("index.html", title=page.title, imprint=page.imprint, page=page)


def page_html(
    template: str, *, title: str, imprint: Imprint, more_css: str = "", **words: object
) -> str:
    """A template as one page with everything in it; no sign of control, none that turns a line."""
    text = (
        _templates()
        .get_template(template)
        .render(
            frame=_frame(_plain(title), more_css),
            made_by=made_by(imprint),
            dated=dated(imprint),
            is_unbaked=is_unbaked(imprint),
            **words,
        )
    )
    return unturned("".join(sign for sign in text if sign == "\n" or sign >= " "))


def _plain(title: str) -> str:
    return " ".join(title.split())


def _groups(rows: tuple[CardRow, ...]) -> tuple[Group, ...]:
    groups: list[Group] = []
    for row in rows:
        if row.kind == "tare":
            groups.append(Group(row, ()))
        else:
            last = groups.pop() if groups else Group(None, ())
            groups.append(Group(last.tare, (*last.rows, row)))
    return tuple(groups)


@cache
def _templates() -> "Environment":
    from jinja2 import Environment, PackageLoader, StrictUndefined

    return Environment(
        loader=PackageLoader("krume.publish", "templates"),
        autoescape=True,
        undefined=StrictUndefined,
        trim_blocks=True,
        lstrip_blocks=True,
    )


def _frame(title: str, more_css: str) -> Frame:
    from markupsafe import Markup

    style = "\n".join((sheet_css(), *(_static(name) for name in (more_css,) if name)))
    digest = base64.b64encode(hashlib.sha256(style.encode()).digest()).decode()
    policy = (
        f"default-src 'none'; style-src 'sha256-{digest}'; font-src data:;"
        " base-uri 'none'; form-action 'none'"
    )
    # Styles and glyphs are the package's own files: they hold nothing a person typed.
    glyphs = {name: Markup(drawing) for name, drawing in GLYPHS.items()}  # noqa: S704
    return Frame(title, Markup(style), policy, dict(glyphs))  # noqa: S704


@cache
def sheet_css() -> str:
    """Fonts, tokens and styles of a sheet in one text."""
    return "\n".join((_static("tokens.css"), *map(_font_face, _WEIGHTS), _static("sheet.css")))


def _static(name: str) -> str:
    return files("krume.publish").joinpath("static", name).read_text(encoding="utf-8")


def _font_face(weight: int) -> str:
    data = files("krume.publish").joinpath("static", f"next-{weight}.woff2").read_bytes()
    address = f"data:font/woff2;base64,{base64.b64encode(data).decode()}"
    return (
        f'@font-face {{ font-family: "Krume Next"; src: url("{address}") format("woff2");'
        f" font-weight: {weight}; font-display: swap; }}"
    )
