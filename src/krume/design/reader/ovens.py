"""The oven as people write it: °C, °F, gas marks, words, fan, two stages, pairs that disagree."""

import re
from typing import NamedTuple

from krume.base import Interval, Read, as_text
from krume.design.formula import OvenLine
from krume.design.reader.asking import Asking
from krume.design.reader.cleaning import NOTHING, clean
from krume.design.reader.ovenclauses import (
    BAKES,
    NOT_BAKED,
    clause_before,
    in_other_unit,
    is_left,
)
from krume.design.reader.ovenslashes import ask_which
from krume.design.reader.settings import limit

_NUMBER = r"(?P<low>\d{2,3}(?:[.,]\d)?)(?![\d/])(?:\s*(?:-|–|to|bis)\s*(?P<high>\d{2,3}))?"
_DEGREE = re.compile(
    rf"(?<![\d.,]){_NUMBER}\s*(?:(?:°|deg(?:rees?|\.)?|grad)\s*)?(?P<unit>c(?:elsius)?|f(?:ahrenheit)?)\b"
    rf"|(?<![\d.,])(?P<low2>\d{{2,3}})(?:\s*(?:-|–|to|bis)\s*(?P<high2>\d{{2,3}}))?\s*(?:°|degrees?\b|grad\b)",
    re.IGNORECASE,
)
_BARE = re.compile(
    r"(?<![\d.,/x×])(?P<low>\d{2,3})(?:\s*(?:-|–|to)\s*(?P<high>\d{2,3}))?(?![\d.,/x×]|\s*(?:min|hours?|h\b|cm|mm|in\b|inch|g\b|ml|%|\"|x|×|st))",
    re.IGNORECASE,
)
_AT = re.compile(
    r"\b(?:bak\w*|oven|preheat\w*|heat|back\w*|vorheizen|vorgeheizt\w*|ofen)\b[^.\d]{0,50}?(?:\bat|\bto|\bauf|\bbei|\bof|:)\s*$",
    re.IGNORECASE,
)
_OVEN_BEHIND = re.compile(r"\s*(?:degrees?\s*)?(?:oven|ofen)\b", re.IGNORECASE)
_MINUS_BEFORE = re.compile(r"(?:^|(?<=[\s:=,(]))[-−–]$")
_FAN = re.compile(
    r"\b(?:fan(?:[- ](?:oven|forced|assisted))?|convection|umluft|heißluft|heissluft|"
    r"circulating)\b",
    re.IGNORECASE,
)
_NO_FAN = re.compile(
    r"\b(?:no|without|ohne|not)\s+(?:the\s+)?(?:fan|convection|umluft)\b|\bfan\s+off\b|\bconventional\b|\bstatic\b|\bober-?\s*/?\s*(?:und\s*)?unterhitze\b|\bo/u\b|\bnon-?convection\b|\bnon-fan\b",
    re.IGNORECASE,
)
_GAS = re.compile(r"\bgas(?:\s*mark|\s*stufe|\s*no\.?)?\s*(\d{1,2})\b", re.IGNORECASE)
_WORD = re.compile(
    r"\b(very slow|very hot|moderately hot|moderate|slow|hot|quick)\s+(?:but steady\s+)?oven\b",
    re.IGNORECASE,
)
_GERMAN = re.compile(
    r"\b(?:grad|umluft|hei(?:ß|ss)luft|(?:back)?ofen|unterhitze|vorheizen|backen)\b", re.IGNORECASE
)
_STAGES = re.compile(
    r"(?<![\d.,])(\d{3})\s*(?:°\s*)?(?:,\s*)?(?:then|dann)\s*(\d{3})\b(?!\s*(?:g|ml|min))",
    re.IGNORECASE,
)
_ONE_UNIT = re.compile(r"(?<![\d.,])(\d{3})[, ]*(?:then|dann)\s+(\d{3})\s*°?\s*([CF])\b", re.I)
_LATER = re.compile(
    r"\b(?:then|reduce|lower|turn|dann|danach|reduzieren|drop|increase|raise|after)\b",
    re.IGNORECASE,
)
_MINUTES = re.compile(
    r"(\d{1,3})(?:\s*(?:-|–|to|bis)\s*(\d{1,3}))?\s*(?:min\b|mins\b|minutes?\b|minuten\b)",
    re.IGNORECASE,
)


