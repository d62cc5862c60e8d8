"""Variations of a formula: one thing for another, with its grams, its papers and its parent."""

from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path

from krume.base import Notice, Option, Problem, Read, as_text
from krume.design import Formula, varying
from krume.pantry import Ingredient, find, ingredient
from krume.store import write_whole
from krume.usecases.answer import Answer, Asked
from krume.usecases.read import FormulaRead, formula_of, read_text
from krume.usecases.size import scale_step_g
from krume.usecases.sources import line_sources, practice_notice, source_keys
from krume.usecases.text import Text
from krume.usecases.vary_papers import VaryBook, papered, price_row, vary_book
from krume.usecases.vary_result import (
    VaryLimit,
    VaryMakeUp,
    VaryResult,
    VaryWay,
    balance_row,
    change_rows,
    gap_row,
    line_rows,
    rule_rows,
)

MARKETS = ("us", "eu")
_BUTTER = "butter-82-ciqual"
_FATS = {"oil": varying.PLAIN_OIL, "butter": _BUTTER}
_SHOWN_G = 0.05


@dataclass(frozen=True, slots=True)
class VaryWish:
    """What is wished of a variation; `fat` is butter, oil, none or the name of a fat."""

    swaps: tuple[str, ...] = ()
    cuts: tuple[str, ...] = ()
    added: tuple[str, ...] = ()
    wishes: tuple[str, ...] = ()
    fat: str | None = None
    step_g: float | None = None
    market: str | None = None
    write: Path | None = None
    replace: bool = False

    @property
    def is_empty(self) -> bool:
        """Whether nothing at all is wished."""
        return not (self.swaps or self.cuts or self.added or self.wishes)


def vary_formula(name: str, wish: VaryWish, asked: Asked) -> Answer[VaryResult]:
    """Vary a formula: what is asked first, else the child with all that changes with it."""
    found = formula_of(name, asked)
    parent = parent_name(found)
    bare = Answer(
        VaryResult(found.formula.name, parent, wish.swaps),
        found.problems,
        found.notices,
        line_sources(found.formula),
    )
    if bare.problems:
        return bare
    book = vary_book(asked, wish.market, found.source.path)
    wanted = _wanted(found.formula, wish, asked, book.own)
    fat = _fat(wish, asked, book.own)
    problems = (*wanted.problems, *fat.problems)
    told = replace(bare, problems=problems, notices=(*bare.notices, *wanted.notices))
    if problems:
        return told
    step_g = wish.step_g or scale_step_g(asked)
    made_with = replace(fat.value, step_g=step_g, own=book.own)
    return _made(told, _Request(found, wish, asked, book), wanted.value, made_with)


@dataclass(frozen=True, slots=True)
class _Request:
    """A request with its text and its book."""

    found: FormulaRead
    wish: VaryWish
    asked: Asked
    book: VaryBook


def parent_name(found: FormulaRead) -> str:
    """The name a child gives its parent: the book's, else the one on the first line."""
    short = found.source.name
    return short if found.source.kind is not None else (found.formula.name or short)


def _wanted(
    formula: Formula, wish: VaryWish, asked: Asked, own: tuple[Ingredient, ...]
) -> Read[varying.Wanted]:
    """All wishes as changes of the formula's lines, with every question about them."""
    reads = [
        *(
            varying.swap_wanted(formula, text, where=where, own=own)
            for where, text in _placed("--swap", wish.swaps, asked)
        ),
        *(
            varying.cut_wanted(formula, text, where=where)
            for where, text in _placed("--cut", wish.cuts, asked)
        ),
        *(
            varying.added_wanted(formula, text, where=where, own=own)
            for where, text in _placed("--add", wish.added, asked)
        ),
        *(_diet(formula, text, where, own) for where, text in _placed("--for", wish.wishes, asked)),
    ]
    found = varying.together(reads)
    notices = tuple(notice for each in reads for notice in each.notices)
    twice = varying.given_twice(formula, found.value, "--swap")
    return Read(found.value, (*found.problems, *twice), notices)


