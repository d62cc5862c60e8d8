"""The text a person means: a file, a name of the book, or what came in with the request."""

from dataclasses import dataclass
from difflib import get_close_matches
from pathlib import Path

from krume.base import InputError, Notice, Option, Problem
from krume.design import apply_answers, decode_text
from krume.store import (
    Book,
    BookText,
    book_at,
    book_bytes,
    bytes_of_path,
    find_texts,
    is_book,
    is_folder,
    list_texts,
    text_at_place,
)
from krume.usecases.asking.answer import Asked, QuestionError, place_of

PLACE = "FILE"
"""Where a question about the name of the text itself stands."""

_CLOSE = 4


@dataclass(frozen=True, slots=True)
class Text:
    """A text with the person's answers in it; `kind` is None where the text is no book's."""

    text: str
    name: str
    kind: str | None = None
    path: Path | None = None
    problems: tuple[Problem, ...] = ()
    notices: tuple[Notice, ...] = ()


def text_of(name: str, asked: Asked) -> Text:
    """Text of a name, the answers of this request edited into it."""
    name = asked.answer_for(PLACE) or name
    found = _find(name, asked)
    read = decode_text(found[1])
    edited = apply_answers(read.value, answers_to_lines(asked))
    source = found[0]
    return Text(
        text=edited,
        name=name if source is None else source.name,
        kind=None if source is None else source.kind or None,
        path=None if source is None else source.path,
        problems=read.problems,
        notices=read.notices,
    )


def answers_to_lines(asked: Asked) -> tuple[str, ...]:
    """The answers that edit the text: those whose place is no option of the command."""
    return tuple(a for a in asked.answers if not place_of(a).startswith(("--", PLACE)))


def _find(name: str, asked: Asked) -> tuple[BookText | None, bytes]:
    """What a name means: standard input, else a file where one may be meant, else the book's."""
    if name == "-":
        return None, asked.typed or b""
    path = Path(name).expanduser()
    book = book_at(asked.book)
    inside = None if asked.is_of_book else bytes_of_path(book, path)
    if inside is not None:
        return BookText("", path.stem, "", path), inside
    text = book_text(name, book)
    held = None if text is None else book_bytes(book, _inside(text))
    if text is None or held is None:
        raise _nothing_found(name, None if asked.is_of_book else path, book)
    return text, held


def book_text(name: str, book: Book) -> BookText | None:
    """The one text of the book a name means; several are asked back, none is None."""
    inside = text_at_place(book, name.strip()) if "/" in name else None
    found = find_texts(book, name) if inside is None else (inside,)
    if len(found) < 2:
        return found[0] if found else None
    options = tuple(Option(f"{t.kind} {t.name}, {t.title}", _inside(t)) for t in found)
    ask = f"The book has {len(found)} texts called {name}. Which one?"
    raise QuestionError(Problem("name-twice", PLACE, name, ask, options))


def _inside(text: BookText) -> str:
    return f"{text.path.parent.name}/{text.path.name}"


def _nothing_found(name: str, path: Path | None, book: Book) -> InputError:
    if path is not None and is_folder(path):
        ask = f"{name} is a folder. Name the text inside it."
        return QuestionError(Problem("not-found", PLACE, name, ask))
    texts = list_texts(book)
    here = f"There is no {name}:" if path is None else f"There is no file {name} here, and"
    ask = f"{here} {_no_name(book, texts)}."
    close = _close(name, texts)
    options = tuple(Option(f"{t.name}, {t.title}", t.name) for t in close)
    return QuestionError(Problem("not-found", PLACE, name, ask, options))


def _no_name(book: Book, texts: tuple[BookText, ...]) -> str:
    if not is_book(book):
        return f"no book at {book.path} yet (`krume book demo` loads the demo studio into one)"
    if not texts:
        return f"the book at {book.path} holds no texts yet"
    return f"the book at {book.path} has no text of that name"


def _close(name: str, texts: tuple[BookText, ...]) -> tuple[BookText, ...]:
    spelled = {said.casefold(): t for t in reversed(texts) for said in (t.title, t.name)}
    near = get_close_matches(name.casefold(), list(spelled), n=_CLOSE, cutoff=0.5)
    return tuple(dict.fromkeys(spelled[said] for said in near))
