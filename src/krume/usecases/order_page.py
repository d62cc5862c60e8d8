"""One order as a page shows it: five questions, its hold, diets, pieces, batches, price."""

from dataclasses import dataclass, replace
from datetime import date

from krume.base import KrumeError, Problem, as_text, money_text
from krume.build import Order
from krume.publish import Hold
from krume.store import book_at
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.asking.remembering import Remembered, day_key
from krume.usecases.cost.cost import CostWish, cost_of
from krume.usecases.cost.result import CostResult
from krume.usecases.keep.keep import keep_of
from krume.usecases.label.label import LabelWish, label_of
from krume.usecases.label.result import LabelResult
from krume.usecases.plan.day_plan import BookPlan, planned_at
from krume.usecases.sheets.order_batches import OrderBatch, order_batches
from krume.usecases.sold.order import OrderJudgement, judge_order
from krume.usecases.sold.product import Sold, SoldRead, sold_of

_MOST = 200


@dataclass(frozen=True, slots=True)
class OrderQuestion:
    """One of the five questions of an order. `is_answered` is None where it is not judged yet.

    `word` is its state in a word or two, `text` says why, `opens` what would settle it.
    """

    key: str
    ask: str
    is_answered: bool | None
    word: str
    text: str
    opens: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class OrderPiece:
    """One thing of an order: how many, of what, and the slices it is cut into."""

    name: str
    title: str
    kind: str
    count: int
    mass_g: float | None
    slices: tuple[tuple[int, float], ...]


@dataclass(frozen=True, slots=True)
class OrderView:
    """All that is known of an order; `order` is None where its text could not be read.

    `problems` are all that is asked, of the order and of what it names.
    """

    name: str
    title: str
    order: Order | None
    on: date | None
    problems: tuple[Problem, ...]
    questions: tuple[OrderQuestion, ...]
    holds: tuple[Hold, ...]
    diet_box: str
    cautions: tuple[str, ...]
    confirmation: str
    pieces: tuple[OrderPiece, ...]
    batches: tuple[OrderBatch, ...]
    cold: tuple[str, ...]
    enough: str

    @property
    def answered(self) -> int:
        """How many of the five questions are answered."""
        return sum(each.is_answered is True for each in self.questions)


_VIEWS: Remembered[OrderView] = Remembered(_MOST)


def order_view(name: str, asked: Asked) -> OrderView:
    """An order with its five questions; what has no plan yet is not timed."""
    book = book_at(asked.book)
    view = _VIEWS.of(book, day_key(book, asked, name), lambda: _view(name, asked))
    timed = _timed(name, view, asked)
    questions = tuple(timed if each.key == "timed" else each for each in view.questions)
    return replace(view, questions=questions)


def _view(name: str, asked: Asked) -> OrderView:
    place = f"orders/{name}.txt"
    try:
        read = sold_of(place, asked)
        order = read.order or Order(None)
        if not read.sold:
            return _bare(name, read.problems, order)
        judged = judge_order(read, order, asked)
        return _whole(name, place, read, order, judged, asked)
    except KrumeError as error:
        ask = Problem(error.code, error.where or "", error.got or "", error.message)
        return _bare(name, (ask,), None)


def _bare(name: str, problems: tuple[Problem, ...], order: Order | None) -> OrderView:
    """An order of which nothing can be worked out before a question is answered."""
    title = name if order is None else order.name or name
    why = problems[0].ask if problems else "It names nothing yet. Type a line such as: 1 T1"
    questions = tuple(
        OrderQuestion(key, ask, None, "not yet", why if key == "sized" else "Waits for the first.")
        for key, ask in _ASKS.items()
    )
    day = None if order is None else order.date
    return OrderView(
        name, title, order, day, problems, questions, (), "not read yet", (), "", (), (), (), ""
    )


_ASKS = {
    "sized": "Sized?",
    "timed": "Timed?",
    "priced": "Priced?",
    "diets": "Diets met?",
    "labels": "Labels open?",
}


