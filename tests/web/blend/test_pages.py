"""A blend on a page: flours ticked, limits as lines, the nearest first said to be only that."""

import html
import re

from starlette.testclient import TestClient

COVERS = ("shown", "wishing")
LIMITS = "\n".join(
    (
        "starch 30..50",
        "sweet rice 9 g",
        "rice >= 25 g",
        "buckwheat <= 16 g",
        "potato starch 24..40 g",
        "maize starch 4..8 g",
    )
)
HAND = (
    "white rice flour",
    "buckwheat flour",
    "millet flour",
    "potato starch",
    "maize starch",
    "sweet rice flour",
)
ASKED = {"ask": "1", "flour": list(HAND), "limits": LIMITS}


def _now(text: str) -> dict[str, float]:
    rows = re.findall(r'<th scope="row" dir="auto">([^<]*)</th>.*?</tr>', text)
    grams = re.findall(
        r'<th scope="row" dir="auto">([^<]*)</th>(?:<td class="num">[^<]*</td>)?'
        r'<td class="num now"><span class="n">([\d.]+)<',
        text,
    )
    assert rows
    return {name: float(mass) for name, mass in grams}


def _address(text: str, label: str) -> str:
    found = re.search(rf'href="([^"]*)">{re.escape(label)}<', text)
    assert found is not None, label
    return html.unescape(found[1])


def test_flours_of_good_lots_are_ticked_and_nothing_is_looked_for_unasked(
    client: TestClient,
) -> None:
    text = client.get("/blend/F2").text
    boxes = dict(re.findall(r'name="flour" value="([^"]*)"( checked)?', text))
    assert boxes["buckwheat flour"] == " checked"
    assert boxes["millet flour"] == ""
    assert "Nearest by composition" not in text


def test_the_blend_without_teff_keeps_every_limit_and_says_it_is_proven(
    client: TestClient,
) -> None:
    text = client.get("/blend/F2", params=ASKED).text
    masses = _now(text)
    assert sum(masses.values()) == 105
    assert masses["sweet rice flour"] == 9
    assert masses["white rice flour"] >= 25
    assert masses["buckwheat flour"] <= 16
    assert "no blend within these limits is nearer" in text
    assert "Nearest by composition, taste not known" in text


def test_the_record_that_shuts_comes_first_and_one_touch_leaves_its_flour_out(
    client: TestClient,
) -> None:
    text = client.get("/blend/F2", params=ASKED).text
    records = text[text.index("Gluten records") :]
    assert records.index("its record ran out") < records.index("a record in force")
    opened = client.get(_address(text, "Leave millet flour out")).text
    assert "millet flour" not in _now(opened)
    assert "its record ran out" not in opened
    assert 'name="without" type="text" value="millet flour"' in opened


def test_what_each_flour_holds_and_its_sources_open_below_the_figures(
    client: TestClient,
) -> None:
    text = client.get("/blend/F2", params=ASKED).text
    told = text[text.index("Where these come from") :]
    rows = told[: told.index("</table>")]
    assert all(f'<th scope="row">{name}</th>' in rows for name in HAND)
    assert re.search(r"Sources: [a-z]", told)


def test_a_gluten_grain_is_named_before_any_gram(client: TestClient) -> None:
    asked = {"ask": "1", "more": "wheat flour, white rice flour, potato starch"}
    text = client.get("/blend/F2", params=asked).text
    named = text.index("Wheat flour is a gluten grain")
    assert named < text.index("<table")
    assert "brings cereals containing gluten (wheat)" in text


def test_a_clash_is_answered_by_its_least_loosening_in_the_limits_themselves(
    client: TestClient,
) -> None:
    asked = {**ASKED, "limits": "rice >= 80 g\nstarch >= 30"}
    text = client.get("/blend/F2", params=asked).text
    assert "No blend keeps all of these" in text
    assert text.count('class="choice"') == 2
    opened = client.get(_address(text, "rice at least 73 g")).text
    assert _now(opened)["white rice flour"] == 73
    assert "rice &gt;= 73 g\nstarch &gt;= 30</textarea>" in opened


