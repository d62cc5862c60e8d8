"""Pages of sheets: one file, nothing typed is markup, nothing is fetched."""

import re
from dataclasses import replace
from html.parser import HTMLParser

import pytest

from krume.publish import IndexPage, SheetFile, card_html, index_html, sheet_css
from krume.publish.glyphs import GLYPHS
from tests.design.studio import C2, F1, F3, S1
from tests.publish.bench import HOLD, IMPRINT, NOTE, card, named

HOSTILE = '<script>alert(1)</script> "><img src=x onerror=y> &amp; {{ 7*7 }}'


class Outline(HTMLParser):
    """Tags with their attributes, in order, and the text outside the style."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.words: list[str] = []
        self.feed(page)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))

    def handle_data(self, data: str) -> None:
        if self.tags and self.tags[-1][0] != "style":
            self.words.append(data)

    def names(self) -> list[str]:
        return [tag for tag, _ in self.tags]

    def text(self) -> str:
        return " ".join(" ".join(self.words).split())


def index(**more: object) -> IndexPage:
    page = IndexPage(
        title="Order 101",
        summary=("4 bench cards.",),
        held=(HOLD,),
        files=(SheetFile("F1 bench card.pdf", "bench card of the Orl hazel sponge, A5"),),
        missing=("Timetable: not part of this version yet.",),
        imprint=IMPRINT,
    )
    return replace(page, **more)  # type: ignore[arg-type]


PAGES = {
    "card": card_html(card(F1, dial_c=182, hold=HOLD)),
    "index": index_html(index()),
    "empty": index_html(index(files=(), held=(), missing=())),
}


@pytest.mark.parametrize("page", PAGES.values(), ids=PAGES)
def test_a_page_has_a_language_a_title_one_heading_and_a_main(page: str) -> None:
    outline = Outline(page)
    assert dict(outline.tags)["html"] == {"lang": "en"}
    assert outline.names().count("h1") == outline.names().count("main") == 1
    assert outline.names().count("title") == 1


@pytest.mark.parametrize("page", PAGES.values(), ids=PAGES)
def test_a_page_asks_nothing_of_anybody(page: str) -> None:
    outline = Outline(page)
    assert not {"script", "link", "img", "iframe", "object", "form"} & set(outline.names())
    assert all("style" not in attrs for _, attrs in outline.tags)
    assert not any(name.startswith("on") for _, attrs in outline.tags for name in attrs)
    policies = [attrs["content"] for tag, attrs in outline.tags if "http-equiv" in attrs]
    assert len(policies) == 1
    assert str(policies[0]).startswith("default-src 'none'; style-src 'sha256-")
    assert re.findall(r"url\(\"(?!data:font/woff2)", page) == []
    assert "http:" not in page
    assert "https:" not in page


def test_the_card_is_one_table_with_a_caption_and_scoped_heads() -> None:
    outline = Outline(PAGES["card"])
    assert outline.names().count("table") == outline.names().count("caption") == 1
    heads = [attrs.get("scope") for tag, attrs in outline.tags if tag == "th"]
    assert heads.count("col") == 5
    assert heads.count("row") == 12
    assert heads.count("rowgroup") == 6
    assert None not in heads


def test_every_row_and_the_whole_foot_stand_on_the_page() -> None:
    made = card(F1, dial_c=182, hold=HOLD)
    text = Outline(card_html(made)).text()
    for row in made.rows:
        assert row.take in text
        assert row.display in text
    for words in (*made.cautions, made.sum_text, made.origin, made.cooling, NOTE, HOLD.opens):
        assert words in text
    for fact in (*made.facts, *made.clocks):
        assert f"{fact.label} {fact.figure}" in text


def test_lines_to_weigh_twice_have_a_sign_and_a_word_on_the_page() -> None:
    page = card_html(card(F3))
    assert page.count('class="again"') == 5
    assert page.count("Weigh twice: ") == 1
    assert GLYPHS["twice"] in page
    assert 'class="again"' not in card_html(card(C2))


@pytest.mark.parametrize("name", [HOSTILE, "</style><b>x", "\x00\x1f \u202e"])
def test_what_is_typed_is_never_markup(name: str) -> None:
    made = card(named(F1, name), hold=replace(HOLD, text=name))
    hostile, plain = Outline(card_html(made)), Outline(card_html(card(named(F1, "x"), hold=HOLD)))
    assert hostile.names() == plain.names()
    assert "49" not in Outline(card_html(card(named(S1, "{{ 7*7 }}")))).text()


def test_an_index_puts_the_hold_before_the_files_and_says_what_is_missing() -> None:
    text = Outline(PAGES["index"]).text()
    assert text.index("HELD:") < text.index("F1 bench card.pdf") < text.index("Timetable")


def test_a_file_name_becomes_an_address_beside_the_page() -> None:
    page = index(
        files=(SheetFile('../x" onclick="y #1.pdf', "odd"), SheetFile("javascript:a", "b"))
    )
    addresses = [attrs["href"] for tag, attrs in Outline(index_html(page)).tags if tag == "a"]
    assert addresses == ["./../x%22%20onclick%3D%22y%20%231.pdf", "./javascript%3Aa"]


def test_an_empty_folder_says_so() -> None:
    assert "No sheet is written yet." in Outline(PAGES["empty"]).text()


def test_colours_and_sizes_stand_in_the_tokens_only() -> None:
    sheet = sheet_css().split("@layer tokens, sheet, paper;")[1]
    assert re.findall(r"#[0-9a-fA-F]{3,8}\b|rgba?\(|hsla?\(", sheet) == []
    at_page = re.sub(r"@page \{[^}]*\}|@media \([^)]*\)", "", sheet)
    assert re.findall(r"\b\d+(?:\.\d+)?(?:mm|pt|rem)\b", at_page) == []


def test_every_token_used_is_defined() -> None:
    css = sheet_css()
    defined = set(re.findall(r"(--[a-z0-9-]+):", css))
    assert set(re.findall(r"var\((--[a-z0-9-]+)", css)) <= defined


def test_a_name_that_turns_the_line_round_is_printed_the_way_it_is_written() -> None:
    page = card_html(card(named(F1, "\u202etaehw\u2066 torte")))
    assert "taehw torte" in page
    assert not set("\u202e\u2066") & set(page)
