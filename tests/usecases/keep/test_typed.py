"""A number below zero, with its unit or without; what is none is none."""

import pytest

from krume.usecases import typed_number


@pytest.mark.parametrize(
    ("text", "number"),
    [
        ("-18", -18.0), ("\N{MINUS SIGN}18 °C", -18.0), ("4 C", 4.0), ("35 min", 35.0),
        ("400 g", 400.0), ("4,5", 4.5), ("", None), ("-", None), ("--4", None), ("cold", None),
    ],
)  # fmt: skip
def test_what_is_typed_is_read(text: str, number: float | None) -> None:
    assert typed_number(text) == number
