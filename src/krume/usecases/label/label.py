"""What the buyer must be told: list, allergens, panel, gluten gate, durability, label sheets."""

import math
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date
from functools import cache

from krume.base import InputError, Notice, Problem
from krume.evidence import Row, column, load, optional
from krume.keep import Keeping
from krume.label import (
    GlutenGate,
    Item,
    ListStyle,
    Statement,
    Unknown,
    contains_line,
    kitchen_line,
    lots_in_use,
    market_rule,
    may_contain_line,
    statement,
)
from krume.pantry import MARKETS
from krume.store import Studio, book_at, studio_of
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.asking.sources import source_keys
from krume.usecases.keep.keep import keeping_of
from krume.usecases.label.before_sale import before_sale
from krume.usecases.label.durability import MadeOn, check_parts, durability_of
from krume.usecases.label.nutrition import AS_PLANNED, NutritionWish, nutrition_of
from krume.usecases.label.result import (
    LabelDurability,
    LabelGluten,
    LabelOf,
    LabelRecord,
    LabelResult,
    LabelUnknown,
)
from krume.usecases.label.weighed import read_as_weighed
from krume.usecases.label.written_days import days_of, written_days
from krume.usecases.sold.gate import gate_of
from krume.usecases.sold.kitchen_nuts import kitchen_nuts
from krume.usecases.sold.order import order_notices
from krume.usecases.sold.papers import Papers, papers_of
from krume.usecases.sold.product import Sold, SoldRead, sold_of

_LAWS = {
    "us": (
        "us-21-cfr-101-4",
        "us-21-cfr-101-9",
        "us-21-cfr-101-12",
        "us-21-cfr-101-91",
        "falcpa",
        "us-fda-label-questions",
        "eu-tolerances-2012",
    ),
    "eu": ("eu-1169-2011", "eu-828-2014", "eu-tolerances-2012"),
    "uk": ("uk-1169-2011", "eu-tolerances-2012"),
    "ca": ("ca-fdr-b01",),
    "au-nz": ("au-nz-food-standards",),
}
_NO_MAKER = (
    "the maker's name and address are not known. The book's settings open it (name and address in "
    'studio.toml), or --maker "NAME, ADDRESS" for this label.'
)
_POINTER_COLUMNS = (
    column("key", "key"),
    column("market", "one of", *MARKETS),
    column("text"),
    column("status", "status"),
    column("source", "source"),
    optional("page"),
)


@dataclass(frozen=True, slots=True)
class LabelWish:
    """In whose words, made on which day, and whether the nutrition panel stands on the label.

    `made_parts` are the days of parts that were made before the whole; `maker` is the name and
    address where the book's own are not to stand there. `by_number` sets additives by their
    numbers and `by_part` gives each part a list of its own; None is as the book has it.
    """

    market: str | None = None
    made: date | None = None
    with_panel: bool = True
    nutrition: NutritionWish = AS_PLANNED
    made_parts: tuple[tuple[str, date], ...] = ()
    maker: str = ""
    by_number: bool | None = None
    by_part: bool | None = None


@dataclass(frozen=True, slots=True)
class Labelled:
    """A text, by the name it was asked for, with its labels and what stands behind them."""

    read: SoldRead
    market: str
    labels: tuple[LabelOf, ...]
    problems: tuple[Problem, ...]
    notices: tuple[Notice, ...]
    sources: tuple[str, ...]
    name: str = ""


def label_of(name: str, wish: LabelWish, asked: Asked) -> Answer[LabelResult]:
    """Say what the buyer must be told; what is not known is named, with what opens it."""
    made = labelled(name, wish, asked)
    result = label_result(made)
    return Answer(
        result, made.problems, made.notices, made.sources, is_possible=made.read.is_possible
    )


def labelled(name: str, wish: LabelWish, asked: Asked) -> Labelled:
    """Labels of everything a name means, from the lots and papers of the book."""
    studio = studio_of(book_at(asked.book))
    market = wish.market or studio.market or "eu"
    if market not in MARKETS:
        known = ", ".join(MARKETS)
        message = f"'{market}' is no market. Type one of {known}."
        raise InputError(message, field="market", got=market, want=known)
    read = read_as_weighed(sold_of(name, asked), asked)
    papers = papers_of(asked)
    nuts = kitchen_nuts(asked, market)
    wish = _with_studio(wish, studio)
    names = list(dict.fromkeys(part for each in read.sold for part in each.formulas))
    check_parts(MadeOn(wish.made, wish.made_parts), names)
    written = {} if read.order is None else written_days(name, asked)
    labels = tuple(
        _label(each, read, papers, nuts, market, wish, written.get(each.name)) for each in read.sold
    )
    keys = frozenset(
        lot.key
        for each in read.sold
        for used in each.product.used
        for lot in lots_in_use(used, papers.lots, each.chosen)
    )
    return Labelled(
        read,
        market,
        labels,
        (*read.problems, *papers.problems_of(keys)),
        (
            *read.notices,
            *order_notices(read, asked),
            *papers.notices_beside(keys),
            *_notices(read, papers, labels),
        ),
        source_keys(read.sources, _LAWS[market]),
        name,
    )


