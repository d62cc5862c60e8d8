"""A cream for a ring as a page: the form keeps what was typed, and says what is wrong beside it."""

from starlette.testclient import TestClient


def test_the_bare_form_answers_on_an_empty_book_too(client: TestClient, bare: TestClient) -> None:
    assert client.get("/fill").status_code == 200
    assert bare.get("/fill").status_code == 200


def test_it_says_litres_grams_cartons_and_leaves(client: TestClient) -> None:
    typed = {"cream": "C2", "ring": "24 x 6 cm", "disc": "2 x 22 cm x 12 mm", "waste": "4"}
    text = client.get("/fill", params=typed).text
    for words in ("1.8 l, ", "297.5 g", "4 of 200 ml; 138 ml left", "by the root rule"):
        assert words in text
    assert 'value="2 x 22 cm x 12 mm"' in text
    assert 'action="/fill#answer"' in text
    assert 'id="answer"' in text


def test_what_is_wrong_stands_beside_its_field(client: TestClient) -> None:
    answer = client.get("/fill", params={"cream": "C2", "ring": "24", "carton": "many"})
    assert answer.status_code == 422
    assert "Type a number, such as 5." in answer.text
    answer = client.get("/fill", params={"cream": "C2", "ring": "24"})
    assert "How high is the ring?" in answer.text and 'aria-invalid="true"' in answer.text
    assert "Which ring?" in client.get("/fill", params={"cream": "C2"}).text
    assert (
        "There is no C99" in client.get("/fill", params={"cream": "C99", "ring": "9 x 9 cm"}).text
    )


def test_discs_that_do_not_go_in_are_refused_with_the_nearest(client: TestClient) -> None:
    answer = client.get(
        "/fill", params={"cream": "C2", "ring": "20 x 2 cm", "disc": "19 cm x 30 mm"}
    )
    assert answer.status_code == 422
    assert "no cream goes in" in answer.text