def _placed(option: str, texts: tuple[str, ...], asked: Asked) -> list[tuple[str, str]]:
    """Each text of an option at its own place, with the answer given there."""
    places = (option, *(f"{option} {n}" for n in range(2, len(texts) + 1)))
    return [
        (place, asked.answer_for(place) or text) for place, text in zip(places, texts, strict=False)
    ]


def _diet(
    formula: Formula, text: str, where: str, own: tuple[Ingredient, ...]
) -> Read[varying.Wanted]:
    known = varying.diet_wish(text)
    if known is not None:
        return varying.diet_wanted(formula, known, own=own)
    labels = [wish.label for wish in varying.diet_wishes()]
    ask = f"For whom? There are: {', '.join(labels)}. Gluten is a matter of records: krume label."
    options = tuple(Option(wish.label, wish.words[-1]) for wish in varying.diet_wishes())
    return Read(varying.Wanted(), (Problem("wish-unknown", where, _kept(text), ask, options),))


def _kept(text: str) -> str:
    return " ".join(text.split())[:60]


def _fat(wish: VaryWish, asked: Asked, own: tuple[Ingredient, ...]) -> Read[varying.Wish]:
    """The fat that makes up a gap, or what is asked about it."""
    said = asked.answer_for("--fat") or wish.fat
    plain = (said or "").casefold().strip()
    if said is None or plain == "none":
        return Read(varying.Wish(fat=None if said is None else "none"))
    key = _FATS.get(plain) or find(said, own=own).key
    item = None if key is None else ingredient(key, own=own)
    if item is None or item.role != "fat" or varying.per_gram(item).fat_g is None:
        ask = f"“{_kept(said)}” is no fat whose make-up is known here. Which fat makes it up?"
        options = tuple(Option(word, word) for word in ("oil", "butter", "none"))
        return Read(varying.Wish(), (Problem("fat-unknown", "--fat", _kept(said), ask, options),))
    name = item.label_name if plain in _FATS else said.strip()
    return Read(varying.Wish(fat=item.key, fat_name=name))


def _made(
    told: Answer[VaryResult],
    request: _Request,
    wanted: varying.Wanted,
    made_with: varying.Wish,
) -> Answer[VaryResult]:
    """The answer with its child, and with the lines nothing is known for as its limits."""
    found, wish, book = request.found, request.wish, request.book
    made = varying.vary(found.formula, wanted.changes, made_with)
    papers = papered(parent_name(found), found.formula, made.formula, book)
    text = child_of(found, made, wanted, wish)
    limits = tuple(VaryLimit(x.line.number, x.line.read.strip(), x.text) for x in wanted.limits)
    result = replace(
        told.result,
        name=child_title(found.formula, made),
        swaps=wanted.texts,
        lines=line_rows(made.lines),
        changes=change_rows(made.lines),
        allergens=papers.allergens,
        kitchen=papers.kitchen,
        claims=papers.claims,
        gluten=papers.gluten,
        price=price_row(made.lines, book),
        balance=balance_row(made.before, made.after),
        gaps=gap_row(made.gaps),
        left=gap_row(made.left),
        make_up=_make_up(made),
        rules=rule_rows(made.rules),
        ways=_ways(found.formula, wanted, made_with),
        unknown=(*made.unknown, *_left_text(made), *papers.unknown),
        limits=limits,
        total_g=_total(made.formula),
        total_before_g=_total(found.formula),
        step_g=made_with.step_g,
        text=text,
    )
    answer = replace(
        told,
        result=result,
        problems=tuple(_limit_problem(limit) for limit in wanted.limits),
        notices=(*told.notices, *_notices(made, wanted)),
        sources=source_keys(told.sources, made.before.sources, (r.source for r in made.rules)),
        is_possible=not wanted.limits,
    )
    return _written(answer, request, text)


