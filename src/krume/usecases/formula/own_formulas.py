"""The book's own formulas of a family, as ranges beside the starting bands."""

from collections.abc import Iterable
from dataclasses import dataclass
from functools import lru_cache

from krume.base import Interval, Notice, as_text
from krume.design import Balance, Band, Formula, balance, decode_text, read
from krume.learn import FEWEST, OwnBand, OwnFormula, independent, is_good, own_band, roots
from krume.store import (
    Book,
    book_at,
    folder_bytes,
    studio_of,
    table_rows,
    words_of_trials,
)
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.read import FormulaRead
from krume.usecases.asking.remembering import Remembered
from krume.usecases.formula.why_check import figures_of

_TRIALS = "trials.csv"
_REMEMBERED = 8192


@dataclass(frozen=True, slots=True)
class CheckOwn:
    """The range of one's own formulas for a figure, beside the starting band, never in its place.

    `n` formulas of the book, kin counted once and the one under check left out with its kin,
    `tried` of them baked and judged good. Below two there is no range, and `text` says so. On
    average it holds `coverage_pct` of such formulas, and `content_pct` at least with
    `confidence_pct` confidence.
    """

    n: int
    tried: int
    names: tuple[str, ...]
    low: float | None
    high: float | None
    coverage_pct: float | None
    content_pct: float | None
    confidence_pct: float
    status: str | None
    text: str


@dataclass(frozen=True, slots=True)
class Own:
    """The own formulas that count for one check."""

    label: str
    formulas: tuple[OwnFormula, ...]
    unsettled: tuple[str, ...] = ()

    def beside(self, band: Band) -> CheckOwn:
        """The own range of one figure beside its starting band."""
        found = own_band(band.quantity, self.formulas)
        return CheckOwn(
            n=found.n,
            tried=found.tried,
            names=found.names,
            low=found.low,
            high=found.high,
            coverage_pct=found.coverage_pct,
            content_pct=found.content_pct,
            confidence_pct=found.confidence_pct,
            status=found.status,
            text=_text(found, band),
        )

    def notices(self) -> tuple[Notice, ...]:
        """What must be known of the own formulas before they are trusted."""
        notices = []
        drawn_up = [each.name for each in self.formulas if each.tried == "invented"]
        if len(self.formulas) == 1:
            text = f"{self.formulas[0].name} is the book's only other {self.label} that counts."
            notices.append(Notice("own-too-few", f"Too few for a range of your own: {text}"))
        elif drawn_up:
            text = f"The good trials of {', '.join(drawn_up)} are invented: no such bake took place"
            notices.append(Notice("own-trials-invented", f"{text}."))
        if self.unsettled:
            text = f"{', '.join(self.unsettled)}: open questions (krume read {self.unsettled[0]})."
            notices.append(Notice("own-open", f"Not counted as your own: {text}"))
        return tuple(notices)


def own_formulas(found: FormulaRead, checked: Balance, asked: Asked) -> Own:
    """The book's formulas of the family of what is checked, without that one and its kin."""
    if checked.family is None:
        return Own("", ())
    book = book_at(asked.book)
    shelf = _SHELVES.of(book, (), lambda: _read_shelf(book))
    own_root = _root_of(found, shelf)
    own, unsettled = [], []
    for name, kept in shelf.kept.items():
        if kept.family != checked.family or shelf.ancestors[name] == own_root:
            continue
        if kept.is_open:
            unsettled.append(name)
            continue
        word = shelf.tried.get(name.casefold())
        own.append(OwnFormula(name, checked.family, kept.settled, shelf.ancestors[name], word))
    return Own(checked.family_label, independent(own, without=own_root), tuple(unsettled))


@dataclass(frozen=True, slots=True)
class _Kept:
    """What counts of a formula of the book once it is read and balanced."""

    title: str
    parent: str
    lines: tuple[str, ...]
    family: str | None
    settled: dict[str, float]
    is_open: bool


