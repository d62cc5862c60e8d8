"""Variations of a formula: one thing for another, with its grams, its papers and its parent."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from pathlib import Path

from krume.base import Notice, Option, Problem, Read, as_text
from krume.design import Formula, varying
from krume.pantry import Ingredient, find, ingredient
from krume.properties import constants
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.asking.read import FormulaRead, formula_of, read_text
from krume.usecases.asking.sources import line_sources, practice_notice, source_keys
from krume.usecases.asking.text import Text
from krume.usecases.formula.size import scale_step_g
from krume.usecases.vary.child import child_of, child_title, parent_name, write_child
from krume.usecases.vary.papers import Side, VaryBook, papered, price_row, side_of, vary_book
from krume.usecases.vary.result import (
    VaryLimit,
    VaryMakeUp,
    VaryResult,
    balance_row,
    change_rows,
    gap_row,
    line_rows,
    rule_rows,
)
from krume.usecases.vary.ways import ways_of

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
    return next(vary_each(name, (wish,), asked))


def vary_each(name: str, wishes: Iterable[VaryWish], asked: Asked) -> Iterator[Answer[VaryResult]]:
    """Vary a formula in many ways; its text and its book are read once for each market."""
    found = formula_of(name, asked)
    books: dict[str | None, _Request] = {}
    for wish in wishes:
        bare = Answer(
            VaryResult(found.formula.name, parent_name(found), wish.swaps),
            found.problems,
            found.notices,
            line_sources(found.formula),
        )
        if bare.problems:
            yield bare
            continue
        if wish.market not in books:
            books[wish.market] = _request(found, wish.market, asked)
        yield _varied(bare, books[wish.market], wish)


@dataclass(frozen=True, slots=True)
class _Request:
    """A formula with its book, and what the papers say of it as it is."""

    found: FormulaRead
    asked: Asked
    book: VaryBook
    side: Side
    step_g: float


def _request(found: FormulaRead, market: str | None, asked: Asked) -> _Request:
    book = vary_book(asked, market, found.source.path)
    side = side_of(parent_name(found), found.formula, book)
    return _Request(found, asked, book, side, scale_step_g(asked))


def _varied(bare: Answer[VaryResult], request: _Request, wish: VaryWish) -> Answer[VaryResult]:
    """One variation, or what is asked about it."""
    own, asked = request.book.own, request.asked
    wanted = _wanted(request.found.formula, wish, asked, own)
    fat = _fat(wish, asked, own)
    problems = (*wanted.problems, *fat.problems)
    told = replace(bare, problems=problems, notices=(*bare.notices, *wanted.notices))
    if problems:
        return told
    made_with = replace(fat.value, step_g=wish.step_g or request.step_g, own=own)
    return _made(told, request, wish, wanted.value, made_with)


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
    wish: VaryWish,
    wanted: varying.Wanted,
    made_with: varying.Wish,
) -> Answer[VaryResult]:
    """The answer with its child, and with the lines nothing is known for as its limits."""
    found = request.found
    made = varying.vary(found.formula, wanted.changes, made_with)
    told, open_facts = _open_facts(told)
    result = _result(told.result, request, made, wanted, made_with)
    result = replace(result, unknown=(*open_facts, *result.unknown))
    result = replace(result, text=child_of(found, made, wanted, wish.fat))
    answer = replace(
        told,
        result=result,
        problems=tuple(_limit_problem(limit) for limit in wanted.limits),
        notices=(*told.notices, *_notices(made, wanted)),
        sources=source_keys(told.sources, made.before.sources, (r.source for r in made.rules)),
        is_possible=not wanted.limits,
    )
    return _written(answer, request, wish, result.text or "")


def _open_facts(told: Answer[VaryResult]) -> tuple[Answer[VaryResult], tuple[str, ...]]:
    """What a wish could not find out of a line stands first under what is not known."""
    found = tuple(n for n in told.notices if n.code == "diet-unknown")
    rest = tuple(n for n in told.notices if n.code != "diet-unknown")
    return replace(told, notices=rest), tuple(f"{n.where}: {n.text}" for n in found)


def _result(
    bare: VaryResult,
    request: _Request,
    made: varying.Variation,
    wanted: varying.Wanted,
    made_with: varying.Wish,
) -> VaryResult:
    """All that changes with a variation."""
    found, book = request.found, request.book
    papers = papered(request.side, side_of(parent_name(found), made.formula, book), book)
    limits = tuple(VaryLimit(x.line.number, x.line.read.strip(), x.text) for x in wanted.limits)
    return replace(
        bare,
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
        ways=ways_of(found.formula, wanted, made_with),
        unknown=(*made.unknown, *papers.unknown),
        limits=limits,
        total_g=_total(made.formula),
        total_before_g=_total(found.formula),
        step_g=made_with.step_g,
    )


def _limit_problem(limit: varying.Limit) -> Problem:
    where, read = f"line {limit.line.number}", limit.line.read.strip()
    ask = f"{limit.wish}: {limit.text}"
    if varying.role_of(limit.line) == "egg":
        return Problem("egg-carries", where, read, ask)
    return Problem("no-swap-known", where, read, ask)


def _total(formula: Formula) -> float | None:
    masses = [line.mass_g for line in formula.lines]
    known = [mass for mass in masses if mass is not None]
    return round(sum(known), 6) if len(known) == len(masses) else None


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


def _left_told(made: varying.Variation) -> tuple[Notice, ...]:
    """What stays missing or too much, where it matters; and whose plan the bake is."""
    found = []
    weights = varying.weights_g(made.before)
    for name, off_g in zip(varying.HELD[:3], made.left.values(), strict=False):
        least = constants("varying.csv")[f"moves-from-{name}"]
        if off_g is None:
            found.append(Notice("still-off", f"How far the {name} is off is not known."))
        elif abs(off_g) > max(_SHOWN_G, weights[name] * least / 100):
            word = "less" if off_g > 0 else "more"
            text = f"It has {as_text(abs(off_g), 1)} g {word} {name} than its parent."
            found.append(Notice("still-off", text))
    if made.parent.baked is not None and any(line.is_changed for line in made.lines):
        text = "Its “Baked:” line is planned from the parent's, until this one is baked."
        found.append(Notice("baked-of-parent", text))
    return tuple(found)


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
    found += _steps_told(made)
    if wanted.changes and not any(line.is_changed for line in made.lines):
        found.append(Notice("nothing-changed", "That is what is in it already: nothing changes."))
    return (*found, *_left_told(made))


def _steps_told(made: varying.Variation) -> list[Notice]:
    """That the steps no longer use what is gone, where the parent's named it."""
    steps = " ".join(made.parent.steps).casefold()
    gone = [each.before for each in made.lines if each.line is None and each.before is not None]
    named = [line.name for line in gone if line.name.split()[-1].casefold().rstrip("s") in steps]
    if not named:
        return []
    text = f"The steps are written without {' and '.join(named)}: read them once."
    return [Notice("steps-without", text)]


def _written(
    answer: Answer[VaryResult], request: _Request, wish: VaryWish, text: str
) -> Answer[VaryResult]:
    """Write the child where it was asked for and nothing stands in the way."""
    bare = replace(request.asked, answers=())
    if wish.write is None or not answer.is_answered:
        return answer
    path = write_child(wish.write, text, replace=wish.replace)
    again = read_text(Text(text, request.found.source.name), bare)
    asks = tuple(
        Notice("child-asks", f"The new text asks: {problem.ask}", problem.where)
        for problem in again.problems
    )
    told = Notice("steps-of-parent", "Its steps are the parent's, the new names put in: read them.")
    result = replace(answer.result, written=path)
    return replace(answer, result=result, notices=(*answer.notices, told, *asks))
