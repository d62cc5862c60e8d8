"""One ingredient of a line: its amount, the other statements of it, and its name phrase."""

import re
from typing import NamedTuple

from krume.base import Interval, Unit
from krume.design.reader.amounts import EACH, Amount, Place, amount_at
from krume.design.reader.asking import Asking
from krume.design.reader.forms import Form, Shape, form_of, shape_of
from krume.design.reader.naming import part_of, says_juice
from krume.design.reader.tokens import Token


class Item(NamedTuple):
    """An amount with a name, as a piece of a line says it.

    `lead` are words before the number that say which part is wanted (`grated rind`); `pack` is
    what one piece holds; `start` and `end` bound the piece in the source, `name_start` and
    `name_end` its name.
    """

    form: str
    amount: Amount
    seconds: tuple[Amount, ...]
    pack: Amount | None
    lead: str
    name: str
    start: int
    end: int
    name_start: int
    name_end: int
    how_full: str = ""

    @property
    def text(self) -> str:
        """Lead and name as one phrase."""
        return f"{self.lead} {self.name}" if self.lead else self.name


PERCENT = Unit("%", "percent", None)
NO_AMOUNT = Amount(None, None, 0, 0)
_COUNTED = ("counted", "of_some", "sized")


def trimmed(found: list[Token]) -> list[Token]:
    """Tokens without separators at their ends."""
    start, end = 0, len(found)
    while start < end and found[start].kind in "s\t;,:&+/=":
        start += 1
    start = _after_filler(found, start, end)
    found = _without_brackets(found[start:end])
    start, end = 0, len(found)
    while end > start and found[end - 1].kind in "s\t;,:&+/=-":
        end -= 1
    return found[start:end]


def _without_brackets(found: list[Token]) -> list[Token]:
    """`[100 g] hazelnuts` without the brackets around its amount."""
    close = next((at for at, token in enumerate(found[:5]) if token.kind == ")"), None)
    if close is None or found[0].kind != "(" or found[1].kind != "N" or close + 1 >= len(found):
        return found
    return [*found[1:close], *found[close + 1 :]]


def _after_filler(found: list[Token], start: int, end: int) -> int:
    """Where the amount begins behind words such as `take` or `up to`."""
    at = start
    while at < end and at < start + 4 and found[at].kind in "W,~" and found[at].value in _FILLERS:
        at += 1
    return at if at < end and found[at].kind == "N" else start


_FILLERS = frozenset(
    "take add then and you need use up to at least most min max minimum maximum whip from plus "
    "nimm du brauchst mindestens "
    "höchstens bis zu c ca".split()
)


def form_and_shape(found: list[Token]) -> tuple[Form, Shape]:
    """Form and shape of a piece's tokens."""
    shape = shape_of(found)
    return form_of(shape.signs), shape


def item_of(found: list[Token], text: str, asking: Asking, *, comma_is_decimal: bool) -> Item:
    """Read one piece of a line as an item."""
    form, shape = form_and_shape(found)
    place = Place(found, shape, comma_is_decimal)
    amounts = [amount_at(place, at, asking) for at in form.amounts]
    seconds = tuple(amount_at(place, at, asking) for at in form.seconds)
    start, end = found[0].start, found[-1].end
    name_start, name_end = _name_span(form, shape, found)
    lead = _lead(form, shape, found, text)
    name = text[name_start:name_end]
    amount, pack = _main(form, amounts, _unit_only(form, place))
    if _is_no_count(form, place, lead or name):
        return Item("bare", NO_AMOUNT, (), None, "", text[start:end], start, end, start, end)
    if (
        not name.strip()
        and amount.unit is not None
        and amount.unit.kind == "count"
        and form.amounts[0].unit is not None
    ):
        unit = found[shape.places[form.amounts[0].unit]]
        amount = amount._replace(unit=EACH)
        return Item(
            "counted",
            amount,
            seconds,
            None,
            "",
            text[unit.start : unit.end],
            start,
            end,
            unit.start,
            unit.end,
        )
    is_behind = form.kind == "of_some" and not lead and _has_note(form.rest, shape, found)
    if form.rest and (form.kind == "named" or is_behind):
        name = f"{name}, {text[found[shape.places[form.rest[0]]].start : end]}"
    full = _how_full(form, shape, found, text)
    return Item(
        form.kind, amount, seconds, pack, lead, name, start, end, name_start, name_end, full
    )


