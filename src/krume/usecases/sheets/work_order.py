"""Which batches come first in one room: without nuts and gluten first, then a cleaning."""

from dataclasses import dataclass

from krume.label import product_of_formula, statement
from krume.publish import LeafPart
from krume.usecases.sold.gate import gate_of
from krume.usecases.sold.papers import Papers
from krume.usecases.sold.product import SoldRead

_NUTS = ("nuts", "tree nut", "peanut")
_TIMETABLE = (
    "The timetable goes by its clocks and does not know this order: where it has nuts before "
    "something without, the cleaning stands between them."
)
_CLEAN = (
    "CLEAN before going on: bench, bowls, whisk, sieve, spoons, tins and hands; fresh cloths. "
    "Shared sieves and wooden spoons are the usual leaks (common practice).   done ____"
)


@dataclass(frozen=True, slots=True)
class _Group:
    """Batches that may be made one after the other without a cleaning between."""

    heading: str
    names: tuple[str, ...]


def work_order(read: SoldRead, papers: Papers) -> LeafPart | None:
    """The batches of an order by what they carry into the room; None for a single batch."""
    groups = [group for group in _groups(read, papers) if group.names]
    if sum(len(group.names) for group in groups) < 2:
        return None
    lines: list[str] = []
    for number, group in enumerate(groups):
        lines += [_CLEAN] if number else []
        lines.append(f"{group.heading}: {', '.join(group.names)}.")
    more = (_TIMETABLE,) if len(groups) > 1 else ()
    return LeafPart("Work in this order", (*lines, *more))


def _groups(read: SoldRead, papers: Papers) -> tuple[_Group, ...]:
    clean: dict[str, None] = {}
    open_gate: dict[str, None] = {}
    nuts: dict[str, None] = {}
    for sold in read.sold:
        for name, formula in sold.formulas.items():
            product = product_of_formula(name, formula)
            gate = gate_of(product, papers, on=read.on, chosen=sold.chosen)
            said = statement(
                product, papers.lots, market="eu", chosen=sold.chosen, sheets=papers.sheets
            )
            carries = any(word.startswith(_NUTS) for word in (*said.contains, *said.may_contain))
            where = nuts if carries else clean if gate.is_open_on_ingredients else open_gate
            where[name] = None
    return (
        _Group("First, no nuts and every gluten record good", tuple(clean)),
        _Group("Then, no nuts but a gluten record is missing", tuple(open_gate)),
        _Group("Last, with nuts or what may hold them", tuple(nuts)),
    )