def _limit_problem(limit: varying.Limit) -> Problem:
    where = f"line {limit.line.number}"
    code = "egg-carries" if varying.role_of(limit.line) == "egg" else "no-swap-known"
    return Problem(code, where, limit.line.read.strip(), f"{limit.wish}: {limit.text}")


def _total(formula: Formula) -> float | None:
    masses = [line.mass_g for line in formula.lines]
    known = [mass for mass in masses if mass is not None]
    return round(sum(known), 6) if len(known) == len(masses) else None


def child_title(formula: Formula, made: varying.Variation) -> str | None:
    """Name of the child: the parent's, with what came for what."""
    if formula.name is None:
        return None
    pairs = [
        f"{_plain(each.line.name)} for {_plain(each.before.name)}"
        for each in made.lines
        if each.before and each.line and each.before.ingredient != each.line.ingredient
    ]
    more = [f"less {x.before.name}" for x in made.lines if x.before and _is_less(x)]
    new = [f"with {x.line.name}" for x in made.lines if x.before is None and x.line]
    told = pairs or more or new
    return f"{formula.name}, {', '.join(told[:2])}" if told else formula.name


def _plain(name: str) -> str:
    return name.removeprefix("ground ")


def _is_less(each: varying.VariedLine) -> bool:
    return each.is_changed and (each.after_g or 0.0) < (each.before_g or 0.0)


def child_of(
    found: FormulaRead, made: varying.Variation, wanted: varying.Wanted, wish: VaryWish
) -> str:
    """Text of the child, with the lines of its head that name its parent."""
    counts = (len(wish.cuts), len(wish.added))
    cuts, added = _kinds(wanted)
    lineage = varying.Lineage(
        parent=parent_name(found),
        swaps=tuple(text for text in wanted.texts if " = " in text),
        cuts=cuts if counts[0] else (),
        added=added if counts[1] else (),
        fat=wish.fat or (made.made_up.name if made.made_up is not None else ""),
        parent_lines=varying.fingerprint(found.formula.lines),
        own_lines=varying.fingerprint(made.formula.lines),
        parent_was=varying.lines_as_were(found.formula.lines),
    )
    name = child_title(found.formula, made)
    return varying.child_text(found.formula, made.lines, name=name, lineage=lineage)


def _kinds(wanted: varying.Wanted) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """Texts of what is cut, and of what is added."""
    pairs = list(zip(wanted.changes, wanted.texts, strict=True))
    cuts = tuple(text for change, text in pairs if change.key is None)
    return cuts, tuple(text for change, text in pairs if change.line is None)


def _make_up(made: varying.Variation) -> VaryMakeUp | None:
    line, grams = made.made_up, made.made_up_g
    if line is None or abs(grams) < 1e-9 or made.gaps.fat_g is None:
        return None
    share = varying.per_gram(ingredient(_BUTTER)).fat_g or 1.0
    is_butter = line.ingredient == _BUTTER
    as_butter = made.gaps.fat_g / share if made.gaps.fat_g > 0 else None
    more = f"{as_text(abs(grams), 2)} g {'more' if grams > 0 else 'less'} {line.name}"
    text = f"{more} for {as_text(abs(made.gaps.fat_g), 1)} g of fat."
    if as_butter is not None and not is_butter:
        text += f" As butter it would be {as_text(as_butter, 1)} g (--fat butter)."
    return VaryMakeUp(line.ingredient, line.name, grams, as_butter, text)


def _left_text(made: varying.Variation) -> tuple[str, ...]:
    """What stays missing or too much, in words, where a scale would show it."""
    fat = made.left.fat_g
    weight = varying.weights_g(made.before)["fat"]
    if fat is None:
        return ("How far the fat is off is not known.",)
    if abs(fat) <= max(_SHOWN_G, weight / 20):
        return ()
    word = "less" if fat > 0 else "more"
    return (f"It has {as_text(abs(fat), 1)} g {word} fat than its parent.",)


