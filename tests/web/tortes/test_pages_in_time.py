"""`krume.web.tortes.pages`: how a torte stands, and its water only where the address asks."""

from starlette.testclient import TestClient


def test_the_page_says_how_it_stands_with_sign_and_word(client: TestClient) -> None:
    text = client.get("/tortes/T1").text
    part = text[text.index('id="standing"') : text.index('id="water"')]
    assert "firm enough" in part and "borderline" in part
    assert part.count('<svg class="glyph"') >= 4
    assert "needs, Pa" in part


def test_water_is_worked_out_when_the_address_asks(client: TestClient) -> None:
    plain = client.get("/tortes/T1").text
    assert "What is wet by when" in plain
    assert 'id="water-name"' not in plain
    asked = client.get("/tortes/T1", params={"water": "yes"}).text
    assert 'id="water-name"' in asked and 'id="water-phone-name"' in asked
    assert "Vanilla custard cream gives" in asked
    assert "never tested on a torte" in asked


def test_heights_that_are_tried_move_their_own_water(client: TestClient) -> None:
    low = client.get("/tortes/T1", params={"water": "yes"}).text
    high = client.get("/tortes/T1", params={"water": "yes", "h7": "20"}).text
    gives = "Vanilla custard cream gives"
    assert gives in high
    assert low[low.index(gives) :][:120] != high[high.index(gives) :][:120]


def test_a_torte_that_cannot_stand_has_no_word_for_it(client: TestClient) -> None:
    answer = client.get("/tortes/T1", params={"h5": "30", "water": "yes"})
    assert answer.status_code == 200
    assert 'id="standing"' not in answer.text