def test_two_clashing_sets_end_in_a_blend_by_touches_alone(client: TestClient) -> None:
    limits = "teff <= 10\ntapioca starch 7..16 g\nchickpea flour <= 27 g\nstarch 27..51"
    more = "tapioca starch, chickpea flour, teff flour"
    text = client.get(
        "/blend/F2", params={"ask": "1", "more": more, "total": "100", "limits": limits}
    ).text
    touches = 0
    while "No blend keeps all of these" in text:
        found = re.search(r'class="choice" href="([^"]*)"', text)
        assert found is not None
        text = client.get(html.unescape(found[1])).text
        touches += 1
        assert touches < 5
    assert sum(_now(text).values()) == 100


def test_a_misspelt_flour_is_asked_and_corrected_in_its_field(client: TestClient) -> None:
    text = client.get("/blend/F2", params={**ASKED, "limits": "", "without": "buckweat"}).text
    assert "Asked first" in text
    mended = client.get(_address(text, "buckwheat flour")).text
    assert 'name="without" type="text" value="buckwheat flour"' in mended
    assert "buckwheat flour" not in _now(mended)


def test_a_flour_of_two_meanings_is_asked_and_stands_in_the_list(client: TestClient) -> None:
    text = client.get("/blend/F2", params={"ask": "1", "more": "potato flour, teff flour"}).text
    found = re.search(r'class="choice" href="([^"]*)">', text)
    assert found is not None
    mended = client.get(html.unescape(found[1])).text
    assert "Asked first" not in mended
    assert _now(mended)


def test_wrong_numbers_stand_beside_their_fields_and_stay(client: TestClient) -> None:
    asked = {**ASKED, "total": "nan", "most": "0", "cakes": "many"}
    answer = client.get("/blend/F2", params=asked)
    assert answer.status_code == 422
    for name in ("total", "most", "cakes"):
        assert f'id="wrong-{name}"' in answer.text
    assert 'value="nan"' in answer.text
    assert "starch 30..50" in answer.text


def test_nothing_ticked_is_asked_and_not_filled_in(client: TestClient) -> None:
    text = client.get("/blend/F2", params={"ask": "1"}).text
    assert "Which flours are at hand?" in text


def test_a_premix_tells_grams_bowl_and_the_order_of_mixing(client: TestClient) -> None:
    text = client.get("/blend/F2", params={**ASKED, "cakes": "10"}).text
    made = text[text.index("A premix for 10 cakes") :]
    assert "A cake takes" in made
    assert "each rubbed in before the next" in made


def test_kept_as_a_child_it_is_a_formula_of_the_book_and_the_parent_stays(
    own: TestClient,
) -> None:
    before = own.get("/formulas/F2/edit").text
    text = own.get("/blend/F2", params=ASKED).text
    kept = re.search(r'name="text"[^>]*>([^<]*)</textarea>\s*</div></details>', text)
    assert kept is not None
    answer = own.post("/formulas", data={"text": html.unescape(kept[1]), "name": "F2-no-teff"})
    assert answer.status_code == 200
    assert "without teff flour" in answer.text
    assert own.get("/formulas/F2/edit").text == before


def test_for_no_formula_it_asks_what_a_hundred_grams_hold(client: TestClient) -> None:
    text = client.get("/blend").text
    assert 'href="/blend/F2"' in text
    asked = {"flour": list(HAND), "ask": "1", "want": "protein 6, fat 1.1, fibre 2.6"}
    found = client.get("/blend", params=asked).text
    assert sum(_now(found).values()) == 100
    assert "Keep it as a text" in found


def test_an_empty_book_says_what_to_name(bare: TestClient) -> None:
    answer = bare.get("/blend")
    assert answer.status_code == 200
    assert "no lots of flours" in answer.text
    assert bare.get("/blend/F2").status_code == 404