@dataclass(frozen=True, slots=True)
class _Shelf:
    """All formulas of a book as read and balanced, their kin, and which were tried."""

    kept: dict[str, _Kept]
    ancestors: dict[str, str]
    tried: dict[str, str]


_SHELVES: Remembered[_Shelf] = Remembered(4)


def _read_shelf(book: Book) -> _Shelf:
    region = studio_of(book).eggs_region
    held = folder_bytes(book, "formulas")
    kept = {name: _kept(data, region) for name, data in held.items()}
    ancestors = roots({name: _parent(each.parent, kept) for name, each in kept.items()})
    return _Shelf(kept, ancestors, _tried(book))


@lru_cache(maxsize=_REMEMBERED)
def _kept(held: bytes, region: str | None) -> _Kept:
    """Read once for as long as a process lives: a book's texts change seldom, a check asks all."""
    found = read(decode_text(held).value, eggs_region=region)
    formula, figures = found.value, balance(found.value)
    settled = _settled(figures_of(figures))
    return _Kept(
        title=_plain(formula.name or ""),
        parent=_parent_said(formula),
        lines=_lines(formula),
        family=figures.family,
        settled=settled,
        is_open=bool(found.problems),
    )


def _parent_said(formula: Formula) -> str:
    """The parent that a text names, by its short name or its first line."""
    said = {_plain(word): value for word, value in formula.keys.items()}
    return _plain(said.get("parent", ""))


def _parent(wanted: str, among: dict[str, _Kept]) -> str | None:
    """The book's formula that is meant as a parent."""
    if not wanted:
        return None
    by_name = [name for name in among if _plain(name) == wanted]
    by_title = [name for name, each in among.items() if each.title == wanted]
    return next(iter(by_name + by_title), None)


def _plain(name: str) -> str:
    return " ".join(name.split()).casefold()


def _root_of(found: FormulaRead, shelf: _Shelf) -> str | None:
    """The root of the formula under check: by its place in the book, its lines, or its parent."""
    if found.source.kind == "formula":
        return shelf.ancestors.get(found.source.name)
    lines = _lines(found.formula)
    same = next((name for name, each in shelf.kept.items() if lines and each.lines == lines), None)
    kin = same or _parent(_parent_said(found.formula), shelf.kept)
    return None if kin is None else shelf.ancestors[kin]


def _lines(formula: Formula) -> tuple[str, ...]:
    return tuple(_plain(line.read) for line in formula.lines)


def _tried(book: Book) -> dict[str, str]:
    """Formulas with a trial that was judged good, and whether that was measured or invented.

    What was weighed and baked at the bench is measured.
    """
    tried: dict[str, str] = {}
    for row in table_rows(book, _TRIALS):
        if is_good(row.get("word", "")):
            name = row.get("formula", "").casefold()
            is_real = row.get("status") != "invented" or tried.get(name) == "measured"
            tried[name] = "measured" if is_real else "invented"
    benched = (place for place, word in words_of_trials(book) if is_good(word))
    names = (place.rpartition("/")[2].removesuffix(".txt").casefold() for place in benched)
    return tried | dict.fromkeys(names, "measured")


def _settled(figures: dict[str, float | Interval | None]) -> dict[str, float]:
    return {key: value for key, value in figures.items() if isinstance(value, float | int)}


def _text(own: OwnBand, band: Band) -> str:
    if own.low is None or own.high is None:
        return f"too few: {own.n or 'none'} of your own, a range needs {FEWEST}"
    ends, usual = _span((own.low, own.high), band), _span((band.low, band.high), band)
    return f"your own {own.n}: {ends}, starting band {usual}"


def _span(ends: Iterable[float], band: Band) -> str:
    unit = "" if band.unit == "ratio" else f" {band.unit}"
    shown = dict.fromkeys(as_text(end, 2 if band.high <= 1 else 1) for end in ends)
    return "\N{EN DASH}".join(shown) + unit
