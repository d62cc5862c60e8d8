"""A name becomes a safe part of a file's name."""

import pytest

from krume.usecases.asking.slug import slug


@pytest.mark.parametrize(
    ("name", "part"),
    [
        ("Orl hazel sponge", "orl-hazel-sponge"),
        ("../../etc/passwd", "etc-passwd"),
        ("C:\\Windows\\CON", "c-windows-con"),
        ("Grüße & Küsse 😊", "grusse-kusse"),
        ("=HYPERLINK(1)", "hyperlink-1"),
        ("שלום", "formula"),
        ("", "formula"),
        ("-" * 300 + "a" * 300, "a" * 60),
    ],
)
def test_a_name_becomes_a_safe_part_of_a_file_name(name: str, part: str) -> None:
    assert slug(name) == part