class Degrees(NamedTuple):
    """A temperature in a text: value and end of a range in its own unit, and where it stands."""

    low: float
    high: float | None
    unit: str
    start: int
    end: int
    fan: bool

    @property
    def low_c(self) -> float:
        """Lower end in °C."""
        return _to_c(self.low, self.unit)

    @property
    def best_c(self) -> float:
        """Middle in °C."""
        return (
            (self.low_c + _to_c(self.high, self.unit)) / 2 if self.high is not None else self.low_c
        )


def _to_c(value: float, unit: str) -> float:
    return (value - 32) / 1.8 if unit == "f" else value


def _to_f(value_c: float) -> float:
    return value_c * 1.8 + 32


def read_oven(text: str) -> Read[OvenLine | None]:
    """Read an oven setting; never raises. A figure without a unit is asked about.

    >>> read_oven("fan 150 C").value.temp_c, read_oven("325 F").value.temp_c
    (150.0, 162.8)
    >>> [p.code for p in read_oven("180").problems]
    ['oven-unit']
    """
    asking = Asking(text)
    oven = oven_of(text, asking, keyed=True, has_grams=True)
    if oven is None and not asking.problems:
        asking.ask(
            "oven-not-read",
            "No oven temperature can be read. Type it with its unit.",
            ("160 C", "160 C"), ("325 F", "325 F"), ("fan 150 C", "fan 150 C"),
        )  # fmt: skip
    problems = tuple(p.__class__(p.code, "oven", p.read, p.ask, p.options) for p in asking.problems)
    return Read(oven if not asking.problems else None, problems, tuple(asking.notices))


def oven_of(source: str, asking: Asking, *, keyed: bool, has_grams: bool) -> OvenLine | None:
    """Oven setting of a line; in a step only where the line speaks of baking."""
    text = (
        clean(source).text.replace(NOTHING, " ")
        if len(clean(source).text) == len(source)
        else source
    )
    if not keyed and not BAKES.search(text):
        return None
    if ask_which(source, text, asking, keyed=keyed):
        return None
    # One unit behind two stages is meant for both.
    text = _ONE_UNIT.sub(r"\1 \3 then \2 \3", text)
    found = _degrees(text, keyed=keyed)
    if not found:
        return _without_degrees(source, text, asking, keyed=keyed, has_grams=has_grams)
    return _of_degrees(source, text, found, asking)


def _degrees(text: str, *, keyed: bool) -> list[Degrees]:
    found: list[Degrees] = []
    left_at = -1
    for match in _DEGREE.finditer(text):
        if is_left(text, match, keyed=keyed) or in_other_unit(text, left_at, match):
            left_at = match.end()
            continue
        degrees = _degrees_at(text, match)
        coldest, hottest = limit("oven-coldest"), limit("oven-hottest")
        if keyed or degrees.unit == "?" or coldest <= degrees.low_c <= hottest:
            found.append(degrees)
    return found


def _degrees_at(text: str, match: re.Match[str]) -> Degrees:
    low = float((match["low"] or match["low2"]).replace(",", "."))
    high = match["high"] or match["high2"]
    unit = (match["unit"] or ("c" if _GERMAN.search(text) else "?"))[0].casefold()
    is_minus = _MINUS_BEFORE.search(text, 0, match.start()) is not None
    return Degrees(
        -low if is_minus else low,
        float(high) if high else None,
        unit,
        match.start() - is_minus,
        match.end(),
        fan=_is_fan(text, match),
    )


def _is_fan(text: str, match: re.Match[str]) -> bool:
    around = (
        text[max(0, match.start() - 8) : match.start()]
        + " "
        + re.split(r"[,/(;)]", text[match.end() : match.end() + 12])[0]
    )
    return bool(_FAN.search(around)) and not _NO_FAN.search(
        text[max(0, match.start() - 12) : match.end() + 16]
    )


