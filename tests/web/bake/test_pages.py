"""A bake as a page: the likeliest at once, its doubt when asked for, every limit named."""

import re

from starlette.testclient import TestClient


def _plain(text: str) -> str:
    return " ".join(re.sub("<[^>]*>", " ", text).split())


def test_the_doubt_is_worked_out_when_it_is_asked_for_and_then_stays(own: TestClient) -> None:
    first = own.get("/bake/F1").text
    assert "the likeliest bake, and how sure is not worked out yet" in first
    assert "Work out the doubt" in first
    worked = own.get("/bake/F1", params={"work": "1"}).text
    assert "check from 25 min" in _plain(worked)
    assert "Work out the doubt" not in worked
    assert "check from 25 min" in _plain(own.get("/bake/F1").text)


def test_the_first_drawing_is_the_curve_with_its_rule(client: TestClient) -> None:
    text = client.get("/bake/F1").text
    assert re.search(r"core last, 3\d min", text)
    assert "the same curve run as fast and as slow" not in text
    assert text.index("<svg xmlns") < text.index("In another tin or oven")
    assert 'id="bake-narrow-name"' in text


def test_another_tin_oven_fan_and_altitude_move_the_minutes(client: TestClient) -> None:
    def likely(**typed: str) -> float:
        found = re.search(r'class="big">([\d.]+)', client.get("/bake/F1", params=typed).text)
        assert found is not None
        return float(found[1])

    own = likely()
    assert likely(tin="round 26 x 7 cm") < own
    assert likely(oven="150 C") > own
    assert likely(fan="on") < own
    assert likely(altitude="1600") < own


def test_what_is_wrong_stands_beside_its_field_and_stays_typed(client: TestClient) -> None:
    text = client.get("/bake/F1", params={"oven": "170", "altitude": "high"}).text
    assert 'id="wrong-oven"' in text
    assert 'id="wrong-altitude"' in text
    assert 'value="high"' in text
    assert "No minutes yet" in text
    rim = client.get("/bake/F1", params={"tin": "round 16 x 4 cm"}).text
    assert "a limit forbids them" in rim
    assert 'id="wrong-tin"' in rim


def test_a_cream_has_no_minutes_and_a_name_that_is_not_there_is_404(client: TestClient) -> None:
    answer = client.get("/bake/C1")
    assert answer.status_code == 200
    assert "the model gives no minutes for it" in answer.text
    assert client.get("/bake/nothing").status_code == 404
    assert client.get("/bake/..%2Fstudio").status_code == 404


def test_the_dial_of_this_oven_is_said_with_which_side_it_is_off(client: TestClient) -> None:
    text = _plain(client.get("/bake/F1").text)
    assert "This oven is 12 °C under its dial: turn it to 182 °C" in text


def test_an_empty_book_has_no_formula_to_bake(bare: TestClient) -> None:
    assert bare.get("/bake/F1").status_code == 404


def test_all_pictures_are_there_with_their_names(client: TestClient) -> None:
    text = client.get("/bake/F1").text
    assert text.count("lines of equal temperature") == 6
    assert "Colour of the top: " in text
    assert "A screen is not a calibrated print" in text
    assert len(text.encode()) < 150_000


def test_two_tins_stand_beside_each_other_with_the_difference_in_words(client: TestClient) -> None:
    text = client.get("/bake/F1", params={"beside": "dark round 20 x 7 cm"}).text
    assert "The dark tin is ready about" in text
    assert "Both at " in text
    assert text.count('aria-labelledby="pair-') == 2
    assert '<input type="hidden" name="beside" value="dark round 20 x 7 cm">' in text


def test_a_tin_beside_itself_is_asked_beside_its_field_and_the_minutes_stay(
    client: TestClient,
) -> None:
    text = client.get("/bake/F1", params={"beside": "round 20 cm"}).text
    assert 'id="wrong-beside"' in text
    assert "the likeliest bake, and how sure" in text


def test_what_stands_round_the_tin_is_kept_open_and_said(client: TestClient) -> None:
    plain = client.get("/bake/F1").text
    text = client.get("/bake/F1", params={"under": "tray", "door": "10, 20"}).text
    assert "<details><summary>Round the tin" in plain
    assert "<details open><summary>Round the tin" in text
    assert "On a tray; the door opened at 10 and 20 min." in text
    assert '<option value="tray" selected>' in text
    wrong = client.get("/bake/F1", params={"door": "ten"}).text
    assert 'id="wrong-door"' in wrong
    assert "<details open>" in wrong


def test_worked_out_it_says_what_makes_the_doubt_and_what_comes_after(own: TestClient) -> None:
    text = _plain(own.get("/bake/F1", params={"work": "1"}).text)
    assert "How strongly this oven heats." in text
    assert "as it is now" in text
    assert "Fill it with a cream after" in text
    assert "Worked out with the doubt" not in text


def test_the_books_own_tins_are_offered_for_both(client: TestClient) -> None:
    text = client.get("/bake/F1").text
    assert '<option value="round 22 x 5 cm">' in text
    assert 'list="own-tins"' in text
    assert 'list="besides"' in text
    assert '<option value="wrapped">' in text


def test_the_picture_is_a_file_to_keep_and_a_question_leads_back(client: TestClient) -> None:
    kept = client.get("/bake/F1/picture.svg", params={"beside": "dark round 20 x 7 cm"})
    assert kept.status_code == 200
    assert kept.headers["content-type"].startswith("image/svg+xml")
    assert "bake-F1.svg" in kept.headers["content-disposition"]
    assert "Both at " in kept.text
    back = client.get(
        "/bake/F1/picture.svg", params={"beside": "round 20 cm"}, follow_redirects=False
    )
    assert back.status_code == 303
    assert back.headers["location"] == "/bake/F1?beside=round+20+cm"
    assert client.get("/bake/nothing/picture.svg").status_code == 404
