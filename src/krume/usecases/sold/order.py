"""What an order promises, judged: diets, contradictions, holds, warm hours, the sentence back."""

from collections.abc import Iterable
from dataclasses import dataclass

from krume.base import Notice, Option, Problem
from krume.build import Order
from krume.keep import OutOfCold, out_of_cold
from krume.label import (
    Diet,
    DietFinding,
    Piece,
    is_illness,
    judge_diets,
    kitchen_line,
    read_diets,
    statement,
)
from krume.publish import Hold
from krume.store import book_at
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.clock import today
from krume.usecases.asking.remembering import Remembered
from krume.usecases.sold.gate import gate_of
from krume.usecases.sold.kitchen_nuts import kitchen_nuts
from krume.usecases.sold.papers import Papers, papers_of
from krume.usecases.sold.product import SoldRead

_DIET_KEYS = ("notes", "note", "diet", "diets", "allergy", "allergies", "allergens", "for")
NUT_DIETS = ("nuts", "peanut")


_WAYS_OUT = "Bake another in its place, or leave it out."


@dataclass(frozen=True, slots=True)
class OrderJudgement:
    """An order held against what it holds; `problems` stop it, `holds` are printed on its sheets.

    `diet_box` is what stands in the ruled box: the diets in the customer's own words, or "none
    stated", which is never left empty. `is_diet_clear` is None where somebody has to look: notes
    that name no diet, or nuts that the kitchen uses for other things.
    """

    diets: tuple[Diet, ...]
    diet_box: str
    findings: tuple[DietFinding, ...]
    problems: tuple[Problem, ...]
    holds: tuple[Hold, ...]
    cautions: tuple[str, ...]
    kitchen: tuple[str, ...]
    warm: OutOfCold
    confirmation: str
    is_diet_clear: bool | None


_JUDGED: Remembered[tuple[SoldRead, OrderJudgement]] = Remembered(100)


def judge_order(read: SoldRead, order: Order, asked: Asked) -> OrderJudgement:
    """Judge an order's diets, contradictions, holds and hours out of the cold."""
    # Label, keeping, price and page ask in turn about the one order that was read; what is kept
    # holds on to it, so that its identity is no other's.
    key, book = (id(read), order.source_lines, asked), book_at(asked.book)
    return _JUDGED.of(book, key, lambda: (read, _judge(read, order, asked)))[1]


def _judge(read: SoldRead, order: Order, asked: Asked) -> OrderJudgement:
    diets = read_diets(spoken(order))
    pieces = _pieces(read, order, papers_of(asked))
    findings = judge_diets(diets, pieces)
    kitchen = _kitchen(diets, pieces, asked)
    warm = _warm(order)
    return OrderJudgement(
        diets=diets,
        diet_box=_diet_box(diets, order),
        findings=findings,
        problems=(*_past(order, asked), *_contradictions(findings, pieces, kitchen)),
        holds=_holds(findings),
        cautions=(*_cautions(diets, findings), *kitchen, *_decorations(diets), warm.text),
        kitchen=kitchen,
        warm=warm,
        confirmation=_confirmation(order, diets, kitchen, is_held=bool(_holds(findings))),
        is_diet_clear=_is_clear(order, diets, findings, kitchen),
    )


def _is_clear(
    order: Order,
    diets: tuple[Diet, ...],
    findings: tuple[DietFinding, ...],
    kitchen: tuple[str, ...],
) -> bool | None:
    if any(finding.verdict != "caution" for finding in findings):
        return False
    is_open = bool(kitchen or findings) or (bool(order.notes) and not diets)
    return None if is_open else True


def order_notices(read: SoldRead, asked: Asked) -> tuple[Notice, ...]:
    """What stops or holds an order's sheets, said beside every other answer about it."""
    if read.order is None or not read.sold:
        return ()
    judged = judge_order(read, read.order, asked)
    stops = tuple(
        Notice("order-stops", f"Its sheets stop here: {p.ask}", p.where) for p in judged.problems
    )
    holds = tuple(Notice("order-held", f"HELD: {h.text} {h.opens}") for h in judged.holds)
    return (*stops, *holds)


def _past(order: Order, asked: Asked) -> tuple[Problem, ...]:
    """An order for a day that is over is asked before anything is made for it."""
    day = today(book_at(asked.book), on=asked.on)
    if order.date is None or order.date >= day:
        return ()
    line = next((line for line in order.source_lines if line.key == "date"), None)
    ask = (
        f"It was for {order.date:%A %Y-%m-%d}, and it is {day.isoformat()} now. Correct the "
        "date, or make the sheets as of an earlier day with --on."
    )
    where, read = ("after line 1", "") if line is None else (line.where, line.text)
    return (Problem("order-past", where, read, ask),)


def spoken(order: Order) -> Iterable[tuple[int, str]]:
    """Numbered lines in which a customer may name a diet."""
    for line in order.source_lines:
        if line.kind in ("note", "key") and (not line.key or line.key in _DIET_KEYS):
            yield line.number, line.value or line.text


