"""A sum as a value: names and examples that hold together."""

from dataclasses import FrozenInstanceError

import pytest

from krume.calc import SUMS
from krume.calc.naming import matched


def test_examples_use_inputs_that_exist() -> None:
    for declared in SUMS.values():
        assert len(matched(declared, dict(declared.example))) == len(declared.example)


def test_a_declaration_cannot_be_changed() -> None:
    with pytest.raises(FrozenInstanceError):
        SUMS["salt"].name = "pepper"  # type: ignore[misc]
