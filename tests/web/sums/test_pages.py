"""Quick sums as pages: the same answers as the command, what was typed kept."""

import html

import pytest
from starlette.testclient import TestClient

from krume.usecases import list_sums


@pytest.mark.parametrize("name", [row.name for row in list_sums().result.sums])
def test_every_sum_has_its_page(client: TestClient, name: str) -> None:
    answer = client.get(f"/sums/{name}")
    assert answer.status_code == 200
    assert 'id="f-' in answer.text


def test_a_sum_answers_as_the_command_does(client: TestClient) -> None:
    answer = client.get("/sums/dial", params={"want": "157C", "offset": "-12"})
    assert answer.status_code == 200
    assert ">169<" in answer.text
    assert ">336.2<" in answer.text


def test_what_was_typed_is_kept_and_what_is_wrong_stands_beside_it(client: TestClient) -> None:
    typed = "<script>12"
    answer = client.get("/sums/dial", params={"want": typed, "offset": "-12"})
    assert answer.status_code == 422
    assert f'value="{html.escape(typed)}"' in answer.text
    assert 'id="wrong-want"' in answer.text
    assert "<script>12" not in answer.text


def test_an_interval_is_read_as_a_span(client: TestClient) -> None:
    asked = {"times": "20,40", "temps": "70,52", "room": "21", "goal": "30"}
    text = client.get("/sums/cool-down", params=asked).text
    assert "94–107" in text
    assert "54–67" in text
    assert "low" not in text[text.index(">Result<") :]


def test_a_sum_nobody_knows_is_404(client: TestClient) -> None:
    assert client.get("/sums/nothing").status_code == 404


def test_an_input_is_asked_in_its_unit_as_it_is_written_by_hand(client: TestClient) -> None:
    text = client.get("/sums/dial").text
    assert '<span class="u">°C</span>' in text
    assert '<span class="u">c</span>' not in text
