"""The sheets of a formula, a torte or an order: all of them written, or none."""

import json
import re
import unicodedata
from dataclasses import dataclass, replace
from pathlib import Path

from krume import __version__
from krume.base import as_text
from krume.design import Formula, Weighing, weigh_out
from krume.evidence import data_version
from krume.publish import (
    BenchCard,
    Hold,
    Imprint,
    IndexPage,
    bench_card,
    card_dict,
    card_html,
    card_pdf,
    index_html,
    missing_plan_signs,
    missing_signs,
)
from krume.publish import (
    SheetFile as IndexEntry,
)
from krume.store import Studio, book_at, place_all, studio_of
from krume.usecases.answer import Answer, Asked
from krume.usecases.as_json import plain
from krume.usecases.bake import model_minutes
from krume.usecases.clock import now
from krume.usecases.gluten_words import gluten_of_all
from krume.usecases.kind import Made, made_of
from krume.usecases.order import OrderJudgement, judge_order
from krume.usecases.order_files import order_checks, order_files
from krume.usecases.order_leaf import one_hold
from krume.usecases.product import sold_of
from krume.usecases.read import FormulaRead
from krume.usecases.sheet_result import Files, SheetCheck, SheetFile, SheetHold, SheetResult
from krume.usecases.size import scale_step_g
from krume.usecases.sources import line_sources, source_keys
from krume.usecases.torte_sheet import Plans, plan_files, torte_plans

_SUM_TOLERANCE_G = 0.05
"""Half the last digit a scale of 0.1 g shows."""

_NOT_YET = ("label", "cost", "timetable")
_SLUG_LENGTH = 60


@dataclass(frozen=True, slots=True)
class _Card:
    """A bench card on its way to paper."""

    slug: str
    name: str
    formula: Formula
    weighing: Weighing
    card: BenchCard


def make_sheets(name: str, asked: Asked, *, out: Path, paper: str = "a5") -> Answer[SheetResult]:
    """Write bench cards and torte plans; nothing while a question is open."""
    made = made_of(name, asked)
    sources = source_keys(*(line_sources(read.formula) for read in made.formulas))
    if made.problems:
        return Answer(SheetResult((), (), (), ()), made.problems, made.notices, sources)
    imprint = _imprint(studio_of(book_at(asked.book)), asked, is_of_book=_is_of_book(made))
    plans = torte_plans(made, name, asked, imprint)
    if plans.problems:
        bare = Answer(SheetResult((), (), (), ()), plans.problems, made.notices, sources)
        return replace(bare, is_possible=plans.is_possible)
    judged = _judged(made, name, asked)
    if judged is not None and judged.problems:
        return Answer(SheetResult((), (), (), ()), judged.problems, made.notices, sources)
    hold = None if judged is None else one_hold(judged.holds)
    plans = replace(
        plans, plans=tuple(replace(p, sheet=replace(p.sheet, hold=hold)) for p in plans.plans)
    )
    cards = _cards(made, asked, hold, gluten_of_all(name, asked))
    files: Files = {}
    checks: tuple[SheetCheck, ...] = tuple(_sum_check(each) for each in cards)
    if judged is not None:
        files |= order_files(name, judged, asked, imprint, paper)
        checks = (*checks, *order_checks(judged))
    checks = (*checks, *_not_judged(made))
    summary = _summary(made, cards, plans)
    files |= _plan_files(plans, cards, paper)
    files |= _card_files(cards, paper)
    if made.kind != "formula":
        index = _index(made, files, checks, summary, imprint, judged)
        files["index.html"] = (("index", made.title), index_html(index).encode())
    place_all(out, {file: data for file, (_, data) in files.items()})
    folder = out.resolve()
    written = tuple(
        SheetFile(kind, file.rpartition(".")[2], of, str(folder / file))
        for file, ((kind, of), _) in files.items()
    )
    notices = (
        *made.notices,
        *(n for c in cards for n in missing_signs(c.card)),
        *(n for planned in plans.plans for n in missing_plan_signs(planned.sheet)),
    )
    held = () if judged is None else tuple(SheetHold(h.text, h.opens) for h in judged.holds)
    return Answer(
        SheetResult(written, held, checks, summary), (), tuple(dict.fromkeys(notices)), sources
    )


def _judged(made: Made, name: str, asked: Asked) -> OrderJudgement | None:
    """An order held against what it holds; a formula or a torte promises nothing to anybody."""
    if made.order is None:
        return None
    return judge_order(sold_of(name, asked), made.order, asked)


def slug(name: str) -> str:
    """A name as part of a file's name: small letters, digits and hyphens, nothing else.

    >>> slug("../../etc/passwd"), slug("Grüß Gott: CON"), slug("שלום")
    ('etc-passwd', 'gruss-gott-con', 'formula')
    """
    letters = unicodedata.normalize("NFKD", name.casefold()).encode("ascii", "ignore").decode()
    words = re.sub(r"[^a-z0-9]+", "-", letters).strip("-")
    return words[:_SLUG_LENGTH].strip("-") or "formula"