def _is_no_count(form: Form, place: Place, lead: str) -> bool:
    """`butter the size of an egg`: an article behind a name counts nothing, but for parts."""
    if form.kind != "of_some" or place.found[place.shape.places[form.amounts[0].low]].kind != "A":
        return False
    return (
        part_of(lead, lead) is None
        and not says_juice(lead)
        and not re.search(r"\b(?:white|shell)\b", lead)
    )


def _how_full(form: Form, shape: Shape, found: list[Token], text: str) -> str:
    if not form.amounts or form.amounts[0].how_full is None:
        return ""
    token = found[shape.places[form.amounts[0].how_full]]
    return text[token.start : token.end].casefold()


def _span(places: tuple[int, int], shape: Shape, found: list[Token]) -> tuple[int, int]:
    first = found[shape.places[places[0]]].start
    after = shape.places[places[1]] if places[1] < len(shape.places) else len(found)
    return first, found[after - 1].end


def _name_span(form: Form, shape: Shape, found: list[Token]) -> tuple[int, int]:
    if form.kind == "named" and form.name:
        return _span(form.name, shape, found)
    if form.rest and (form.kind != "of_some" or _has_words(form.rest, shape, found)):
        return _without_of(_span(form.rest, shape, found), found)
    if form.name:
        return _span(form.name, shape, found)
    end = found[-1].end
    return end, end


def _without_of(span: tuple[int, int], found: list[Token]) -> tuple[int, int]:
    """A name's span without the `of` that joins it to its amount."""
    at = next(at for at, token in enumerate(found) if token.start == span[0])
    return (found[at + 1].start, span[1]) if found[at].kind == "O" and at + 1 < len(found) else span


def _lead(form: Form, shape: Shape, found: list[Token], text: str) -> str:
    if form.kind != "of_some" or not form.name or not _has_words(form.rest, shape, found):
        return ""
    start, end = _span(form.name, shape, found)
    return text[start:end]


def _has_words(span: tuple[int, int] | None, shape: Shape, found: list[Token]) -> bool:
    """Whether something is named behind the number, not only further columns of a table."""
    if span is None:
        return False
    if found[shape.places[span[0]]].kind in "(,":
        return False
    return any(found[at].kind in "WHK" for at in shape.places[span[0] : span[1]])


def _has_note(span: tuple[int, int] | None, shape: Shape, found: list[Token]) -> bool:
    return span is not None and found[shape.places[span[0]]].kind in "(,"


def _unit_only(form: Form, place: Place) -> Unit | None:
    if form.unit_only is None:
        return None
    value = place.found[place.shape.places[form.unit_only]].value
    return value if isinstance(value, Unit) else None


def _main(form: Form, amounts: list[Amount], unit: Unit | None) -> tuple[Amount, Amount | None]:
    """The amount that counts, and what one piece holds where a piece is measured."""
    if form.kind == "packaged":
        return amounts[0]._replace(unit=unit, end=amounts[-1].end), amounts[1]
    if form.kind == "times":
        return _times(amounts[0], amounts[1]), None
    if form.kind in ("added", "joined"):
        return _sum(amounts), None
    if form.kind == "share":
        return amounts[0]._replace(unit=PERCENT), None
    if form.kind == "pinched":
        return Amount(1.0, unit, 0, 0), None
    if form.kind == "vague":
        return Amount(None, unit, 0, 0), None
    if not amounts:
        return NO_AMOUNT, None
    if form.kind in _COUNTED:
        return amounts[0]._replace(unit=unit if form.kind == "sized" else EACH), None
    return amounts[0], None


def _times(count: Amount, one: Amount) -> Amount:
    if count.best is None or one.value is None:
        return one._replace(value=None, start=count.start)
    value = (
        one.value.times(count.best) if isinstance(one.value, Interval) else one.value * count.best
    )
    return one._replace(value=value, start=count.start)


def _sum(amounts: list[Amount]) -> Amount:
    """`1 cup plus 2 tbsp` in the first unit; amounts of different kinds are not added."""
    first = amounts[0]
    if first.unit is None or first.unit.size is None or first.best is None:
        return first
    total = first.best
    for other in amounts[1:]:
        if other.unit is None or other.best is None or other.unit.kind != first.unit.kind:
            return first
        total += other.best * (other.unit.size or 0.0) / first.unit.size
    return first._replace(value=round(total, 9), end=amounts[-1].end)
