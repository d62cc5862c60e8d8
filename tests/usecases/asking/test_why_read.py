"""Where a line's grams, a tin's volume and a core come from."""

import pytest

from krume.usecases import Asked, Explanation, QuestionError, read_formula


def why(demo: Asked, key: str) -> Explanation:
    found = read_formula("F1", demo, explain=key).explain
    assert found is not None
    return found


def test_counted_eggs_name_their_doubt_and_its_status(demo: Asked) -> None:
    found = why(demo, "line 13")
    assert found.value == pytest.approx(255)
    assert found.how.startswith("Eggs are counted")
    assert found.status in ("common practice", "from memory", "published")
    assert found.doubt is not None
    assert "±" in found.doubt


def test_weighed_lines_have_no_doubt(demo: Asked) -> None:
    found = why(demo, "line 8")
    assert (found.value, found.status, found.doubt) == (50, "declared", None)
    assert found.how == "A mass is written in the line. Written: 50 g."


def test_a_line_is_found_by_its_ingredient_too(demo: Asked) -> None:
    key = read_formula("F1", demo).result.lines[0].ingredient
    assert key is not None
    assert why(demo, key).value == 50


def test_a_tin_and_a_core_are_explained(demo: Asked) -> None:
    assert why(demo, "tin.volume_ml").value == pytest.approx(2199.1, abs=0.05)
    assert why(demo, "area_cm2").unit == "cm2"
    assert why(demo, "core_c").value == 95


def test_what_the_text_does_not_name_cannot_be_explained(demo: Asked) -> None:
    with pytest.raises(QuestionError):
        read_formula("C3", demo, explain="core_c")
