"""The custards of a torte or a formula on a page: depths, what a log must show, the book's logs."""

from dataclasses import dataclass

from krume.usecases.asking.answer import Asked
from krume.usecases.keep.custard_way import KeepCooling
from krume.usecases.keep.keep import keep_and_cool
from krume.usecases.sheets.cold_log import book_logs


@dataclass(frozen=True, slots=True)
class CustardLog:
    """A log of the book, judged: hours of both stages (None is not shown), and the verdict."""

    log: str
    of: str
    first_h: float | None
    total_h: float | None
    verdict: str
    reason: str


@dataclass(frozen=True, slots=True)
class CustardShown:
    """A torte's or formula's custards; `cooling` is None where it has none."""

    title: str
    cooling: KeepCooling | None
    logs: tuple[CustardLog, ...]


def custard_shown(
    name: str, asked: Asked, *, fridge_c: float | None = None, room_c: float | None = None
) -> CustardShown:
    """What is predicted of the custards, beside what the book's own logs showed of them."""
    kept = keep_and_cool(name, asked, fridge_c=fridge_c, room_c=room_c).result
    of = () if kept.cooling is None else kept.cooling.of
    logs = tuple(
        CustardLog(each.log, each.of, each.stage_1_h, each.total_h, each.verdict, each.reason)
        for each in book_logs(asked)
        if each.of in of
    )
    return CustardShown(kept.name, kept.cooling, logs)
