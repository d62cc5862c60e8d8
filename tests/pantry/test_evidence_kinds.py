"""The kinds of paper: what counts as a record, what only says, what doubts."""

import pytest

from krume.pantry import evidence_kind, evidence_kinds
from krume.pantry.evidence_kinds import kind_key


@pytest.mark.parametrize(
    ("typed", "key"),
    [
        ("lab test", "lab-test"),
        ("Supplier  Certificate", "certificate"),
        ("supplier sheet", "specification"),
        ("may contain", "may-contain"),
        ("own handling", "own-handling"),
        ("doubt", "doubt"),
        ("hearsay", ""),
    ],
)
def test_a_kind_is_known_by_its_words(typed: str, key: str) -> None:
    assert kind_key(typed) == key


def test_only_a_test_and_a_certificate_are_records() -> None:
    assert [k for k, each in evidence_kinds().items() if each.is_record] == [
        "lab-test", "certificate",
    ]  # fmt: skip


def test_what_is_no_kind_is_words_and_no_record() -> None:
    assert not evidence_kind("").is_record
    assert evidence_kind("").says


def test_each_kind_says_what_it_does_not_prove() -> None:
    assert all(each.proves and each.not_proves for each in evidence_kinds().values())
