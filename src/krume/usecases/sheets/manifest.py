"""What each sheet of a folder was made of: the list `sheets.json` that is written beside them."""

import hashlib
import json
from collections.abc import Mapping
from dataclasses import asdict, dataclass, replace
from pathlib import Path

from krume import __version__
from krume.base import StoreError
from krume.build import formula_names, read_torte
from krume.evidence import data_version
from krume.store import (
    Book,
    book_at,
    book_bytes,
    book_places,
    bytes_of_path,
    is_file,
    list_tables,
    place_in,
    read_bytes,
)
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.kind import Made, own_answers, text_inside
from krume.usecases.asking.slug import short_name
from krume.usecases.asking.text import Text, text_of
from krume.usecases.sheets.order_batches import order_batches
from krume.usecases.sheets.result import Files
from krume.usecases.sold.product import sold_of

MANIFEST = "sheets.json"
_FORMAT = 1
_CARDS = ("bench-card", "blend-card")
_PLAN = "torte-plan"
_SETTINGS = "studio.toml"
_NOT_ON_SHEETS = ("trials.csv",)
_TYPED = "-"


@dataclass(frozen=True, slots=True)
class TextDigest:
    """A text or a table that sheets were made of: where it is, its name, its digest.

    `key` is the place inside the book, else the whole path; a text that came by standard input
    has none but `-`.
    """

    key: str
    name: str
    sha256: str


@dataclass(frozen=True, slots=True)
class ListedFile:
    """A written file with its digest, and the keys of what it was made of."""

    file: str
    kind: str
    of: str
    sha256: str
    made_of: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Run:
    """One making of sheets: what was asked, by which program and data, of which texts.

    `held` is what held the order then, `batches` how many of each formula it took: both move
    sheets that do not rest on the text that changed. `again` is the command that shows the ways out
    of a slip once more, where the sheets are those of a slip.
    """

    name: str
    kind: str
    day: str
    on: str | None
    paper: str
    answers: tuple[str, ...]
    program: str
    data: str
    held: tuple[str, ...]
    batches: tuple[str, ...]
    texts: tuple[TextDigest, ...]
    files: tuple[ListedFile, ...]
    again: tuple[str, ...] = ()


def made_from(made: Made, name: str, asked: Asked) -> tuple[TextDigest, ...]:
    """Digest of every text and table that a request rests on."""
    book = book_at(asked.book)
    main = text_of(name, own_answers(asked))
    texts = {_key(main.path, book): (main.name, _bytes(main, asked))}
    for line in () if made.order is None else made.order.lines:
        found = text_inside(line.what, main, book)
        if found is not None:
            held = bytes_of_path(book, found.path) or b""
            texts.setdefault(_key(found.path, book), (found.path.stem, held))
    for read in made.formulas:
        source = read.source
        texts.setdefault(_key(source.path, book), (short_name(read), _bytes(source, asked)))
    for place in (_SETTINGS, *list_tables(book), *_suppliers(book)):
        data = book_bytes(book, place)
        if data is not None and place not in _NOT_ON_SHEETS:
            texts[place] = (place.rpartition("/")[2], data)
    return tuple(TextDigest(key, of, sha256(data)) for key, (of, data) in texts.items())


def sha256(data: bytes) -> str:
    """SHA-256 of bytes, in hexadecimal."""
    return hashlib.sha256(data).hexdigest()


def _bytes(text: Text, asked: Asked) -> bytes:
    if text.path is None:
        return asked.typed or b""
    return bytes_of_path(book_at(asked.book), text.path) or b""


def _suppliers(book: Book) -> tuple[str, ...]:
    return tuple(p for p in book_places(book) if p.startswith("suppliers/") and p.endswith(".txt"))


def _key(path: Path | None, book: Book) -> str:
    if path is None:
        return _TYPED
    return place_in(book, path) or str(path.expanduser().resolve())


def digest_now(key: str, book: Book) -> str | None:
    """Digest of what stands at a key now; None where nothing is, or nothing can be read again."""
    data = None if key == _TYPED else bytes_of_path(book, book.path / key)
    return None if data is None else sha256(data)


def run_of(
    made: Made,
    name: str,
    asked: Asked,
    files: Files,
    *,
    day: str,
    paper: str,
    held: tuple[str, ...],
) -> Run:
    """The entry of a request for the list."""
    texts = made_from(made, name, asked)
    return Run(
        name=name,
        kind=made.kind,
        day=day,
        on=None if asked.on is None else asked.on.isoformat(),
        paper=paper,
        answers=asked.answers,
        program=__version__,
        data=data_version(),
        held=held,
        batches=batches_told(name, asked) if made.kind != "formula" else (),
        texts=texts,
        files=tuple(
            ListedFile(
                file, kind, of, sha256(data), _rests_on((kind, of), texts, made, name, asked)
            )
            for file, ((kind, of), data) in files.items()
        ),
    )