def _whole(
    name: str, place: str, read: SoldRead, order: Order, judged: OrderJudgement, asked: Asked
) -> OrderView:
    batches = order_batches(read, asked)
    pieces = tuple(_piece(sold, order, read) for sold in read.sold)
    keeping = keep_of(place, asked).result
    enough = _enough(pieces, order)
    return OrderView(
        name=name,
        title=order.name or name,
        order=order,
        on=read.on,
        problems=tuple(dict.fromkeys((*judged.problems, *read.problems))),
        questions=(
            _sized(read, batches, enough),
            OrderQuestion("timed", _ASKS["timed"], None, "not yet", ""),
            _priced(cost_of(place, CostWish(), asked)),
            _diets(judged),
            _labels(label_of(place, LabelWish(), asked).result),
        ),
        holds=judged.holds,
        diet_box=judged.diet_box,
        cautions=tuple(text for text in judged.cautions if text != judged.warm.text),
        confirmation=judged.confirmation,
        pieces=pieces,
        batches=batches,
        cold=(*keeping.limits[:1], *keeping.reasons[:1], judged.warm.text),
        enough=enough,
    )


def _piece(sold: Sold, order: Order, read: SoldRead) -> OrderPiece:
    """A thing with its slices; all guests eat of one torte only where there is only one."""
    mass = sold.product.finished_g
    is_one = order.people is not None and sum(each.count for each in read.sold) == 1
    guests = (order.people,) if is_one and order.people is not None else ()
    counts = sorted({*sold.product.slices, *guests})
    slices = () if mass is None else tuple((n, mass / n) for n in counts)
    return OrderPiece(sold.name, sold.product.name, sold.product.kind, sold.count, mass, slices)


def _enough(pieces: tuple[OrderPiece, ...], order: Order) -> str:
    """Whether the slices of all pieces together reach the guests."""
    most = [max((n for n, _ in each.slices), default=0) * each.count for each in pieces]
    if order.people is None or not all(most):
        return ""
    short = order.people - sum(most)
    said = f"{sum(most)} slices at most for {order.people} people"
    return f"{said}: {short} short" if short > 0 else said


def _sized(read: SoldRead, batches: tuple[OrderBatch, ...], enough: str) -> OrderQuestion:
    ask = _ASKS["sized"]
    unknown = [each.name for each in batches if each.batches is None]
    if read.problems or unknown:
        why = read.problems[0].ask if read.problems else f"Not known: {', '.join(unknown)}."
        return OrderQuestion("sized", ask, None, "a question is open", why)
    said = ", ".join(f"{as_text(each.batches or 0.0, 2)} {each.name}" for each in batches)
    is_short = enough.endswith("short")
    text = f"Batches: {said}. {enough}".strip().rstrip(".") + "."
    opens = ("Cut more slices, bake one more, or tell the customer.",) if is_short else ()
    return OrderQuestion("sized", ask, not is_short, "short" if is_short else "sized", text, opens)


def _priced(answer: Answer[CostResult]) -> OrderQuestion:
    """The price and the hour it leaves, against the full cost; unknown is said by name."""
    ask, cost = _ASKS["priced"], answer.result
    if cost.direct is None or cost.full is None:
        why = " ".join(dict.fromkeys(problem.ask for problem in answer.problems))
        return OrderQuestion("priced", ask, None, "cost not known", why)
    full, hour = money_text(cost.full, cost.currency), _an_hour(cost)
    if cost.price is None or cost.price_basis != "agreed":
        wanted = "" if cost.price is None else _asked_for(cost, hour)
        opens = ("Agree one, and write a line such as: Price: 96.00",)
        text = f"Full cost {full}.{wanted}"
        return OrderQuestion("priced", ask, None, "no price agreed", text, opens)
    price = money_text(cost.price, cost.currency)
    margin = "not known" if cost.margin_pct is None else f"{as_text(float(cost.margin_pct), 1)} %"
    text = f"{price} as agreed leaves {hour}. Full cost {full}, margin {margin} of the price."
    is_paid = cost.price >= cost.full
    word = "priced" if is_paid else "below its full cost"
    return OrderQuestion("priced", ask, is_paid, word, text)