def _of_degrees(source: str, text: str, found: list[Degrees], asking: Asking) -> OvenLine | None:
    if any(d.unit == "?" for d in found):
        known = [d for d in found if d.unit != "?"]
        if not known:
            return _ask_unit(source, found[0], asking, has_grams=True)
        found = known
    plain = [d for d in found if not d.fan] or found
    first = plain[0]
    rest = [d for d in plain[1:] if d.start - first.end < 60]
    if rest and _LATER.search(text[first.end : rest[0].start]):
        return _staged(source, text, plain)
    for other in rest:
        if other.unit != first.unit and not _pair_agrees(source, first, other, asking):
            return None
    fan = True if first.fan else False if _NO_FAN.search(text) or len(plain) < len(found) else None
    if fan is None and _FAN.search(text):
        fan = True
    return _line(source, first, fan=fan)


def _line(
    source: str,
    degrees: Degrees,
    *,
    fan: bool | None,
    stages: tuple[tuple[float, float | None], ...] = (),
) -> OvenLine:
    interval = None
    if degrees.high is not None:
        high_c = _to_c(degrees.high, degrees.unit)
        interval = Interval(round(degrees.low_c, 1), round(degrees.best_c, 1), round(high_c, 1))
    return OvenLine(source, round(degrees.best_c, 1), fan, interval, stages)


def _staged(source: str, text: str, found: list[Degrees]) -> OvenLine:
    stages = []
    for degrees, after in zip(found, [*found[1:], None], strict=True):
        end = after.start if after is not None else len(text)
        minutes = _MINUTES.search(text, degrees.end, end)
        stages.append((round(degrees.best_c, 1), float(minutes[1]) if minutes else None))
    fan = (
        True
        if found[0].fan or (_FAN.search(text) and not _NO_FAN.search(text))
        else False
        if _NO_FAN.search(text)
        else None
    )
    return _line(source, found[0], fan=fan, stages=tuple(stages))


def _pair_agrees(source: str, one: Degrees, other: Degrees, asking: Asking) -> bool:
    apart = abs(one.best_c - other.best_c)
    if apart <= limit("temperatures-agree"):
        asking.note(
            "oven-rounded",
            f"{_shown(one)} is {as_text(one.best_c, 1)} °C; {_shown(other)} beside it is "
            f"{as_text(apart, 1)} °C off: ordinary rounding",
        )
        return True
    _ask_pair(source, one, other, apart, asking)
    return False


def _shown(degrees: Degrees) -> str:
    return f"{as_text(degrees.low, 1)} °{degrees.unit.upper()}"


def _ask_pair(source: str, one: Degrees, other: Degrees, apart: float, asking: Asking) -> None:
    low, high = sorted((one.best_c, other.best_c))
    range_c = f"{as_text(low, 0)}-{as_text(high, 0)} C"
    end = other.end + (source[other.end : other.end + 1] == ")")
    options = [
        (_both(d), asking.edit(one.start, end, f"{as_text(d.low, 1)} {d.unit.upper()}"))
        for d in (one, other)
    ]
    asking.ask(
        "oven-temp-conflict",
        f"{_shown(one)} is {_turned(one)} and {_shown(other)} is {_turned(other)}: "
        f"they are {as_text(apart, 1)} °C apart. Which did you bake with?",
        *options,
        (f"don't know: the card says {range_c}, check early", asking.edit(one.start, end, range_c)),
    )


def _turned(degrees: Degrees) -> str:
    """A temperature in the other unit."""
    if degrees.unit == "f":
        return f"{as_text(degrees.best_c, 1)} °C"
    return f"{as_text(_to_f(degrees.best_c), 0)} °F"


def _both(degrees: Degrees) -> str:
    return f"{as_text(_to_f(degrees.best_c), 0)} °F / {as_text(degrees.best_c, 0)} °C"