def _cards(made: Made, asked: Asked, hold: Hold | None, gluten: dict[str, str]) -> list[_Card]:
    studio, step_g = studio_of(book_at(asked.book)), scale_step_g(asked)
    cards: list[_Card] = []
    for read in made.formulas:
        weighing = weigh_out(read.formula, scale_g=step_g)
        imprint = _imprint(studio, asked, is_of_book=read.source.kind is not None)
        name = _short_name(read)
        card = bench_card(
            read.formula,
            weighing,
            imprint,
            dial_c=_dial_c(read.formula, studio),
            hold=hold,
            gluten=gluten.get(name),
            model_min=model_minutes(read, asked),
        )
        taken = {card.slug for card in cards}
        cards.append(_Card(_free(slug(name), taken), name, read.formula, weighing, card))
    return cards


def _short_name(read: FormulaRead) -> str:
    if read.source.kind is not None:
        return read.source.name
    return read.formula.name or read.source.name


def _free(wanted: str, taken: set[str]) -> str:
    name, number = wanted, 1
    while name in taken:
        number += 1
        name = f"{wanted}-{number}"
    return name


def _imprint(studio: Studio, asked: Asked, *, is_of_book: bool) -> Imprint:
    notes = (studio.sheet_note, studio.invented_note) if is_of_book else ()
    return Imprint(
        date=now(studio, on=asked.on).date().isoformat(),
        program=__version__,
        data=data_version(),
        market=studio.market or "eu",
        notes=tuple(note for note in notes if note),
    )


def _dial_c(formula: Formula, studio: Studio) -> float | None:
    """Dial for the temperature a formula wants, where this oven's offset holds for it."""
    oven = formula.oven
    if oven is None or oven.temp_c is None or studio.oven_offset_c is None:
        return None
    if bool(oven.fan) != bool(studio.bakes_with_fan):
        return None
    return oven.temp_c - studio.oven_offset_c


def _card_files(cards: list[_Card], paper: str) -> Files:
    files: Files = {}
    for each in cards:
        kind, stem = ("bench-card", each.name), f"{each.slug}-bench-card"
        data = json.dumps(plain(card_dict(each.card)), ensure_ascii=False, indent=1)
        files[f"{stem}.pdf"] = (kind, card_pdf(each.card, paper))
        files[f"{stem}.html"] = (kind, card_html(each.card).encode())
        files[f"{stem}.json"] = (kind, f"{data}\n".encode())
    return files


def _is_of_book(made: Made) -> bool:
    return any(read.source.kind is not None for read in made.formulas)


def _plan_files(plans: Plans, cards: list[_Card], paper: str) -> Files:
    files: Files = {}
    taken = {card.slug for card in cards}
    for planned in plans.plans:
        stem = _free(slug(planned.name), taken)
        taken.add(stem)
        kind = ("torte-plan", planned.name)
        files |= {file: (kind, data) for file, data in plan_files(planned, stem, paper).items()}
    return files


def _index(
    made: Made,
    files: Files,
    checks: tuple[SheetCheck, ...],
    summary: tuple[str, ...],
    imprint: Imprint,
    judged: OrderJudgement | None,
) -> IndexPage:
    entries = [
        IndexEntry(file, f"{of}, {kind.replace('-', ' ')}, {file.rpartition('.')[2].upper()}")
        for file, ((kind, of), _) in files.items()
        if not file.endswith(".json")
    ]
    return IndexPage(
        title=made.title or "Sheets",
        summary=summary,
        held=() if judged is None else judged.holds,
        files=tuple(entries),
        missing=tuple(check.text for check in checks if check.passed is None),
        imprint=imprint,
    )


def _sum_check(each: _Card) -> SheetCheck:
    masses = [line.mass_g for line in each.formula.lines if line.mass_g is not None]
    batter_g = sum(masses)
    agrees = abs(batter_g - each.weighing.total_g) <= _SUM_TOLERANCE_G
    weighed = as_text(each.weighing.total_g, 2)
    text = f"{each.name}: the displays and eggs add up to {weighed} g, "
    text += f"the formula's lines to {as_text(batter_g, 2)} g."
    return SheetCheck(f"sum of {each.name}", agrees, text)


def _not_judged(made: Made) -> tuple[SheetCheck, ...]:
    if made.kind == "formula":
        return ()
    return (
        SheetCheck(
            "batches", None, "Each card is one batch; how many are needed is not judged yet."
        ),
        *(SheetCheck(word, None, f"No {word} yet.") for word in _NOT_YET),
    )


def _summary(made: Made, cards: list[_Card], plans: Plans) -> tuple[str, ...]:
    names = ", ".join(each.name for each in cards)
    count = "1 bench card" if len(cards) == 1 else f"{len(cards)} bench cards"
    said = [f"{count}: {names}."]
    if plans.plans:
        many = "1 torte plan" if len(plans.plans) == 1 else f"{len(plans.plans)} torte plans"
        said.append(f"{many}: {', '.join(planned.name for planned in plans.plans)}.")
    if made.order is not None:
        said.insert(0, _promise(made))
    return tuple(said)


def _promise(made: Made) -> str:
    order = made.order
    if order is None:
        return ""
    what = ", ".join(f"{line.count} {line.what}" for line in order.lines)
    day = None if order.date is None else f"{order.date:%A} {order.date.isoformat()}"
    time = order.hand_over.time if order.hand_over is not None else None
    hour = None if time is None else time.strftime("%H:%M")
    people = None if order.people is None else f"for {order.people} people"
    return ", ".join(part for part in (f"{made.title}: {what}", day, hour, people) if part) + "."
