"""What making sheets answers: the files, what holds them, what was checked."""

from dataclasses import dataclass

Files = dict[str, tuple[tuple[str, str], bytes]]
"""Files on their way to a folder: kind and what each is of, and its bytes, by name."""


@dataclass(frozen=True, slots=True)
class SheetFile:
    """A file that was written: its kind, its format, and what it is of."""

    kind: str
    format: str
    of: str
    path: str


@dataclass(frozen=True, slots=True)
class SheetHold:
    """What stops an order, and what opens it."""

    text: str
    opens: str


@dataclass(frozen=True, slots=True)
class SheetCheck:
    """One thing that was checked; `passed` is None where it is not judged yet."""

    name: str
    passed: bool | None
    text: str


@dataclass(frozen=True, slots=True)
class SheetVerified:
    """A file of earlier: whether it still says what its texts say, and if not, why."""

    file: str
    kind: str
    of: str
    path: str
    is_fresh: bool
    text: str


@dataclass(frozen=True, slots=True)
class SheetResult:
    """The files of a run, what holds the order, what was checked, and a few words on it.

    `verified` is filled by a check of earlier sheets, which writes nothing.
    """

    files: tuple[SheetFile, ...]
    held: tuple[SheetHold, ...]
    checks: tuple[SheetCheck, ...]
    summary: tuple[str, ...]
    verified: tuple[SheetVerified, ...] = ()
