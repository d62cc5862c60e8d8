"""A slip told on a page: grams in boxes, the ways out first, the typed kept where it is wrong."""

import html
import re

import pytest
from starlette.testclient import TestClient

COVERS = ("bowl", "ways")


def _ways(text: str) -> list[str]:
    return re.findall(r'<h3 class="head"><span>([^<]*)</span>', text)


def test_each_line_has_a_box_with_its_plan_beside(client: TestClient) -> None:
    text = client.get("/slip/F2").text
    assert text.count('inputmode="decimal"') == 11
    assert "of 20 g" in text
    assert _ways(text) == []
    assert text.index("white rice flour") < text.index("butter") < text.index("lemon juice")


def test_a_blend_slip_has_its_three_ways_in_their_order_with_their_grams(
    client: TestClient,
) -> None:
    text = client.get("/slip/F2", params={"g8": "40", "g9": "26"}).text
    assert "<h1>Teff flour is 6 g over</h1>" in text
    assert _ways(text)[:2] == [
        "Fill the blend up, keep 31.5 g in a jar",
        "Leave it, go on as planned",
    ]
    first = text[text.index('class="out first"') : text.index("Leave it, go on")]
    assert re.findall(r'class="n">(\+[\d.]+)<', first) == ["+12", "+39", "+11.7", "+7.8"]
    assert "shift 0" in first
    assert "5 more ways" in text or "more way" in text


def test_more_ways_are_one_touch_away_and_say_what_is_not_there(client: TestClient) -> None:
    few = client.get("/slip/F2", params={"g9": "26"}).text
    found = re.search(r'href="([^"]*all=on)">', few)
    assert found is not None
    every = client.get(html.unescape(found[1])).text
    assert len(_ways(every)) > len(_ways(few)) == 3


def test_what_leaves_its_band_is_said_with_its_shape(client: TestClient) -> None:
    text = client.get("/slip/F2", params={"g8": "40", "g9": "26", "all": "on"}).text
    held = text[text.index("Less of the rest, same total") :]
    assert 'class="state off"' in held[:1500]
    assert "Starch 29.7 %" in held[:1500]


def test_sugar_over_by_ten_is_left_first(client: TestClient) -> None:
    text = client.get("/slip/F2", params={"g14": "140"}).text
    assert _ways(text)[0].startswith("Leave it")


def test_a_wrong_mass_is_said_beside_its_box_and_kept(client: TestClient) -> None:
    answer = client.get("/slip/F2", params={"g9": "a lot", "g8": "40"})
    assert answer.status_code == 422
    box = answer.text[answer.text.index('id="f-g9"') :]
    assert 'value="a lot"' in box[:200]
    assert 'aria-invalid="true"' in box[:400]
    assert 'id="wrong-g9"' in box[:1200]


def test_a_weight_many_times_the_plan_is_asked_and_answered_by_one_touch(
    client: TestClient,
) -> None:
    text = client.get("/slip/F2", params={"g9": "260"}).text
    assert _ways(text) == []
    found = re.search(r'class="choice" href="([^"]*)">26 g<', text)
    assert found is not None
    assert len(_ways(client.get(html.unescape(found[1])).text)) == 3


def test_spoilt_whites_and_a_line_at_its_end_are_heard(client: TestClient) -> None:
    text = client.get("/slip/F2", params={"spoilt": "2"}).text
    assert "whole egg" in text
    closed = client.get("/slip/F2", params={"g9": "18", "closed": "line 9"}).text
    assert "no more of it" in closed
    assert re.search(r'value="line 9" checked', closed)


def test_under_the_plan_is_said_as_under(client: TestClient) -> None:
    text = client.get("/slip/F2", params={"g9": "18", "closed": "line 9"}).text
    assert "2 under</strong>" in text or "2 under 20 planned" in text


def test_the_bar_shows_what_is_over_apart_from_the_plan(client: TestClient) -> None:
    text = client.get("/slip/F2", params={"g8": "40", "g9": "26"}).text
    assert 'fill="url(#over)"' in text
    assert "not yet weighed" in text
    exact = client.get("/slip/F2", params={"g8": "40"}).text
    assert 'fill="url(#over)"' not in exact


@pytest.mark.parametrize("name", ["F1", "F3", "F4", "F5", "F6", "F7"])
def test_every_formula_of_the_studio_has_its_boxes(client: TestClient, name: str) -> None:
    answer = client.get(f"/slip/{name}")
    assert answer.status_code == 200
    assert answer.text.count('inputmode="decimal"') >= 8


def test_an_unknown_formula_has_no_page(client: TestClient, bare: TestClient) -> None:
    assert client.get("/slip/F99").status_code == 404
    assert bare.get("/slip/F1").status_code == 404


def test_a_slip_changes_nothing_in_the_book(own: TestClient) -> None:
    before = own.get("/formulas/F2").text
    own.get("/slip/F2", params={"g9": "26"})
    assert own.get("/formulas/F2").text == before


SAID = {"g8": "40", "g9": "26"}


def _sheet(way: str, sheet: str) -> dict[str, str]:
    return {"way": way, "sheet": sheet, **SAID}


def test_each_way_has_its_corrected_cards_and_the_jar_its_own(client: TestClient) -> None:
    text = client.get("/slip/F2", params=SAID).text
    assert text.count("Write the corrected cards") == len(_ways(text)) == 3
    links = [html.unescape(x) for x in re.findall(r'href="(/slip/F2/card[^"]*)"', text)]
    files = [(re.findall(r"way=(\w+)&sheet=([\w.-]+)&", link) or [("", "")])[0] for link in links]
    assert files[:5] == [
        ("jar", "rescued-bench-card.html"),
        ("jar", "rescued-bench-card.pdf"),
        ("jar", "jar-blend-card.html"),
        ("jar", "jar-blend-card.pdf"),
        ("jar", "rescued.txt"),
    ]
    assert ("leave", "jar-blend-card.pdf") not in files
    kinds = {"html": "text/html", "pdf": "application/pdf", "txt": "text/plain"}
    for link, (_, file) in zip(links, files, strict=True):
        answer = client.get(link)
        assert answer.status_code == 200, link
        assert answer.headers["content-type"].startswith(kinds[file.rpartition(".")[2]])
        assert f'filename="F2-{file}"' in answer.headers["content-disposition"]


def test_a_corrected_card_says_the_slip_and_the_new_grams_and_keeps_nothing(
    own: TestClient,
) -> None:
    asked = _sheet("jar", "rescued-bench-card.html")
    first, second = (own.get("/slip/F2/card", params=asked) for _ in "ab")
    assert first.content == second.content
    for word in ("Corrected after a slip", "is in", "31.5 g in a jar", "136.5"):
        assert word in first.text
    text = own.get("/slip/F2/card", params=_sheet("leave", "rescued.txt")).text
    assert "130 g caster sugar" in text
    assert "26 g teff flour" in text
    assert "version 1, as it is now" in own.get("/formulas/F2").text


def test_a_way_or_a_sheet_that_is_not_there_is_not_found(client: TestClient) -> None:
    for way, sheet in (("leave", "jar-blend-card.pdf"), ("none", "rescued.txt"), ("jar", "passwd")):
        assert client.get("/slip/F2/card", params=_sheet(way, sheet)).status_code == 404
    assert client.get("/slip/F2/card").status_code == 404
