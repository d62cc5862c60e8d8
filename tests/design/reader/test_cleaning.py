"""Cleaned lines: as long as their source, with what carries no meaning blanked."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.design.reader.cleaning import NOTHING, clean, source_lines


@given(st.text(alphabet=st.characters(exclude_characters="\n\r"), max_size=80))
def test_a_cleaned_line_is_as_long_as_its_source(line: str) -> None:
    assert len(clean(line).text) == len(line)


@pytest.mark.parametrize(
    ("line", "words"),
    [
        ("- 85 g flour", "85 g flour"),
        ("• 85 g flour", "85 g flour"),
        ("* [x] 85 g", "85 g"),
        ("2. 85 g flour", "85 g flour"),
        ("2.5 g salt", "2.5 g salt"),
        ("**85 g** flour", "85 g flour"),
        ("<li>85 g&nbsp;flour</li>", "85 g flour"),
        ("&frac12; tsp", "½ tsp"),
        ("८५ g", "85 g"),
        ("~~90~~ 85 g", "85 g"),
        ("85 g<script>x()</script>", "85 g"),
        ("## Cake", "Cake"),
        ("5 × 20", "5 × 20"),
        ("Step 1: Mix", "Mix"),
        ("−30 g", "-30 g"),
    ],
)
def test_marks_tags_and_foreign_digits_are_put_aside(line: str, words: str) -> None:
    text = clean(line).text.replace(NOTHING, "").replace("\x1e", " ")
    assert " ".join(text.split()) == words


def test_lines_are_counted_as_an_editor_counts_them() -> None:
    assert source_lines("a\r\nb\rc\n") == ["a", "b", "c", ""]
    assert source_lines("a\x0bb\u2028c") == ["a\x0bb\u2028c"]