def _with_studio(wish: LabelWish, studio: Studio) -> LabelWish:
    """The wish with what the book's own settings say where it says nothing."""
    by_number, by_part = wish.by_number, wish.by_part
    return replace(
        wish,
        maker=wish.maker or maker_of(studio),
        by_number=studio.label_additives == "numbers" if by_number is None else by_number,
        by_part=studio.label_list == "parts" if by_part is None else by_part,
    )


def label_result(made: Labelled) -> LabelResult:
    """The answer: one thing's own words at the top, or those of several together."""
    labels = made.labels
    only = labels[0] if len(labels) == 1 else None
    return LabelResult(
        name=made.read.title,
        kind=made.read.kind,
        market=made.market,
        on=made.read.on.isoformat(),
        ingredients=only.ingredients if only else _together(labels),
        contains=tuple(sorted({word for each in labels for word in each.contains})),
        may_contain=tuple(sorted({word for each in labels for word in each.may_contain})),
        nutrition=only.nutrition if only else None,
        gluten=_gate_of_all(labels),
        unknown=tuple(dict.fromkeys(text for each in labels for text in each.unknown)),
        can_print=bool(labels) and not made.problems and not any(x.blocked_by for x in labels),
        labels=labels,
        pointers=tuple(row.text("text") for row in _pointers(made.market)),
        files=(),
    )


def _together(labels: tuple[LabelOf, ...]) -> str:
    return "\n".join(f"{each.title}: {each.ingredients}" for each in labels)


def _gate_of_all(labels: tuple[LabelOf, ...]) -> LabelGluten:
    """The gate of an order: open only where each of its things is open."""
    if len(labels) == 1:
        return labels[0].gluten
    gates = [each.gluten for each in labels]
    figures = [gate.most_ppm for gate in gates]
    known = [figure for figure in figures if figure is not None]
    allowed = bool(gates) and all(gate.claim_allowed for gate in gates)
    return LabelGluten(
        claim_allowed=allowed,
        missing=_each_once(gate.missing for gate in gates),
        open_on_ingredients=bool(gates) and all(gate.open_on_ingredients for gate in gates),
        sentence=gates[0].sentence if allowed else None,
        most_ppm=max(known) if known and len(known) == len(figures) else None,
        opens=_each_once(gate.opens for gate in gates),
        records=tuple(dict.fromkeys(record for gate in gates for record in gate.records)),
        notes=_each_once(gate.notes for gate in gates),
    )


def _each_once(groups: Iterable[tuple[str, ...]]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(word for group in groups for word in group))


@cache
def _pointers(market: str) -> tuple[Row, ...]:
    rows = load("label_pointers.csv", _POINTER_COLUMNS)
    return tuple(row for row in rows if row.text("market") == market)


def _label(
    sold: Sold,
    read: SoldRead,
    papers: Papers,
    nuts: Mapping[str, str],
    market: str,
    wish: LabelWish,
    written: MadeOn | None,
) -> LabelOf:
    product = sold.product
    keeping = keeping_of(sold)
    made = days_of(keeping, MadeOn(wish.made, wish.made_parts), written)
    style = ListStyle(by_number=bool(wish.by_number), by_part=bool(wish.by_part))
    said = statement(
        product, papers.lots,
        market=market, chosen=sold.chosen, sheets=papers.sheets, style=style,
    )  # fmt: skip
    gate = gate_of(product, papers, on=read.on, market=market, chosen=sold.chosen, made=made.day)
    eaten = nutrition_of(product, papers.sheets, market, wish.nutrition)
    open_items = (*said.unknown, *eaten.unknown)
    durability = durability_of(keeping, market, made)
    label = LabelOf(
        name=sold.name,
        title=product.name,
        count=sold.count,
        ingredients=said.text,
        contains=said.contains,
        may_contain=said.may_contain,
        items=tuple(_item(item) for item in said.items),
        nutrition=eaten.nutrition,
        gluten=_gluten(gate),
        unknown=tuple(dict.fromkeys(each.text for each in open_items)),
        open_items=tuple(LabelUnknown(u.of, u.what, u.closes, u.opens) for u in open_items),
        durability=durability,
        sentences=_sentences(said, gate, nuts, keeping, market),
        finished_g=product.finished_g,
        finished_status=product.finished_status,
        blocked_by=_blocked(open_items, durability, wish),
        maker=wish.maker,
        parts=said.parts,
        beside=_beside(said),
    )
    return replace(label, before_sale=before_sale(label))


