"""The bench card: all that stands on one, as plain values, before it becomes paper or a page."""

from dataclasses import dataclass

from krume.base import Notice
from krume.design import Formula, Matters, Row, Weighing, matters
from krume.label import Statement
from krume.publish.bake_strip import ModelBake, bake_strip
from krume.publish.caution import cautions
from krume.publish.facts import Fact, clocks, cooling, facts, origin
from krume.publish.signs import missing_notice, printable
from krume.publish.words import grams, shown


@dataclass(frozen=True, slots=True)
class Hold:
    """What stops an order, and the one thing that opens it."""

    text: str
    opens: str = ""


@dataclass(frozen=True, slots=True)
class Imprint:
    """What stands at the bottom of a sheet: its day, what made it, and lasting notes.

    `date` is an ISO day; `program` and `data` are versions; `version` is the formula's own;
    `market` says by whose words allergens are declared, `eu` or `us`; `units` how temperatures
    are printed, `c`, `f` or `both`; the first of `notes` stands beside the sign of an unbaked cake
    when it says so.
    """

    date: str
    program: str
    data: str
    version: str = ""
    market: str = "eu"
    notes: tuple[str, ...] = ()
    units: str = "c"


@dataclass(frozen=True, slots=True)
class CardRow:
    """A row of the card: the numbers, and the words that are printed for them.

    `again` is `twice` where the line is one of those to weigh twice, `weigh` where eggs are one of
    them: they are weighed, not counted.
    """

    kind: str
    bowl: str
    take: str
    add: str
    display: str
    number: int | None
    add_g: float | None
    display_g: float | None
    mark: str
    again: str = ""


@dataclass(frozen=True, slots=True)
class BenchCard:
    """One batch on one card; `weigh_twice` names the lines whose weighing matters most.

    `bake` is what the bake model says of it, `strip` the same as a small drawing; `cooling_own` is
    its cooling without the model's words, for a card that has no room for them.
    """

    name: str
    facts: tuple[Fact, ...]
    rows: tuple[CardRow, ...]
    clocks: tuple[Fact, ...]
    origin: str
    cooling: str
    cautions: tuple[str, ...]
    hints: tuple[str, ...]
    sum_text: str
    total_g: float
    unknown: tuple[str, ...]
    hold: Hold | None
    imprint: Imprint
    notices: tuple[Notice, ...] = ()
    weigh_twice: str = ""
    bake: str = ""
    strip: str = ""
    cooling_own: str = ""


def bench_card(
    formula: Formula,
    weighing: Weighing,
    imprint: Imprint,
    *,
    dial_c: float | None = None,
    hold: Hold | None = None,
    gluten: str | None = None,
    gelatine: str | None = None,
    declared: Statement | None = None,
    model: ModelBake | None = None,
    cooled: str = "",
    more: str = "",
) -> BenchCard:
    """Bench card of a formula weighed out; `dial_c` is the dial for this oven, if it is known.

    `gluten` says how the gate stands, `gelatine` names its animal, `declared` is what the lots in
    use declare; `model` is what the bake model says of it, `cooled` the cooling model's in one
    line; `more` says how often the card is weighed out.
    """
    found = matters(formula, weighing)
    return BenchCard(
        name=_name(formula.name or ""),
        facts=facts(formula, total_g=weighing.total_g, dial_c=dial_c, units=imprint.units),
        rows=_rows(weighing, found),
        clocks=clocks(formula, units=imprint.units),
        origin=origin(formula),
        bake="" if model is None else model.text,
        strip="" if model is None else bake_strip(model),
        cooling=cooling(formula, by_model=cooled),
        cooling_own=cooling(formula),
        cautions=cautions(
            formula, imprint.market, gluten=gluten, gelatine=gelatine, declared=declared
        ),
        hints=(*((more,) if more else ()), *(_sentence(n.text) for n in weighing.notices)),
        sum_text=_sum_text(weighing),
        total_g=weighing.total_g,
        unknown=weighing.unknown,
        hold=hold,
        imprint=imprint,
        notices=weighing.notices,
        weigh_twice=found.text if found.twice else "",
    )


def missing_signs(card: BenchCard) -> tuple[Notice, ...]:
    """Notice that names the signs of a card no packed font has; empty when all can be printed."""
    texts = (card.name, *(row.take for row in card.rows), *(row.mark for row in card.rows))
    held = () if card.hold is None else (card.hold.text, card.hold.opens)
    more = (*(fact.figure for fact in card.facts), *card.cautions, *card.imprint.notes, *held)
    return missing_notice(tuple(s for text in (*texts, *more) for s in printable(text).missing))


def _name(text: str) -> str:
    name = " ".join(text.split())
    return name if printable(name).text.strip() else "Formula without a name"


def _rows(weighing: Weighing, found: Matters) -> tuple[CardRow, ...]:
    again = {each.matter.doubt.line: each.mark for each in found.twice}
    return tuple(
        _row(row, "" if row.line is None else again.get(row.line, "")) for row in weighing.rows
    )


def _row(row: Row, again: str) -> CardRow:
    return CardRow(
        kind=row.kind,
        bowl=row.bowl,
        take=" ".join(row.take.split()),
        add=_add(row),
        display=_display(row),
        number=row.number,
        add_g=row.add_g,
        display_g=row.display_g,
        mark=row.mark,
        again=again,
    )


def _sentence(text: str) -> str:
    return f"{text[:1].upper()}{text[1:]}" + ("" if text.endswith(".") else ".")


def _add(row: Row) -> str:
    if row.kind == "tare":
        return ""
    if row.add_g is None:
        return "not known"
    return f"about {grams(row.add_g)}" if row.kind == "egg" else grams(row.add_g)


def _display(row: Row) -> str:
    if row.kind == "add" and row.display_g is not None:
        return shown(row.display_g, row.step_g)
    return {"egg": "weigh", "unknown": "ask"}.get(row.kind, "")


def _sum_text(weighing: Weighing) -> str:
    addends = " + ".join(grams(part) for part in weighing.parts_g) or "0"
    eggs = " and eggs" if any(row.kind == "egg" for row in weighing.rows) else ""
    total = f" = {grams(weighing.total_g)}" if len(weighing.parts_g) > 1 else ""
    without = f", without {', '.join(weighing.unknown)} (no mass)" if weighing.unknown else ""
    return f"last displays{eggs}: {addends}{total} g{without}"