def _without_degrees(
    source: str, text: str, asking: Asking, *, keyed: bool, has_grams: bool
) -> OvenLine | None:
    if match := _GAS.search(text):
        return _ask_word(source, f"gas {match[1]}", f"gas-{match[1]}", match, asking)
    if match := _WORD.search(text):
        word = match[1].casefold().replace("quick", "hot").replace(" ", "-")
        return _ask_word(source, f"a {match[0].casefold()}", f"oven-{word}", match, asking)
    if keyed and (
        match := re.search(
            r"\b(very slow|very hot|moderately hot|moderate|slow|hot)\b",
            text.partition(":")[2] or text,
            re.IGNORECASE,
        )
    ):
        at = source.casefold().find(match[1].casefold())
        found = re.compile(re.escape(source[at : at + len(match[1])])).search(source, at)
        if found:
            return _ask_word(
                source,
                f"a {match[1].casefold()} oven",
                f"oven-{match[1].casefold().replace(' ', '-')}",
                found,
                asking,
            )
    if match := _STAGES.search(text):
        return _bare_stages(source, text, match, asking)
    for match in _BARE.finditer(text):
        value = float(match["low"])
        is_minus = _MINUS_BEFORE.search(text, 0, match.start()) is not None
        fits = limit("oven-coldest") + 50 <= value <= 550 and not is_minus
        if fits and (
            keyed or _AT.search(text[: match.start()]) or _OVEN_BEHIND.match(text, match.end())
        ):
            high = float(match["high"]) if match["high"] else None
            degrees = Degrees(value, high, "?", match.start(), match.end(), fan=False)
            if keyed or not NOT_BAKED.search(clause_before(text, match.start())):
                return _ask_unit(source, degrees, asking, has_grams=has_grams)
    return None


def _bare_stages(source: str, text: str, match: re.Match[str], asking: Asking) -> OvenLine:
    """`180 then 160 after 10 min`: two stages of one bake, in the unit that bakes."""
    unit = "f" if float(match[1]) > limit("fahrenheit-from") else "c"
    both = [round(_to_c(float(match[n]), unit), 1) for n in (1, 2)]
    minutes = _MINUTES.search(text)
    asking.note(
        "oven-stages",
        f"a bake in two stages, read as °{unit.upper()}: no oven bakes in the other unit at "
        f"these figures",
    )
    fan = False if _NO_FAN.search(text) else True if _FAN.search(text) else None
    return OvenLine(
        source,
        both[0],
        fan,
        None,
        ((both[0], float(minutes[1]) if minutes else None), (both[1], None)),
    )


def _ask_word(
    source: str, words: str, key: str, match: re.Match[str], asking: Asking
) -> OvenLine | None:
    from krume.evidence import figures

    row = figures("reader.csv").get(key)
    if row is None:
        return None
    low, high = row.value - (row.half_width or 0), row.value + (row.half_width or 0)
    has_oven = match[0].casefold().endswith("oven")
    tail = " oven" if has_oven else ""
    options = [
        (
            f"{as_text(c)} C, {as_text(_to_f(c), 0)} F",
            asking.edit(match.start(), match.end(), f"{as_text(c)} C{tail}"),
        )
        for c in (row.value, low, high)
    ]
    asking.ask(
        "oven-word",
        f"{words} is usually {as_text(row.value)} °C, from {as_text(low)} to {as_text(high)} °C "
        f"({row.status}). Which?",
        *options,
    )
    return OvenLine(source, None, None, Interval(low, row.value, high))


def _ask_unit(source: str, degrees: Degrees, asking: Asking, *, has_grams: bool) -> OvenLine | None:
    first = "F" if degrees.low > limit("fahrenheit-from") or not has_grams else "C"
    end = degrees.start + len(source[degrees.start : degrees.end].rstrip("° ").rstrip())
    written = source[degrees.start : end]
    number = re.match(r"[\d.,–\- tobis]*\d", written)
    kept = number[0] if number else written
    options = []
    for unit in (first, "C" if first == "F" else "F"):
        value = as_text(_to_f(degrees.low) if unit == "C" else _to_c(degrees.low, "f"), 0)
        options.append(
            (
                f"{kept} °{unit} ({value} °{'F' if unit == 'C' else 'C'})",
                asking.edit(degrees.start, degrees.end, f"{kept} {unit}"),
            )
        )
    asking.ask("oven-unit", f"{kept} what? The unit is missing.", *options)
    return OvenLine(source, None, None)


def minutes_of(text: str) -> list[tuple[Interval, int]]:
    """Minutes named in a text, each with its place."""
    return [(_minutes(m), m.start()) for m in _MINUTES.finditer(text)]


def _minutes(match: re.Match[str]) -> Interval:
    low = float(match[1])
    high = float(match[2]) if match[2] else low
    return Interval(min(low, high), (low + high) / 2, max(low, high))


def speaks_of_baking(text: str) -> bool:
    """Whether a text speaks of baking or the oven."""
    return bool(BAKES.search(text))
