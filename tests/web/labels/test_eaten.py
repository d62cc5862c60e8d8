"""What is asked of a label's nutrition, and what a slice holds on its page."""

import html

import pytest
from starlette.testclient import TestClient

from krume.web.frame.forms import Form
from krume.web.labels.eaten import nutrition_wish


def test_what_is_typed_becomes_the_wish() -> None:
    form, wish = nutrition_wish(Form({"slices": "16", "serving": "slice", "spread": "yes"}))
    assert (wish.slices, wish.by_slice, wish.with_spread) == (16, True, True)
    assert not form.wrong
    _, nothing = nutrition_wish(Form({}))
    assert (nothing.slices, nothing.by_slice, nothing.with_spread) == (None, False, False)


@pytest.mark.parametrize("typed", ["0", "-3", "401", "12.5", "a dozen", "9" * 40, "१२"])
def test_a_number_of_slices_that_cannot_be_is_said_beside_its_field(typed: str) -> None:
    form, wish = nutrition_wish(Form({"slices": typed}))
    assert wish.slices is None
    assert "Type 1 to 400" in form.wrong["slices"]


def test_a_serving_that_is_none_is_said_beside_its_field() -> None:
    form, wish = nutrition_wish(Form({"serving": "<b>crumb</b>"}))
    assert not wish.by_slice
    assert "cake or slice" in form.wrong["serving"]


def test_the_page_tells_what_a_slice_holds_with_its_caution_and_its_grounds(
    client: TestClient,
) -> None:
    text = html.unescape(client.get("/tortes/T1/label").text)
    assert "Carbohydrate in 1 of 12 slices" in text
    assert "no dose of insulin rests on it" in text
    assert "10 % of its even share (assumed)" in text


def test_slices_and_spread_are_shown_where_they_are_asked_for(client: TestClient) -> None:
    plain = client.get("/tortes/T1/label").text
    asked = client.get("/tortes/T1/label", params={"slices": "16", "spread": "yes"}).text
    assert "1 of 16 slices" in asked
    assert "As lots of the goods differ" in asked
    assert "As lots of the goods differ" not in plain


def test_a_wrong_number_keeps_what_was_typed_and_the_page_answers(client: TestClient) -> None:
    answer = client.get("/formulas/F1/label", params={"slices": "0"})
    assert answer.status_code == 422
    assert "is no number of slices" in answer.text
    assert 'value="0"' in answer.text
