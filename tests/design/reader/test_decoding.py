"""Bytes of a file as text."""

from hypothesis import given
from hypothesis import strategies as st

from krume.design import decode_text


@given(st.text(alphabet=st.characters(exclude_categories=("Cs", "Cc")), max_size=60))
def test_utf8_comes_back_as_it_was(text: str) -> None:
    assert decode_text(text.encode("utf-8")).value.lstrip("\ufeff") == text.lstrip("\ufeff")


@given(st.binary(max_size=200))
def test_any_bytes_give_a_text_or_one_question(data: bytes) -> None:
    found = decode_text(data)
    assert len(found.problems) <= 1
    assert not found.problems or found.value == ""


def test_windows_1252_is_taken_where_it_is_not_utf8() -> None:
    found = decode_text(b"\xbd tsp salt \x96 fine")
    assert found.value == "½ tsp salt – fine"
    assert [notice.code for notice in found.notices] == ["encoding"]
