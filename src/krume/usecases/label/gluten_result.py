"""The answer of `gluten`: can somebody with coeliac disease eat it, and what says so."""

from dataclasses import dataclass

from krume.usecases.label.result import LabelFile


@dataclass(frozen=True, slots=True)
class GlutenPaper:
    """One paper of a lot: its kind, words, result and method, how it stands, what it proves.

    `words` are all of it in one line.
    `result` is as printed, never a claim; an empty method is one the paper does not name.
    """

    kind: str
    text: str
    words: str
    state: str
    word: str
    why: str
    result: str
    method: str
    valid_from: str | None
    valid_to: str | None
    proves: str
    not_proves: str
    not_seen: str


@dataclass(frozen=True, slots=True)
class GlutenLot:
    """One lot with its papers; `lot` is null where the house has none of the goods."""

    lot: str | None
    ingredient: str
    state: str
    word: str
    text: str
    opens: str
    of: tuple[str, ...]
    papers: tuple[GlutenPaper, ...]


@dataclass(frozen=True, slots=True)
class GlutenRoom:
    """One thing of the room and how it stands; `needs` is what opens it."""

    name: str
    is_open: bool
    text: str
    needs: str


@dataclass(frozen=True, slots=True)
class GlutenPiece:
    """One thing that is sold: the verdict, its lots, and the sum over them as a warning.

    `verdict` is `contains`, `no`, `not yet` or `yes`; `needs_none` are goods that need no record.
    `most_ppm` is null while a lot is open; `known_ppm` is what the known lots alone may bring.
    """

    name: str
    title: str
    verdict: str
    aloud: str
    claim_allowed: bool
    missing: tuple[str, ...]
    opens: tuple[str, ...]
    lots: tuple[GlutenLot, ...]
    needs_none: tuple[str, ...]
    most_ppm: float | None
    known_ppm: float | None
    warning: str
    finished: tuple[GlutenLot, ...]


@dataclass(frozen=True, slots=True)
class GlutenResult:
    """Whether somebody with coeliac disease can eat it, said so that it can be read aloud.

    `verdict` is the worst of its pieces; `sentence` is what a label may print, null while the
    gate is shut; `not_proven` is what even an open gate does not prove, `proofs` what each kind
    of paper proves and what not.
    """

    name: str
    kind: str
    market: str
    on: str
    rule: str
    limit: str
    verdict: str
    aloud: str
    claim_allowed: bool
    sentence: str | None
    printed: str
    missing: tuple[str, ...]
    opens: tuple[str, ...]
    not_proven: tuple[str, ...]
    proofs: tuple[str, ...]
    pieces: tuple[GlutenPiece, ...]
    room: tuple[GlutenRoom, ...]
    notes: tuple[str, ...]
    cautions: tuple[str, ...]
    files: tuple[LabelFile, ...]

    @property
    def opens_in_short(self) -> tuple[str, ...]:
        """What opens it where the room has a table of its own: its open things are counted."""
        shut = sum(not each.is_open for each in self.room)
        things = tuple(f"room: {each.name}: " for each in self.room)
        kept = tuple(text for text in self.opens if not text.startswith(things)) if things else ()
        verb = "thing is" if shut == 1 else "things are"
        more = (f"room: {shut} {verb} shut on its list, see “The room” below",) if shut else ()
        return (*kept, *more) if things else self.opens