def batches_told(name: str, asked: Asked) -> tuple[str, ...]:
    """Batches of each formula a torte or an order takes, in words that can be compared."""
    found = order_batches(sold_of(name, asked), asked)
    return tuple(f"{each.name}: {each.batches}" for each in found)


def _rests_on(
    what: tuple[str, str], texts: tuple[TextDigest, ...], made: Made, name: str, asked: Asked
) -> tuple[str, ...]:
    """Keys of what one file rests on: a card on its own formula, a plan on its torte's."""
    kind, of = what
    if made.kind == "formula" or kind not in (*_CARDS, _PLAN):
        return tuple(text.key for text in texts)
    names = {of, *(_formulas_of(of, made, name, asked) if kind == _PLAN else ())}
    formulas = {short_name(read) for read in made.formulas}
    tortes = set() if made.order is None else {line.what for line in made.order.lines} - formulas
    others = {*formulas, *tortes} - names
    return tuple(text.key for text in texts if text.name not in others)


def _formulas_of(torte: str, made: Made, name: str, asked: Asked) -> tuple[str, ...]:
    """Formulas of the torte a request means, or of the one its order names so."""
    source = text_of(name, own_answers(asked))
    for line in () if made.order is None else made.order.lines:
        # A torte may share its name with a formula; where it was found is its own.
        found = text_inside(line.what, source, book_at(asked.book))
        if found is not None and found.kind == "torte" and torte in (line.what, found.path.stem):
            source = text_of(found.place, replace(asked, answers=()))
    return formula_names(read_torte(source.text).value)


def stamped(files: Files, run: Run) -> Files:
    """The same files, each JSON among them saying what it was made of."""
    made_of = {text.key: text for text in run.texts}
    rests = {each.file: each.made_of for each in run.files}
    return {
        file: (kind, _stamp(data, run, [made_of[key] for key in rests[file]]))
        if file.endswith(".json")
        else (kind, data)
        for file, (kind, data) in files.items()
    }


def _stamp(data: bytes, run: Run, texts: list[TextDigest]) -> bytes:
    whole = json.loads(data)
    whole["made_of"] = {
        "program": run.program,
        "data": run.data,
        "texts": [{"name": text.name, "sha256": text.sha256} for text in texts],
    }
    return f"{json.dumps(whole, ensure_ascii=False, indent=1)}\n".encode()


def listed(run: Run, files: Files, before: tuple[Run, ...]) -> bytes:
    """The list as bytes; runs before keep the files that this one did not write again."""
    own = replace(run, files=tuple(_again(each, files) for each in run.files))
    kept = (
        replace(old, files=tuple(each for each in old.files if each.file not in files))
        for old in before
    )
    runs = [asdict(each) for each in (*(old for old in kept if old.files), own)]
    whole = {"krume_sheets": _FORMAT, "made": runs}
    return f"{json.dumps(whole, ensure_ascii=False, indent=1)}\n".encode()


def _again(each: ListedFile, files: Mapping[str, tuple[tuple[str, str], bytes]]) -> ListedFile:
    return replace(each, sha256=sha256(files[each.file][1]))


def read_manifest(folder: Path) -> tuple[Run, ...]:
    """Runs that the list of a folder holds; none where there is no list."""
    path = folder / MANIFEST
    if not is_file(path):
        return ()
    try:
        return tuple(_run(each) for each in json.loads(read_bytes(path))["made"])
    except (ValueError, KeyError, TypeError) as error:
        message = (
            f"{path} is no list of sheets, or is damaged. Move it away and make the sheets again; "
            "nothing was changed."
        )
        raise StoreError(message, where=str(path), got=type(error).__name__) from error


def _run(found: dict[str, object]) -> Run:
    texts, files = found["texts"], found["files"]
    if not isinstance(texts, list) or not isinstance(files, list):
        raise TypeError(found)
    rest = {key: _fixed(value) for key, value in found.items() if key not in ("texts", "files")}
    return Run(
        **rest,  # type: ignore[arg-type]
        texts=tuple(TextDigest(**each) for each in texts),
        files=tuple(ListedFile(**{**each, "made_of": tuple(each["made_of"])}) for each in files),
    )


def _fixed(value: object) -> object:
    return tuple(value) if isinstance(value, list) else value
