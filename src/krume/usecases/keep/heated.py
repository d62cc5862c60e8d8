"""What the readings of a heating say of the egg in it: information with its limits, no promise."""

import re
from collections.abc import Mapping
from dataclasses import dataclass

from krume.base import InputError, as_text
from krume.design import Formula, family
from krume.keep import egg_heat, raw_egg
from krume.usecases.keep.typed import typed_number

_PAIR = re.compile(r"^\s*([^=:]+?)\s*(?:min)?\s*[=:]\s*(.+?)\s*(?:°?\s*C)?\s*$")
_BETWEEN = re.compile(r"[,;]\s*(?=[^,;]*[=:])|\s+(?=\d[\d.]*\s*(?:min)?\s*[=:])")
_HELP = "Type minutes and degrees Celsius: 0=20, 6=70, 8=85"


@dataclass(frozen=True, slots=True)
class KeepHeat:
    """A heating of egg by its readings: minutes at 60 °C that kill as much, powers of ten.

    `of` are the formulas with egg; `is_more` says that it is more than is told. It is information
    about plain yolk, and never opens or shuts anything.
    """

    of: tuple[str, ...]
    minutes_at_60_c: float
    log_reduction_count: float
    is_more: bool
    old_table_ratio: float
    text: str


def heat_of(
    typed: str, formulas: Mapping[str, Formula], families: Mapping[str, str | None]
) -> KeepHeat:
    """Judge the readings of a heating, such as `0=20, 6=70, 8=85`; a cake is heated in the oven."""
    times, temps = _readings(typed)
    found = egg_heat(times, temps)
    names = tuple(
        name
        for name, formula in formulas.items()
        if raw_egg(formula) and not _is_batter(families.get(name))
    )
    logs = as_text(found.log_reduction_count, 1)
    told = f"more than {logs}" if found.is_more else f"about {logs}"
    text = (
        f"{', '.join(names) or 'The egg'}: as much as {as_text(found.minutes, 1)} min at "
        f"{as_text(found.reference_c)} °C, {told} powers of ten "
        "of Salmonella in plain yolk (published from 58 to 66 °C; hotter counts as 66). Sugar, "
        "starch and salt protect, and the coldest place decides: information, no promise."
    )
    return KeepHeat(
        names, round(found.minutes, 2), round(found.log_reduction_count, 1), found.is_more,
        round(found.old_table_ratio, 2), text,
    )  # fmt: skip


def _is_batter(kind: str | None) -> bool:
    return kind is not None and family(kind).kind == "batter"


def _readings(typed: str) -> tuple[list[float], list[float]]:
    times, temps = [], []
    for piece in _BETWEEN.split(typed.strip()):
        match = _PAIR.match(piece)
        pair = [typed_number(word) for word in match.groups()] if match else []
        if len(pair) != 2 or pair[0] is None or pair[1] is None:
            text = f"“{piece.strip()}” is no reading. {_HELP}"
            raise InputError(text, field="heat", got=piece.strip(), want="0=20, 6=70, 8=85")
        times.append(pair[0])
        temps.append(pair[1])
    return times, temps
