"""The list of a kind of text: searched, and with the box for a new one."""

import pytest
from starlette.testclient import TestClient

from krume.usecases import Asked, save_text


@pytest.mark.parametrize(("section", "count"), [("formulas", 13), ("tortes", 4)])
def test_a_list_holds_its_own_kind_and_what_is_searched_for(
    client: TestClient, section: str, count: int
) -> None:
    text = client.get(f"/{section}").text
    assert f"{count} in the book" in text
    found = client.get(f"/{section}", params={"search": "orl hazel"}).text
    assert "1 found" in found
    assert "Show all of them" in client.get(f"/{section}", params={"search": "zzz"}).text


def test_a_long_list_says_how_many_more_there_are(own: TestClient) -> None:
    asked: Asked = own.app.state.asked  # type: ignore[attr-defined]
    for number in range(190):
        save_text("formula", f"N{number}", f"Number {number}\n\n5 g salt\n", asked, seen=None)
    text = own.get("/formulas").text
    assert "203 in the book" in text
    assert "3 more" in text
