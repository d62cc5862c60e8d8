"""The kinds of paper a lot may have: which of them are a record, and what each does prove."""

from dataclasses import dataclass
from functools import cache

from krume.evidence import column, load, optional
from krume.pantry.typed_rows import plain_word

KIND_COLUMNS = (
    column("key", "key"),
    column("words"),
    optional("is_record", "flag"),
    optional("says", "flag"),
    optional("doubts", "flag"),
    column("proves"),
    column("not_proves"),
    column("status", "status"),
    column("source", "source"),
    optional("note"),
)


@dataclass(frozen=True, slots=True)
class EvidenceKind:
    """One kind of paper: a record of gluten, words about what is in the bag, or a doubt of it.

    `proves` and `not_proves` are said to whoever asks.
    """

    key: str
    words: tuple[str, ...]
    is_record: bool
    says: bool
    doubts: bool
    proves: str
    not_proves: str

    @property
    def name(self) -> str:
        """The word it is shown by."""
        return self.words[0]


NO_KIND = EvidenceKind("", ("a paper of no known kind",), False, True, False, "nothing", "anything")  # noqa: FBT003
"""What a paper is whose kind is none of them: words, and no record."""


@cache
def evidence_kinds() -> dict[str, EvidenceKind]:
    """The kinds of paper by their key."""
    return {
        row.text("key"): EvidenceKind(
            key=row.text("key"),
            words=tuple(row.text("words").split(";")),
            is_record=row.flag("is_record"),
            says=row.flag("says"),
            doubts=row.flag("doubts"),
            proves=row.text("proves"),
            not_proves=row.text("not_proves"),
        )
        for row in load("evidence_kinds.csv", KIND_COLUMNS)
    }


def evidence_kind(key: str) -> EvidenceKind:
    """A kind by its key; an unknown one is words and no record.

    >>> evidence_kind("lab-test").is_record, evidence_kind("hearsay").is_record
    (True, False)
    """
    return evidence_kinds().get(key, NO_KIND)


@cache
def _keys() -> dict[str, str]:
    return {word: kind.key for kind in evidence_kinds().values() for word in kind.words}


def kind_key(typed: str) -> str:
    """Key of the kind that a word means; empty where it means none.

    >>> kind_key("Lab  test"), kind_key("hearsay")
    ('lab-test', '')
    """
    return _keys().get(plain_word(typed), "")