def _pieces(read: SoldRead, order: Order, papers: Papers) -> tuple[Piece, ...]:
    by_name = {line.what.casefold(): line for line in order.lines}
    pieces = []
    for sold in read.sold:
        line = by_name.get(sold.name.casefold())
        said = tuple(
            statement(
                sold.product,
                papers.lots,
                market=market,
                chosen=sold.chosen,
                sheets=papers.sheets,
            )
            for market in ("eu", "us")
        )
        gate = gate_of(sold.product, papers, on=read.on, chosen=sold.chosen)
        number, words, told = (line.number, line.read, line.told) if line else (1, sold.name, ())
        pieces.append(Piece(sold.name, number, words, sold.product, said, gate, told))
    return tuple(pieces)


def _contradictions(
    findings: tuple[DietFinding, ...], pieces: tuple[Piece, ...], kitchen: tuple[str, ...]
) -> tuple[Problem, ...]:
    """One question for each piece that stands against the order itself."""
    by_name = {piece.name: piece for piece in pieces}
    problems = []
    for name in dict.fromkeys(f.piece for f in findings if f.verdict == "contains"):
        piece = by_name[name]
        mine = [f for f in findings if f.piece == name and f.verdict == "contains"]
        what = list(dict.fromkeys(word for f in mine for word in f.what))
        others = [f.text for f in findings if f.piece != name and f.verdict == "may-contain"]
        ask = " ".join([*(f.text for f in mine), *others, *kitchen, _WAYS_OUT])
        options = [Option(f"Leave {name} out", f"Note: {piece.read}, left out")]
        if not any(is_illness(f.diet) for f in mine):
            told = f"{piece.read} (told in writing: {', '.join(what)})"
            options.append(Option(f"Keep {name}; the customer was told in writing", told))
        problems.append(
            Problem("diet-contradiction", f"line {piece.line}", piece.read, ask, tuple(options))
        )
    return tuple(problems)


def _holds(findings: tuple[DietFinding, ...]) -> tuple[Hold, ...]:
    held = (f for f in findings if f.verdict in ("gate-shut", "may-contain", "unknown"))
    return tuple(dict.fromkeys(Hold(f.text, f.opens) for f in held))


def _kitchen(diets: tuple[Diet, ...], pieces: tuple[Piece, ...], asked: Asked) -> tuple[str, ...]:
    """That nuts are used here for other things, where somebody asked for none."""
    if not any(diet.key in NUT_DIETS for diet in diets) or not pieces:
        return ()
    said = kitchen_line(pieces[0].statements[0], kitchen_nuts(asked, "eu"))
    others = "; say so in writing" if said else ""
    return (f"{said.rstrip('.')}{others}.",) if said else ()


def _cautions(diets: tuple[Diet, ...], findings: tuple[DietFinding, ...]) -> tuple[str, ...]:
    said = [f.text for f in findings if f.verdict == "caution"]
    said += [diet.caution for diet in diets if diet.caution and diet.kind != "decoration"]
    return tuple(dict.fromkeys(said))


def _decorations(diets: tuple[Diet, ...]) -> tuple[str, ...]:
    return tuple(f"“{diet.words}”: {diet.caution}" for diet in diets if diet.kind == "decoration")


def _diet_box(diets: tuple[Diet, ...], order: Order) -> str:
    """The diets in the customer's words; other notes stand there too, to be read."""
    lines: dict[str, list[str]] = {}
    for diet in diets:
        if diet.kind != "decoration":
            lines.setdefault(diet.read, []).append(diet.label)
    stated = "; ".join(f"{', '.join(labels)}: “{read}”" for read, labels in lines.items())
    rest = [note for note in order.notes if note not in lines]
    if stated or not rest:
        return stated or "none stated"
    return f"none stated. The notes say: “{' '.join(rest)}”"


def _warm(order: Order) -> OutOfCold:
    hand = order.hand_over
    return out_of_cold(
        "" if hand is None else hand.read,
        hand_over=None if hand is None else hand.time,
        drive_min=None if hand is None else hand.drive_min,
    )


def _confirmation(
    order: Order, diets: tuple[Diet, ...], kitchen: tuple[str, ...], *, is_held: bool
) -> str:
    """What is said back to the customer: what, when, diet, cold chain."""
    what = ", ".join(f"{line.count} {line.what}" for line in order.lines)
    day = "a day to be named" if order.date is None else order.date.isoformat()
    hand = order.hand_over
    at = "" if hand is None or hand.time is None else f" at {hand.time.strftime('%H:%M')}"
    people = "" if order.people is None else f" for {order.people} people"
    said = dict.fromkeys(d.read.rstrip(". ") for d in diets if d.kind != "decoration")
    diet = "; ".join(f"“{each}”" for each in said) or "none stated"
    price = "" if order.price is None else f" Price {order.price} {order.currency}".rstrip() + "."
    held = "Not to be confirmed while it is held. When it is open: " if is_held else ""
    return (
        f"{held}{what}{people}, {day}{at}.{price} Diet: {diet}. "
        f"{_said_back(kitchen)}Keep it at 5 °C or below until it is served."
    )


def _said_back(kitchen: tuple[str, ...]) -> str:
    """The kitchen's nuts as the customer hears it, without the note to ourselves."""
    return "".join(f"{said.partition(';')[0].rstrip('.')}. " for said in kitchen)
