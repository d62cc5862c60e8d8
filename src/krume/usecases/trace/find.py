"""What a typed name means: a cake's lot code, a batch, a lot of goods, or a text of the book."""

from collections.abc import Iterable
from dataclasses import dataclass
from difflib import get_close_matches

from krume.base import InputError, NotFoundError, Option, Problem
from krume.store import (
    KeptBatch,
    KeptCake,
    batches_called,
    book_at,
    cakes_called,
    find_texts,
    lot_written,
)
from krume.usecases.asking.answer import Asked, QuestionError
from krume.usecases.asking.kind import PROMISES
from krume.usecases.trace.house import HouseLot, house_lots

PLACE = "NAME"
KINDS = ("cake", "batch", "lot", "order", "class", "torte", "formula")
_CLOSE = 4


@dataclass(frozen=True, slots=True)
class Meant:
    """What a name means; `kind` is cake, batch, lot or text."""

    kind: str
    name: str
    cakes: tuple[KeptCake, ...] = ()
    batches: tuple[KeptBatch, ...] = ()
    lots: tuple[HouseLot, ...] = ()


def meant_by(typed: str, ingredient: str, asked: Asked) -> Meant:
    """The one thing a name means; several are asked back, none is asked for with the nearest.

    A lot that nobody wrote down can be asked for by saying what it is of.
    """
    said = " ".join((asked.answer_for(PLACE) or typed).split())
    kind, name = _kind_said(said)
    if not name:
        message = "Nothing was named. Type the mark on a bag, a lot code, or an order."
        raise InputError(message, field="NAME")
    found = _found(name, asked)
    fit = [each for each in found if not kind or kind in (each[0], each[1].kind)]
    if ingredient and not any(each[1].kind == "lot" for each in fit):
        return Meant("lot", name)
    if ingredient:
        fit = [each for each in fit if each[1].kind == "lot"]
    if len(fit) > 1:
        options = tuple(Option(f"the {word} {name}", f"{word} {name}") for word, _ in fit)
        ask = f"The book has {len(fit)} things called {name}. Which one?"
        raise QuestionError(Problem("name-twice", PLACE, name, ask, options))
    if not fit:
        raise _nothing(name, asked)
    return fit[0][1]


def _kind_said(said: str) -> tuple[str, str]:
    """`lot L-008` says of what kind it is."""
    first, _, rest = said.partition(" ")
    return (first.casefold(), rest) if rest and first.casefold() in KINDS else ("", said)


def _found(name: str, asked: Asked) -> list[tuple[str, Meant]]:
    book = book_at(asked.book)
    found: list[tuple[str, Meant]] = []
    cakes, batches = cakes_called(book, name), batches_called(book, name)
    if cakes:
        found.append(("cake", Meant("cake", cakes[0].code, cakes=cakes)))
    if batches:
        found.append(("batch", Meant("batch", batches[0].code, batches=batches)))
    lots = tuple(lot for lot in house_lots(asked) if lot.mark.casefold() == name.casefold())
    written = lot_written(book, name)
    if lots:
        found.append(("lot", Meant("lot", lots[0].mark, lots=lots)))
    elif written is not None and not batches:
        found.append(("lot", Meant("lot", written[0])))
    for text in find_texts(book, name):
        kind = "order" if text.kind in PROMISES else text.kind
        found.append((text.kind if text.kind in KINDS else kind, Meant("text", text.name)))
    return found


def _nothing(name: str, asked: Asked) -> QuestionError | NotFoundError:
    near = _near(name, (lot.mark for lot in house_lots(asked)))
    options = tuple(Option(f"the lot {mark}", f"lot {mark}") for mark in near)
    ask = (
        f"Nothing here is called {name}: no lot, no lot code, no order. For a lot that nobody "
        "wrote down say its ingredient, such as ground hazelnuts: then every cake is told in "
        "which that lot is not known."
    )
    return QuestionError(Problem("lot-unknown", PLACE, name, ask, options))


def _near(name: str, marks: Iterable[str]) -> list[str]:
    by_fold = {mark.casefold(): mark for mark in marks}
    return [by_fold[each] for each in get_close_matches(name.casefold(), by_fold, _CLOSE)]