def _item(item: Item) -> Item:
    """An item for an answer: a share that is not known is null."""
    quid = item.quid_pct
    return item if quid is None or not math.isnan(quid) else replace(item, quid_pct=None)


def _gluten(gate: GlutenGate) -> LabelGluten:
    return LabelGluten(
        claim_allowed=gate.claim_allowed,
        missing=gate.missing,
        open_on_ingredients=gate.is_open_on_ingredients,
        sentence=gate.sentence if gate.claim_allowed else None,
        most_ppm=gate.most_ppm,
        opens=gate.opens,
        records=tuple(
            LabelRecord(r.lot, r.ingredient, r.state, r.text, r.of) for r in gate.records
        ),
        notes=gate.notes,
    )


def maker_of(studio: Studio) -> str:
    """Name and address of the studio as a label says them; empty while one is not known."""
    if studio.name is None or studio.address is None:
        return ""
    return f"Made by {studio.name}, {studio.address}"


def _sentences(
    said: Statement,
    gate: GlutenGate,
    nuts: Mapping[str, str],
    keeping: Keeping,
    market: str,
) -> tuple[str, ...]:
    """Sentences of the label besides list and panel; the gluten one only through an open gate."""
    alcohol = any("alcohol" in part.traits for part in keeping.components)
    raw = any({"raw-egg", "egg-heat-unknown"} & part.traits for part in keeping.components)
    told = (
        contains_line(said) if market_rule(market).has_contains_line else "",
        may_contain_line(said),
        kitchen_line(said, nuts),
        *said.must_say,
        "Contains alcohol." if alcohol else "",
        said.alcohol.line if said.alcohol is not None else "",
        "Made with raw egg." if raw else "",
        gate.sentence if gate.claim_allowed and gate.sentence else "",
    )
    return tuple(text for text in told if text)


def _beside(said: Statement) -> tuple[str, ...]:
    """What is told with a list and is not printed on it."""
    rule = said.alcohol.rule if said.alcohol is not None else ""
    not_food = ", ".join(said.not_food)
    told = (
        *said.beside,
        rule,
        f"Not food, and on no list: {not_food}. Take it off before eating." if not_food else "",
    )
    return tuple(text for text in told if text)


def _blocked(
    open_items: tuple[Unknown, ...], durability: LabelDurability, wish: LabelWish
) -> tuple[str, ...]:
    closing = ("label", "panel") if wish.with_panel else ("label",)
    held = [each.text for each in open_items if each.closes in closing]
    if durability.days is None:
        held.append(durability.reason or "how long it keeps is not known")
    if not wish.maker:
        held.append(_NO_MAKER)
    return tuple(dict.fromkeys(held))


def _notices(read: SoldRead, papers: Papers, labels: tuple[LabelOf, ...]) -> tuple[Notice, ...]:
    found: list[Notice] = []
    planned = [each.name for each in labels if each.finished_status == "assumed"]
    if planned:
        text = (
            f"{', '.join(planned)}: shares and panel stand on the planned baked mass. Weigh it "
            "and write it into the Baked: line."
        )
        found.append(Notice("planned-mass", text))
    for each in read.sold:
        for used in each.product.used:
            in_use = lots_in_use(used, papers.lots, each.chosen)
            if len(in_use) > 1:
                keys = ", ".join(lot.key for lot in in_use)
                text = f"{keys} are lots of {used.name}: all count. A line “Lots:” names those used"
                found.append(Notice("several-lots", text))
    bounded = any(each.nutrition is not None for each in labels)
    if bounded:
        text = (
            "A blank of a table lies between nothing and the row of its class; where that moves "
            "no printed digit the figure stands."
        )
        found.append(Notice("bounded-unknown", text))
    return tuple(dict.fromkeys(found))
