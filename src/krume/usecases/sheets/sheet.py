"""The sheets of a formula, a torte or an order: all of them written, or none."""

import json
from collections.abc import Mapping
from dataclasses import dataclass, replace
from pathlib import Path

from krume.base import Notice, as_text
from krume.design import Formula, Weighing, scaled, weigh_out
from krume.label import Statement
from krume.publish import (
    BenchCard,
    Hold,
    Imprint,
    IndexPage,
    LeafPart,
    ModelBake,
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
from krume.store import book_at, place_all, studio_of
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.asking.as_json import plain
from krume.usecases.asking.kind import Made, made_of
from krume.usecases.asking.read import formula_of
from krume.usecases.asking.slug import short_name, slug
from krume.usecases.asking.sources import line_sources, source_keys
from krume.usecases.bake.cooling_page import cooling_line_of
from krume.usecases.bake.for_sheets import model_bake, oven_part
from krume.usecases.formula.size import scale_step_g
from krume.usecases.own_oven.own_oven import own_dial_c
from krume.usecases.sheets.imprint import imprint_of
from krume.usecases.sheets.leaf_sheets import leaf_sheets
from krume.usecases.sheets.manifest import MANIFEST, listed, read_manifest, run_of, stamped
from krume.usecases.sheets.order_batches import batch_check, order_batches
from krume.usecases.sheets.order_files import label_files, order_checks, order_files
from krume.usecases.sheets.order_leaf import one_hold
from krume.usecases.sheets.order_plan import plan_sheets
from krume.usecases.sheets.result import Files, SheetCheck, SheetFile, SheetHold, SheetResult
from krume.usecases.sheets.torte_sheet import Plans, lot_animal, plan_files, torte_plans
from krume.usecases.sold.declared import declared_of_all
from krume.usecases.sold.gluten_words import gluten_of_all
from krume.usecases.sold.order import OrderJudgement, judge_order
from krume.usecases.sold.product import sold_of

_SUM_TOLERANCE_G = 0.05
"""Half the last digit a scale of 0.1 g shows."""

_OTHERS = {
    "timetable": "Timetable",
    "shopping-list": "Shopping list",
    "blend-card": "Blend cards",
    "cold-log": "Cold log",
    "gluten-page": "Gluten page",
    "label": "Labels",
}


@dataclass(frozen=True, slots=True)
class _Card:
    """A bench card on its way to paper."""

    slug: str
    name: str
    formula: Formula
    weighing: Weighing
    card: BenchCard


def make_sheets(name: str, asked: Asked, *, out: Path, paper: str = "a5") -> Answer[SheetResult]:
    """Write the sheets of a request; nothing while a question is open."""
    made = made_of(name, asked)
    sources = source_keys(*(line_sources(read.formula) for read in made.formulas))
    bare = Answer(SheetResult((), (), (), ()), made.problems, made.notices, sources)
    if made.problems:
        return bare
    imprint = imprint_of(studio_of(book_at(asked.book)), asked, is_of_book=_is_of_book(made))
    plans = torte_plans(made, name, asked, imprint)
    if plans.problems:
        return replace(bare, problems=plans.problems, is_possible=plans.is_possible)
    judged = _judged(made, name, asked)
    if judged is not None and judged.problems:
        return replace(bare, problems=judged.problems)
    drawn = _drawn(made, name, asked, imprint, plans, judged, paper)
    holds = () if judged is None else judged.holds
    told = tuple(f"{hold.text} {hold.opens}".strip() for hold in holds)
    before = read_manifest(out)
    run = run_of(made, name, asked, drawn.files, day=imprint.date, paper=paper, held=told)
    files = stamped(drawn.files, run)
    files[MANIFEST] = (("manifest", made.title or name), listed(run, files, before))
    place_all(out, {file: data for file, (_, data) in files.items()})
    folder = out.resolve()
    written = tuple(
        SheetFile(kind, file.rpartition(".")[2], of, str(folder / file))
        for file, ((kind, of), _) in files.items()
    )
    held = tuple(SheetHold(hold.text, hold.opens) for hold in holds)
    result = SheetResult(written, held, drawn.checks, drawn.summary)
    return replace(
        bare, result=result, notices=tuple(dict.fromkeys((*made.notices, *drawn.notices)))
    )


def card_bytes(name: str, asked: Asked, *, ending: str = "pdf") -> Answer[bytes]:
    """A formula's bench card as PDF or as a page, kept nowhere; empty while a question is open."""
    found = formula_of(name, asked)
    bare = Answer(b"", found.problems, found.notices, source_keys(line_sources(found.formula)))
    if found.problems:
        return bare
    made = Made("formula", found.formula.name or "", (found,))
    market = studio_of(book_at(asked.book)).market or "eu"
    about = _about(made, name, asked, market)
    card = _cards(made, asked, None, about, _bakes(made, asked))[0].card
    return replace(bare, result=card_pdf(card) if ending == "pdf" else card_html(card).encode())


@dataclass(frozen=True, slots=True)
class _Drawn:
    """All sheets of a request before they are written."""

    files: Files
    checks: tuple[SheetCheck, ...]
    summary: tuple[str, ...]
    notices: tuple[Notice, ...]


def _drawn(
    made: Made,
    name: str,
    asked: Asked,
    imprint: Imprint,
    plans: Plans,
    judged: OrderJudgement | None,
    paper: str,
) -> _Drawn:
    """Order's sheets first, then plans, cards, blend cards and the cold log, the index last."""
    hold = None if judged is None else one_hold(judged.holds)
    plans = replace(
        plans, plans=tuple(replace(p, sheet=replace(p.sheet, hold=hold)) for p in plans.plans)
    )
    bakes = _bakes(made, asked)
    cards = _cards(made, asked, hold, _about(made, name, asked, imprint.market), bakes)
    files, checks, said = _order_part(name, asked, imprint, judged, paper, oven_part(bakes))
    files |= _plan_files(plans, cards, paper)
    files |= _card_files(cards, paper)
    slugs = {card.name: card.slug for card in cards}
    leaves, more, signs = leaf_sheets(made, name, asked, imprint, judged, paper=paper, slugs=slugs)
    files |= leaves
    checks = (*(_sum_check(each) for each in cards), *checks, *more)
    summary = _summary(made, cards, plans, files)
    if made.kind != "formula":
        index = _index(made, files, checks, summary, imprint, judged)
        files["index.html"] = (("index", made.title), index_html(index).encode())
    notices = (
        *(n for c in cards for n in missing_signs(c.card)),
        *(n for planned in plans.plans for n in missing_plan_signs(planned.sheet)),
        *said,
        *signs,
    )
    return _Drawn(files, checks, summary, notices)


def _bakes(made: Made, asked: Asked) -> dict[str, ModelBake | None]:
    """What the bake model says of each formula, by its short name."""
    return {short_name(read): model_bake(read, asked) for read in made.formulas}


def _order_part(
    name: str,
    asked: Asked,
    imprint: Imprint,
    judged: OrderJudgement | None,
    paper: str,
    oven: LeafPart | None,
) -> tuple[Files, tuple[SheetCheck, ...], tuple[Notice, ...]]:
    """The sheets only an order has, and what was checked of its promise."""
    if judged is None:
        return {}, (), ()
    hold = one_hold(judged.holds)
    found = order_batches(sold_of(name, asked), asked)
    files = order_files(name, judged, asked, imprint, paper, found, oven)
    labels, label_check = label_files(name, hold, asked)
    planned, planned_checks, notices = plan_sheets(name, hold, asked, imprint, paper)
    checks = (*order_checks(name, judged, asked), batch_check(found), *planned_checks, label_check)
    return files | planned | labels, checks, notices


def _judged(made: Made, name: str, asked: Asked) -> OrderJudgement | None:
    """An order held against what it holds; a formula or a torte promises nothing to anybody."""
    if made.order is None:
        return None
    return judge_order(sold_of(name, asked), made.order, asked)


def _cards(
    made: Made,
    asked: Asked,
    hold: Hold | None,
    about: "_About",
    bakes: Mapping[str, ModelBake | None],
) -> list[_Card]:
    studio, step_g = studio_of(book_at(asked.book)), scale_step_g(asked)
    cards: list[_Card] = []
    for read in made.formulas:
        name = short_name(read)
        batches = about.batches.get(name)
        formula = scaled(read.formula, batches) if batches and batches < 1 else read.formula
        weighing = weigh_out(formula, scale_g=step_g)
        imprint = imprint_of(studio, asked, is_of_book=read.source.kind is not None)
        card = bench_card(
            formula,
            weighing,
            imprint,
            dial_c=own_dial_c(formula, asked),
            hold=hold,
            gluten=about.gluten.get(name),
            gelatine=about.gelatine,
            declared=about.declared.get(name),
            model=bakes.get(name),
            cooled=cooling_line_of(read.formula),
            more=_more(batches),
        )
        taken = {card.slug for card in cards}
        cards.append(_Card(_free(slug(name), taken), name, formula, weighing, card))
    return cards


@dataclass(frozen=True, slots=True)
class _About:
    """What is known beside the formulas: gluten, allergens of lots, batches, gelatine's animal."""

    gluten: dict[str, str]
    batches: dict[str, float]
    gelatine: str | None
    declared: dict[str, Statement]


def _about(made: Made, name: str, asked: Asked, market: str) -> _About:
    batches: dict[str, float] = {}
    if made.kind != "formula":
        wanted = order_batches(sold_of(name, asked), asked)
        batches = {each.name: each.batches for each in wanted if each.batches is not None}
    said = declared_of_all(name, asked, market)
    return _About(gluten_of_all(name, asked), batches, lot_animal(asked), said)


def _more(batches: float | None) -> str:
    """That a card is weighed out more than once, where one batch is not enough."""
    if batches is None or batches <= 1:
        return ""
    return f"This card is one batch; {as_text(batches, 2)} batches are needed."


def _free(wanted: str, taken: set[str]) -> str:
    name, number = wanted, 1
    while name in taken:
        number += 1
        name = f"{wanted}-{number}"
    return name


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


def _others(files: Files) -> list[str]:
    """The sheets beside cards and plans, by what each is of."""
    said: list[str] = []
    for kind, word in _OTHERS.items():
        names = dict.fromkeys(of for (sort, of), _ in files.values() if sort == kind)
        said += [f"{word}: {', '.join(names)}."] if names else []
    return said


def _summary(made: Made, cards: list[_Card], plans: Plans, files: Files) -> tuple[str, ...]:
    names = ", ".join(each.name for each in cards)
    count = "1 bench card" if len(cards) == 1 else f"{len(cards)} bench cards"
    said = [f"{count}: {names}."]
    if plans.plans:
        many = "1 torte plan" if len(plans.plans) == 1 else f"{len(plans.plans)} torte plans"
        said.append(f"{many}: {', '.join(planned.name for planned in plans.plans)}.")
    said += _others(files)
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
