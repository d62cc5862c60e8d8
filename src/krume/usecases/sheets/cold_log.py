"""The cold log of a torte or an order: its creams, the limits, and what the book's logs show."""

from collections.abc import Iterable

from krume.base import InputError, OutOfRangeError
from krume.design import Formula, family
from krume.evidence import load, source
from krume.keep import Keeping, caution, cooling, is_cooked
from krume.properties import CONSTANT_COLUMNS, constants
from krume.publish import ColdLog, CoolingLimits, LoggedCooling
from krume.store import book_at, table_rows
from krume.usecases.asking.answer import Asked
from krume.usecases.keep.custard_way import custard_way, short_way
from krume.usecases.keep.keep import cold_most_c, keeping_of
from krume.usecases.sold.order import OrderJudgement
from krume.usecases.sold.product import SoldRead, families_of

_LOGS = "cooling.csv"
_NO_WAY = "Hours out of the cold: no way is said; write them down when it leaves the cold."


def cold_log_of(read: SoldRead, judged: OrderJudgement | None, asked: Asked) -> ColdLog | None:
    """The log of a torte's or an order's creams; None where nothing in it needs the cold."""
    formulas = {name: formula for each in read.sold for name, formula in each.formulas.items()}
    creams = _creams(read, keeping_of(*read.sold))
    if not creams or read.kind == "formula":
        return None
    cooked = [n for n in creams if is_cooked(formulas[n]) or not formulas[n].steps]
    return ColdLog(
        title=read.title,
        cooked=tuple(_titled(name, formulas[name]) for name in cooked),
        raw=tuple(_titled(name, formulas[name]) for name in creams if name not in cooked),
        limits=cooling_limits(),
        warm=(_NO_WAY,) if judged is None else (judged.warm.text,),
        earlier=tuple(each for each in book_logs(asked) if each.of in creams),
        cautions=(caution("cold-chain").text, caution("local-law").text),
        predicted=_predicted(formulas, read),
    )


def _predicted(formulas: dict[str, Formula], read: SoldRead) -> str:
    """Which depth of its custards is likely to cool in time; nothing where it has none."""
    kinds = {name: kind for each in read.sold for name, kind in families_of(each).items()}
    way = custard_way(formulas, kinds)
    return "" if way is None else short_way(way)


def _creams(read: SoldRead, keeping: Keeping) -> tuple[str, ...]:
    """Creams that need the cold, or of which nothing says that they need not."""
    kinds = {name: kind for each in read.sold for name, kind in families_of(each).items()}
    cold = (part.name for part in keeping.components if part.verdict != "non-tcs")
    return tuple(
        name for name in cold if (kind := kinds.get(name)) and family(kind).kind == "cream"
    )


def _titled(name: str, formula: Formula) -> str:
    return f"{name} {' '.join((formula.name or '').split())}".strip()


def cooling_limits() -> CoolingLimits:
    """The two stages by their rows, with the place they are written in."""
    row = next(
        r for r in load("keeping.csv", CONSTANT_COLUMNS) if r.text("key") == "cooling-first-h"
    )
    limit, rule = constants("keeping.csv"), source(row.text("source"))
    return CoolingLimits(
        start_c=limit["cooling-start"],
        middle_c=limit["cooling-middle"],
        end_c=limit["cooling-end"],
        first_h=limit["cooling-first-h"],
        total_h=limit["cooling-total-h"],
        cold_most_c=cold_most_c(),
        rule=f"{rule.title}, {row.text('page')}, {rule.note}",
        fresh_h=limit["cooling-fresh-h"],
    )


def book_logs(asked: Asked) -> tuple[LoggedCooling, ...]:
    """Each cooling log of the book, judged; one that cannot be read shows nothing."""
    logs: dict[str, list[dict[str, str]]] = {}
    for row in table_rows(book_at(asked.book), _LOGS):
        logs.setdefault(row.get("log", ""), []).append(row)
    return tuple(_judged(log, rows) for log, rows in logs.items())


def _judged(log: str, rows: list[dict[str, str]]) -> LoggedCooling:
    of, status = (", ".join(_each(rows, key)) for key in ("formula", "status"))
    try:
        times = [float(row.get("time_h", "")) for row in rows]
        temps = [float(row.get("temp_c", "")) for row in rows]
        made = cooling(times, temps)
    except (ValueError, InputError, OutOfRangeError):
        return LoggedCooling(log, of, None, None, "fail", "not-shown", status)
    return LoggedCooling(log, of, made.stage_1_h, made.total_h, made.verdict, made.reason, status)


def _each(rows: Iterable[dict[str, str]], key: str) -> list[str]:
    return list(dict.fromkeys(word for row in rows if (word := row.get(key, ""))))
