"""A card as plain data: for JSON with its numbers, for paper in signs the fonts have."""

import json

from krume.publish import Imprint, card_dict
from krume.publish.sheet import dated, is_unbaked, made_by, printed
from tests.design.studio import F1
from tests.publish.bench import HOLD, card, named


def test_the_json_of_a_card_keeps_numbers_and_survives_a_round_trip() -> None:
    made = card_dict(card(F1, hold=HOLD))
    data = json.loads(json.dumps(made, allow_nan=False))
    assert data["total_g"] == 542
    assert [row["display_g"] for row in data["rows"] if row["number"] in (5, 6)] == [144, None]
    assert data["hold"]["opens"] == HOLD.opens
    assert data["imprint"]["date"] == "2027-06-10"


def test_the_words_for_paper_spell_out_what_no_font_has() -> None:
    words = printed(card(named(F1, "🥜 sponge"), hold=HOLD))
    assert words["title"] == "[peanuts] sponge"
    assert "🥜" not in json.dumps(words, ensure_ascii=False)


def test_a_row_knows_how_it_goes_on_on_the_next_card() -> None:
    rows = printed(card(F1))["rows"]
    assert isinstance(rows, list)
    assert rows[2]["goes-on"] == "Dry bowl goes on: the display shows 62"


def test_the_imprint_names_versions_and_day_and_shows_the_sign_only_for_the_unbaked() -> None:
    imprint = Imprint("2027-06-10", "0.1.0", "abc")
    assert made_by(imprint) == "krume 0.1.0, data abc"
    assert dated(imprint) == "2027-06-10"
    assert not is_unbaked(imprint)
    assert is_unbaked(Imprint("2027-06-10", "0.1.0", "abc", notes=("planned, not baked",)))