def _notices(made: varying.Variation, wanted: varying.Wanted) -> tuple[Notice, ...]:
    found = list(practice_notice(rule.status for rule in made.rules))
    if made.made_up is not None and made.made_up.ingredient == _BUTTER:
        text = "Butter makes up the fat: it brings milk."
        had = any(line.ingredient == _BUTTER for line in made.parent.lines)
        found += [] if had else [Notice("fat-brings-milk", text)]
    elif (row := _make_up(made)) is not None and row.as_butter_g is not None:
        has = any(line.ingredient == row.ingredient for line in made.parent.lines)
        milk = "" if has else " It would bring milk, so it is not taken unasked."
        found.append(Notice("fat-made-up", f"{row.text}{milk}"))
    if wanted.changes and not any(line.is_changed for line in made.lines):
        found.append(Notice("nothing-changed", "That is what is in it already: nothing changes."))
    return tuple(found)


def _ways(formula: Formula, wanted: varying.Wanted, made_with: varying.Wish) -> tuple[VaryWay, ...]:
    """Both rules in use for cocoa, side by side."""
    cocoa = [
        change
        for change in wanted.changes
        if change.line is not None
        and change.key is not None
        and varying.role_of(formula.lines[change.line]) in ("flour", "starch")
        and ingredient(change.key, own=made_with.own).role == "cocoa"
    ]
    if not cocoa:
        return ()
    grams = sum(change.to_g for change in cocoa)
    ways = []
    for rule in varying.cocoa_rules():
        extra = _extras(formula, rule, grams)
        made = varying.vary(formula, (*wanted.changes, *extra), made_with)
        ways.append(VaryWay(rule.key, rule.label, rule.status, rule.note, line_rows(made.lines)))
    return tuple(ways)


def _extras(formula: Formula, rule: varying.CocoaRule, grams: float) -> tuple[varying.Change, ...]:
    """More liquid and more sugar, in lines that are there; a liquid that is not is water."""
    found = []
    liquid = _first(formula, lambda role: role in ("water", "liquid", "dairy"))
    sugar = _first(formula, lambda role: role == "sugar")
    if rule.liquid_per_g:
        key, name = liquid or (varying.WATER, "water")
        why = "cocoa takes up more water than flour"
        found.append(varying.Change(None, 0.0, key, name, rule.liquid_per_g * grams, why))
    if rule.sugar_per_g and sugar is not None:
        why = "cocoa is bitter"
        found.append(varying.Change(None, 0.0, *sugar, rule.sugar_per_g * grams, why))
    return tuple(found)


def _first(formula: Formula, fits: Callable[[str], bool]) -> tuple[str, str] | None:
    lines = (x for x in formula.lines if x.ingredient and fits(varying.role_of(x)))
    heaviest = max(lines, key=lambda line: line.mass_g or 0.0, default=None)
    return None if heaviest is None else (heaviest.ingredient or "", heaviest.name)


def _written(answer: Answer[VaryResult], request: _Request, text: str) -> Answer[VaryResult]:
    """Write the child where it was asked for and nothing stands in the way."""
    wish, bare = request.wish, replace(request.asked, answers=())
    if wish.write is None or not answer.is_answered:
        return answer
    path = write_child(wish.write, text, replace=wish.replace)
    again = read_text(Text(text, request.found.source.name), bare)
    asks = tuple(
        Notice("child-asks", f"The new text asks: {problem.ask}", problem.where)
        for problem in again.problems
    )
    result = replace(answer.result, written=path)
    return replace(answer, result=result, notices=(*answer.notices, *asks))


def write_child(path: Path, text: str, *, replace: bool) -> str:
    """Write a child's text; its full path."""
    write_whole(path, text.encode("utf-8"), replace=replace)
    return str(path.resolve())