def _an_hour(cost: CostResult) -> str:
    if cost.per_hour is None:
        return "an hour of your work that is not known"
    return f"{money_text(cost.per_hour, cost.currency)} for an hour of your work"


def _asked_for(cost: CostResult, hour: str) -> str:
    margin = as_text(float(cost.margin_asked_pct), 1)
    price = "" if cost.price is None else money_text(cost.price, cost.currency)
    return f" {price} would keep {margin} % of it, and leave {hour}."


def _diets(judged: OrderJudgement) -> OrderQuestion:
    ask = _ASKS["diets"]
    if any(problem.code == "diet-contradiction" for problem in judged.problems):
        text = judged.problems[0].ask
        return OrderQuestion("diets", ask, False, "against itself", text)  # noqa: FBT003
    if judged.holds:
        text = " ".join(hold.text for hold in judged.holds)
        opens = tuple(dict.fromkeys(hold.opens for hold in judged.holds if hold.opens))
        return OrderQuestion("diets", ask, False, "held", text, opens)  # noqa: FBT003
    if judged.is_diet_clear is None:
        text = f"Diet: {judged.diet_box}. Look yourself: nobody has read it as a diet."
        told = " ".join(judged.kitchen)
        return OrderQuestion("diets", ask, None, "look yourself", told or text)
    return OrderQuestion("diets", ask, judged.is_diet_clear, "met", f"Diet: {judged.diet_box}.")


def _labels(found: LabelResult) -> OrderQuestion:
    """Open where every thing's label may be printed; else what blocks each, by name."""
    ask = _ASKS["labels"]
    shut = [each for each in found.labels if each.blocked_by]
    if not found.labels or (not shut and not found.can_print):
        text = " ".join(found.unknown) or "A label is not worked out yet."
        return OrderQuestion("labels", ask, None, "not known", text)
    if not shut:
        return OrderQuestion("labels", ask, True, "open", "Every label may be printed.")  # noqa: FBT003
    names = ", ".join(each.name for each in shut)
    opens = tuple(dict.fromkeys(text for each in shut for text in each.blocked_by))
    text = f"{len(found.labels) - len(shut)} of {len(found.labels)} open; shut: {names}."
    return OrderQuestion("labels", ask, False, "shut", text, opens)  # noqa: FBT003


def _timed(name: str, view: OrderView, asked: Asked) -> OrderQuestion:
    """Whether a plan holds it; before one was worked out that is open."""
    ask, plan = _ASKS["timed"], planned_at(name, asked)
    if not view.pieces or plan is None:
        text = "No plan was worked out since the book changed."
        return OrderQuestion("timed", ask, None, "not worked out", text)
    left = next((each.why for each in plan.left_out if each.name == name), "")
    if left:
        return OrderQuestion("timed", ask, None, "left out of the plan", left)
    if not plan.answer.is_answered:
        why = " ".join(dict.fromkeys(problem.ask for problem in plan.answer.problems))
        return OrderQuestion("timed", ask, False, "it does not fit", why)  # noqa: FBT003
    return OrderQuestion("timed", ask, True, "it fits", _times(name, plan))  # noqa: FBT003


def _times(name: str, plan: BookPlan) -> str:
    """First start and box of an order, with the smallest slack of its own work."""
    mine = [task for task in plan.answer.result.tasks if task.order == name]
    tight = plan.answer.result.tightest
    said = "" if tight is None else f" {tight.text}"
    if not mine:
        return said.strip() or "It is in the plan."
    first, last = min(t.start for t in mine), max(t.end for t in mine)
    return f"Built and boxed {first:%A %H:%M} to {last:%A %H:%M}.{said}"
