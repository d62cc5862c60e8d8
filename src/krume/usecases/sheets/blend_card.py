"""The blends of a request: what is weighed into the jar, from which lots, and for whom not."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from krume.base import NotFoundError
from krume.design import Formula, Line, Row, balance, weigh_out
from krume.keep import caution
from krume.label import GateRecord, GlutenGate, Product, product_of_formula, statement
from krume.pantry import ingredient
from krume.publish import Blend, BlendLot, BlendPart
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.kind import Made
from krume.usecases.asking.slug import short_name
from krume.usecases.formula.size import scale_step_g
from krume.usecases.sheets.result import SheetCheck
from krume.usecases.sold.gate import gate_of
from krume.usecases.sold.gluten_words import RECORD_STATES, gate_words
from krume.usecases.sold.papers import Papers, papers_of
from krume.usecases.sold.product import SoldRead, sold_of

_FLOURS = ("flour", "starch")
_SIFTED = ("binder", "leavening")
_DRY_BOWL = "dry"


@dataclass(frozen=True, slots=True)
class Blends:
    """The blends of a request by the name of their formula, and what stands open about any."""

    blends: dict[str, Blend]
    checks: tuple[SheetCheck, ...] = ()


def blends_of(made: Made, name: str, asked: Asked, market: str) -> Blends:
    """The blend of each formula of a request that has two or more flours or starches."""
    read, papers = sold_of(name, asked), papers_of(asked)
    found: dict[str, Blend] = {}
    checks: list[SheetCheck] = []
    for each in made.formulas:
        of = short_name(each)
        lines = blend_lines(each.formula, scale_g=scale_step_g(asked))
        if sum(_role(line) in _FLOURS for line, _ in lines) < 2:
            continue
        if any(line.mass_g is None for line, _ in lines):
            checks.append(_no_card(of, (line for line, _ in lines)))
            continue
        found[of] = _blend(of, each.formula, lines, _Judging(read, papers, market))
    return Blends(found, tuple(checks))


def _no_card(of: str, lines: Iterable[Line]) -> SheetCheck:
    names = ", ".join(line.name for line in lines if line.mass_g is None)
    text = f"{of}: no blend card while {names} has no mass. Write its grams into the line."
    return SheetCheck(f"blend of {of}", None, text)


def blend_lines(formula: Formula, *, scale_g: float) -> tuple[tuple[Line, str], ...]:
    """Flours and starches of the dry bowl, what is sifted with them, and each one's mark."""
    rows = [r for r in weigh_out(formula, scale_g=scale_g).rows if r.bowl == _DRY_BOWL]
    in_bowl = {row.line: row for row in rows if row.line is not None}
    wanted = (*_FLOURS, *_SIFTED)
    return tuple(
        (line, _mark(in_bowl[number]))
        for number, line in enumerate(formula.lines)
        if number in in_bowl and _role(line) in wanted
    )


def _mark(row: Row) -> str:
    return row.mark if row.kind == "add" else ""


def _role(line: Line) -> str:
    try:
        return "" if line.ingredient is None else ingredient(line.ingredient).role
    except NotFoundError:
        return ""


@dataclass(frozen=True, slots=True)
class _Judging:
    """What a blend is judged by: the request as sold, the book's papers, whose words."""

    read: SoldRead
    papers: Papers
    market: str

    def gate(self, of: str, formula: Formula) -> GlutenGate:
        """The gate of a formula's lines, of the jar as it stands unbaked."""
        return gate_of(_as_mixed(of, formula), self.papers, on=self.read.on, chosen=self.chosen(of))

    def chosen(self, of: str) -> frozenset[str]:
        """Lots that a text names for what holds this formula."""
        holding = (sold.chosen for sold in self.read.sold if of in sold.formulas)
        return frozenset[str]().union(*holding)


def _as_mixed(of: str, formula: Formula) -> Product:
    """The lines as they are mixed, nothing baked out."""
    made = product_of_formula(of, replace(formula, baked=None))
    return replace(made, finished_g=made.mixed_g, finished_status="derived")


def _blend(of: str, formula: Formula, lines: tuple[tuple[Line, str], ...], by: _Judging) -> Blend:
    jar = replace(formula, lines=tuple(line for line, _ in lines))
    said = statement(
        _as_mixed(of, jar), by.papers.lots,
        market=by.market, chosen=by.chosen(of), sheets=by.papers.sheets,
    )  # fmt: skip
    gate, whole = by.gate(of, jar), by.gate(of, formula)
    return Blend(
        of=of,
        title=" ".join((formula.name or of).split()),
        family=balance(formula).family,
        parts=tuple(
            BlendPart(line.name, line.mass_g or 0.0, _role(line) in _FLOURS, mark)
            for line, mark in lines
        ),
        contains=said.contains,
        may_contain=said.may_contain,
        unknown=tuple(dict.fromkeys(each.of for each in said.unknown if each.closes == "label")),
        gluten=gate_words(gate),
        lots=tuple(_lot(record) for record in gate.records),
        not_for=_not_for(of, gate, whole, said.contains + said.may_contain),
        cautions=_cautions(jar),
        is_baked=formula.baked is not None and formula.baked.status == "measured",
    )


def _lot(record: GateRecord) -> BlendLot:
    state = RECORD_STATES.get(record.state, record.state)
    return BlendLot(record.lot or "no lot", record.ingredient, state, record.text)


def _not_for(
    of: str, gate: GlutenGate, whole: GlutenGate, allergens: tuple[str, ...]
) -> tuple[str, ...]:
    told = []
    if not gate.claim_allowed:
        shut = ", ".join(gate.missing)
        told.append(f"Guests with coeliac disease, while the gluten gate is shut ({shut}).")
    beside = [name for name in whole.missing if name not in gate.missing]
    if beside:
        told.append(f"What is made of it as {of} needs more records: {', '.join(beside)}.")
    if allergens:
        named = ", ".join(dict.fromkeys(allergens))
        told.append(f"Guests who asked for nothing with {named}.")
    told.append(f"Any formula but {of}: its percents are that one's.")
    return tuple(told)


def _cautions(jar: Formula) -> tuple[str, ...]:
    keys = ["buckwheat"] if any("buckwheat" in (x.ingredient or "") for x in jar.lines) else []
    return tuple(caution(key).text for key in (*keys, "raw-batter", "local-law"))
