"""The order sheet: when, for whom, which diets, what, how cold, which lots, what is said back."""

from collections.abc import Mapping

from krume.base import as_text
from krume.build import Order
from krume.label import GateRecord, RoomStanding
from krume.properties import constants
from krume.publish import Fact, Hold, Imprint, Leaf, LeafPart, LeafTable
from krume.usecases.sheets.order_batches import OrderBatch, batch_table
from krume.usecases.sheets.work_order import work_order
from krume.usecases.sold.gate import gate_of
from krume.usecases.sold.gluten_words import RECORD_STATES
from krume.usecases.sold.order import OrderJudgement
from krume.usecases.sold.papers import Papers
from krume.usecases.sold.product import Sold, SoldRead

_DAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")


def order_leaf(
    read: SoldRead,
    order: Order,
    judged: OrderJudgement,
    papers: Papers,
    imprint: Imprint,
    *,
    cold: tuple[str, ...],
    found: tuple[OrderBatch, ...] = (),
    oven: LeafPart | None = None,
    codes: Mapping[str, str] | None = None,
) -> Leaf:
    """The order sheet of a judged order; `cold` are the keeping lines of what it holds.

    `found` are the batches it takes, `oven` says when to look at what is baked for it, `codes`
    are the lot codes of what is written down as made.
    """
    return Leaf(
        kind="order sheet",
        name=order.name or read.title or "Order",
        facts=_facts(order),
        parts=(
            LeafPart("Diet and allergies", (judged.diet_box,), boxed=True),
            LeafPart("What", _enough(read, order), table=_what(read, order)),
            LeafPart("Cold", (*cold, judged.warm.text, *_latest(judged), _take_out())),
            *((LeafPart("Batches", table=batch_table(found)),) if found else ()),
            *((oven,) if oven is not None else ()),
            *((first,) if (first := work_order(read, papers)) is not None else ()),
            LeafPart("Say back to the customer", (judged.confirmation,), boxed=True),
            LeafPart("Who", _who(order)),
            _lot_codes(read, codes or {}),
            *_evidence(read, papers),
        ),
        cautions=(
            *judged.cautions,
            "Your local law and, where one exists, your licensing authority decide.",
        ),
        hold=one_hold(judged.holds),
        imprint=imprint,
    )


def _take_out() -> str:
    minutes = constants("keep_limits.csv")["take-out-min"]
    return (
        f"Take it out of the cold about {as_text(minutes)} minutes before it is cut "
        "(common practice); those minutes count as warm."
    )


def one_hold(holds: tuple[Hold, ...]) -> Hold | None:
    """All holds of an order as one, for a sheet that has one place for them."""
    if not holds:
        return None
    text = " ".join(hold.text for hold in holds)
    return Hold(text, " ".join(dict.fromkeys(hold.opens for hold in holds if hold.opens)))


def _facts(order: Order) -> tuple[Fact, ...]:
    day = order.date
    hand = order.hand_over
    time = None if hand is None else hand.time
    facts = [
        Fact(
            "hand over on",
            "not said" if day is None else day.isoformat(),
            "" if day is None else _DAYS[day.weekday()],
        ),
        Fact("at", "not said" if time is None else time.strftime("%H:%M")),
        Fact("for", "not said" if order.people is None else str(order.people), "people"),
        Fact("price", "not agreed" if order.price is None else f"{order.price} {order.currency}"),
    ]
    return tuple(Fact(f.label, f.figure.strip(), f.unit) for f in facts)


def _what(read: SoldRead, order: Order) -> LeafTable:
    rows = tuple(
        (str(sold.count), sold.name, sold.product.name, _slices(sold, _guests_of(read, order)))
        for sold in read.sold
    )
    return LeafTable(("number", "name", "what", "slices"), rows, right=(0,), wide=2)


def _guests_of(read: SoldRead, order: Order) -> int | None:
    """All guests eat of one torte only where the order is one torte."""
    return order.people if sum(sold.count for sold in read.sold) == 1 else None


def _slices(sold: Sold, guests: int | None) -> str:
    mass = sold.product.finished_g
    counts = {*sold.product.slices, *((guests,) if guests is not None else ())}
    if mass is None or not counts:
        return "not known" if mass is None else "not said"
    return " or ".join(f"{n} of {as_text(mass / n, 1)} g" for n in sorted(counts))


def _enough(read: SoldRead, order: Order) -> tuple[str, ...]:
    """Whether the slices of all tortes together reach the guests."""
    counts = [max(s.product.slices, default=0) * s.count for s in read.sold]
    if order.people is None or not all(counts) or _guests_of(read, order) is not None:
        return ()
    short = order.people - sum(counts)
    said = f"{sum(counts)} slices at most for {order.people} people"
    return (f"{said}: {short} short." if short > 0 else f"{said}.",)


def _latest(judged: OrderJudgement) -> tuple[str, ...]:
    end = judged.warm.latest_end
    if end is None:
        return ()
    at, limit = end.strftime("%H:%M"), as_text(judged.warm.limit_h, 1)
    return (
        f"Eaten, or cold again, by {at}: {limit} hours by the rule “{judged.warm.rule}”, "
        "where your law takes it over.",
    )


def _who(order: Order) -> tuple[str, ...]:
    lines = [f"Customer: {order.customer or 'not said'}"]
    phone = next((v for k, v in order.keys.items() if k in ("phone", "telephone", "tel")), None)
    lines.append(f"Telephone: {phone or 'not said'}")
    if order.hand_over is not None:
        lines.append(f"Hand-over: {order.hand_over.read}")
    return tuple(lines)


def _lot_codes(read: SoldRead, codes: Mapping[str, str]) -> LeafPart:
    """Lot code of each thing, or room for one: it is given when its bags are written down."""
    lines = tuple(
        f"{sold.name}: {codes[sold.name]}"
        if sold.name in codes
        else f"{sold.name}: ____________  given when the bags that went in are written down"
        for sold in read.sold
    )
    return LeafPart("Lot codes", tuple(dict.fromkeys(lines)))


def _evidence(read: SoldRead, papers: Papers) -> tuple[LeafPart, ...]:
    rows: dict[tuple[str, str], GateRecord] = {}
    room: dict[str, RoomStanding] = {}
    for sold in read.sold:
        gate = gate_of(sold.product, papers, on=read.on, chosen=sold.chosen)
        for record in gate.records:
            if record.state != "not-needed":
                rows.setdefault((record.lot or "no lot", record.ingredient), record)
        room |= {each.name: each for each in gate.room if not each.is_open}
    if not rows:
        return ()
    table = LeafTable(
        ("lot", "goods", "gluten record", "what it says"),
        tuple(
            (lot, goods, RECORD_STATES.get(record.state, record.state), record.text)
            for (lot, goods), record in sorted(rows.items())
        ),
        wide=1,
        loose=3,
    )
    lots = LeafPart("Lots that need a gluten record", table=table)
    return (lots, _shut_in_the_room(tuple(room.values()))) if room else (lots,)


def _shut_in_the_room(room: tuple[RoomStanding, ...]) -> LeafPart:
    """What of the room's list keeps the gluten gate shut, with a place to tick when it is done."""
    ends = (f"{each.text}{'' if each.text.endswith('?') else '.'} {each.needs}" for each in room)
    lines = tuple(f"{each.name}: {end}   done ____" for each, end in zip(room, ends, strict=True))
    return LeafPart("Still shut in the room", lines)
