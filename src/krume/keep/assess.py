"""How long a formula or a torte keeps: the hardest limit wins and is named with its component."""

import math
import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from krume.base import Interval, as_text, read_number
from krume.design import Formula
from krume.keep.cold import needs_cold
from krume.keep.estimate import activity_estimate
from krume.keep.remarks import remarks_on
from krume.keep.rules import Caution, KeepRule, caution, keep_rule, room_rules, rule_of_family
from krume.keep.traits import traits

_HOURS_A_DAY = 24
_TRAIT_RULES = ("raw-egg", "whipped-cream", "fresh-fruit")
_CAUTIONS = (
    *("raw-egg", "egg-heat-unknown", "heated-egg", "alcohol", "nuts", "buckwheat", "honey"),
    *("gelatine", "hot-sugar", "raw-batter"),
)
_SAID = re.compile(r"^([^\W\d_][\w ]*?)\s*[:=]\s*(\S.*)$")
_NUMBER = r"(\d+(?:[.,]\d+)?)"
_MEASURED = re.compile(
    rf"^(?:about\s|ca\.?\s?|~)?\s*{_NUMBER}(?:\s*(?:-|–|to|bis)\s*{_NUMBER})?(?![\w.,%])",
    re.IGNORECASE,
)
_NOT_MEASURED = re.compile(
    r"\b(?:plan\w*|estimat\w*|guess\w*|assum\w*|expect\w*|target\w*|aim\w*|calculat\w*|wish\w*|"
    r"not|should|typical\w*|from memory|geplant|geschätzt|soll)\b|\?",
    re.IGNORECASE,
)
_PH = ("ph",)
_ACTIVITY = ("aw", "water activity", "a_w")


@dataclass(frozen=True, slots=True)
class KeepReason:
    """Why it keeps as long as it does, or does not; `of` names the component, or nothing."""

    key: str
    of: str
    text: str
    status: str
    source: str


@dataclass(frozen=True, slots=True)
class KeepComponent:
    """One formula with its own limit; `cold_h` is None where nothing is known of it."""

    name: str
    title: str
    rule: KeepRule | None
    verdict: str
    activity: Interval | None
    traits: frozenset[str]

    @property
    def cold_h(self) -> Interval | None:
        """How long it keeps at 5 degC or below."""
        return None if self.rule is None else self.rule.cold_h


@dataclass(frozen=True, slots=True)
class Keeping:
    """How long something keeps. None is not known, and then nothing may be promised.

    `room_h` is time without cooling under the named rule of the reasons, never a promise.
    """

    cold_h: Interval | None
    room_h: Interval | None
    reasons: tuple[KeepReason, ...]
    cautions: tuple[Caution, ...]
    components: tuple[KeepComponent, ...]

    @property
    def least_days(self) -> int | None:
        """Whole days that may be counted on, the day of making as day 1."""
        return None if self.cold_h is None else int(self.cold_h.low // _HOURS_A_DAY)


def assess(
    formulas: Mapping[str, Formula],
    families: Mapping[str, str | None],
    *,
    evaporated_g: Mapping[str, float] | None = None,
) -> Keeping:
    """Judge a formula or the formulas of a torte, by the names a plan uses for them."""
    lost = {name: _evaporated_g(formula) for name, formula in formulas.items()}
    lost.update(evaporated_g or {})
    found = tuple(
        _component(name, formula, families.get(name), lost.get(name, 0.0))
        for name, formula in formulas.items()
    )
    cold = _hardest(found)
    return Keeping(
        cold_h=cold,
        room_h=_room(found, cold),
        reasons=(
            *_reasons(found, cold),
            *_remarks(found, formulas, families),
            *_not_counted(formulas),
        ),
        cautions=_cautions(found),
        components=found,
    )


def _evaporated_g(formula: Formula) -> float:
    """Water that left in the oven, where the text says what the cake weighs baked."""
    baked = None if formula.baked is None else formula.baked.mass_g
    masses = [line.mass_g for line in formula.lines]
    if baked is None or None in masses:
        return 0.0
    return max(0.0, math.fsum(mass or 0.0 for mass in masses) - baked)


def _component(name: str, formula: Formula, kind: str | None, evaporated_g: float) -> KeepComponent:
    of = traits(formula, kind)
    rules = [rule_of_family(kind)]
    wanted = [*_TRAIT_RULES, *(["raw-egg"] if "egg-heat-unknown" in of else [])]
    rules += [keep_rule(key) for key in dict.fromkeys(wanted) if _applies(key, of)]
    known = [rule for rule in rules if rule is not None]
    return KeepComponent(
        name=name,
        title=" ".join((formula.name or name).split()),
        rule=min(known, key=_order) if known else None,
        verdict=_verdict(formula),
        activity=activity_estimate(formula, evaporated_g=evaporated_g),
        traits=of,
    )


def _applies(key: str, of: frozenset[str]) -> bool:
    return key in of or (key == "raw-egg" and "egg-heat-unknown" in of)


def _order(rule: KeepRule) -> tuple[float, float, float, str]:
    hours = rule.cold_h
    return hours.low, hours.best, hours.high, rule.key


def _verdict(formula: Formula) -> str:
    """Need of cold by measured acidity and water activity; not measured is cold."""
    return needs_cold(
        _agreed(_said(formula, _ACTIVITY), 1.0),
        _agreed(_said(formula, _PH), 14.0),
        heat_treated_packaged=False,
    )


def _said(formula: Formula, names: tuple[str, ...]) -> tuple[str, ...]:
    """What each `pH:` or `Water activity:` line of the text says, a note to the reader."""
    lines = (line.text.strip() for line in formula.source_lines if line.kind in ("key", "note"))
    found = (match for line in lines if (match := _SAID.match(line)) is not None)
    return tuple(match[2] for match in found if match[1].casefold() in names)


def _agreed(said: tuple[str, ...], most: float) -> float | None:
    """The figure of all its lines; None where they are not one, or one of them is none."""
    known = {_measured(words, most) for words in said}
    return known.pop() if len(known) == 1 else None


def _measured(said: str, most: float) -> float | None:
    """The figure of a measured line, the higher of two; None where it can be none."""
    if _NOT_MEASURED.search(said):
        return None
    match = _MEASURED.match(said)
    found = [read_number(n, comma_is_decimal=True) for n in (match.groups() if match else ()) if n]
    highest = max((n.value for n in found if n is not None), default=0.0)
    return highest if 0.0 < highest <= most else None


def _not_counted(formulas: Mapping[str, Formula]) -> Iterator[KeepReason]:
    """Measured lines whose figure can be none: named, and counted as not measured."""
    for name, formula in formulas.items():
        for word, names, most in (("pH", _PH, 14.0), ("Water activity", _ACTIVITY, 1.0)):
            lines = _said(formula, names)
            odd = [said for said in lines if _measured(said, most) is None]
            for said in odd:
                text = (
                    f"{name}: '{word}: {said}' is no figure above 0 and up to {as_text(most)} "
                    "that was measured; it counts as not measured."
                )
                yield KeepReason("figure-not-counted", name, text, "assumed", "krume")
            if not odd and lines and _agreed(lines, most) is None:
                said = " and ".join(lines)
                text = f"{name}: '{word}' is said twice, {said}. Leave the one measured last."
                yield KeepReason("figure-twice", name, text, "assumed", "krume")


def _hardest(found: tuple[KeepComponent, ...]) -> Interval | None:
    """The shortest time of all components; None as soon as nothing is known of one."""
    hours = [part.cold_h for part in found]
    known = [each for each in hours if each is not None]
    if not known or len(known) < len(hours):
        return None
    least = min(known, key=lambda h: (h.low, h.best, h.high))
    mark = keep_rule("date-mark").cold_h.high
    return Interval(min(least.low, mark), min(least.best, mark), min(least.high, mark))


def _has_raw_egg(found: tuple[KeepComponent, ...]) -> bool:
    return any({"raw-egg", "egg-heat-unknown"} & part.traits for part in found)


def _room(found: tuple[KeepComponent, ...], cold: Interval | None) -> Interval | None:
    """Time without cooling by the named rule; none with raw egg or an unknown component."""
    if cold is None or _has_raw_egg(found):
        return None
    hours = sorted(row.number_of("hours") for row in room_rules())
    return Interval(hours[0], hours[0], hours[-1])


def _reasons(found: tuple[KeepComponent, ...], cold: Interval | None) -> tuple[KeepReason, ...]:
    return (
        *_cold_reasons(found, cold),
        *_need_reasons(found),
        *_room_reasons(found, cold),
    )


def _cold_reasons(found: tuple[KeepComponent, ...], cold: Interval | None) -> list[KeepReason]:
    unknown = [part for part in found if part.rule is None]
    reasons = [
        KeepReason(
            "unknown-component", part.name,
            f"{_named(part)}: nothing is known of how long it keeps, so nothing is "
            "said of the whole. A line “Family:” that names its kind opens it.",
            "assumed", "krume",
        )
        for part in unknown
    ]  # fmt: skip
    if cold is None:
        return reasons
    mark = keep_rule("date-mark")
    for part in found:
        rule = part.rule
        if rule is not None and _capped(rule.cold_h, mark.cold_h.high) == cold:
            text = f"{_named(part)}: {rule.words}, {rule.note} ({rule.status})."
            reasons.append(KeepReason(rule.key, part.name, text, rule.status, rule.source))
    if all(part.cold_h is not None and part.cold_h.high > mark.cold_h.high for part in found):
        reasons.append(KeepReason("date-mark", "", f"{mark.note}.", mark.status, mark.source))
    return reasons


def _named(part: KeepComponent) -> str:
    return part.name if part.name == part.title else f"{part.name} ({part.title})"


def _capped(hours: Interval, most: float) -> Interval:
    return Interval(min(hours.low, most), min(hours.best, most), min(hours.high, most))


def _need_reasons(found: tuple[KeepComponent, ...]) -> list[KeepReason]:
    """Why it is treated as needing the cold, or what the two numbers say."""
    unmeasured = [part.name for part in found if part.verdict == "tcs"]
    assess_first = [part.name for part in found if part.verdict == "assess"]
    dry = [part.name for part in found if part.verdict == "non-tcs"]
    told = (
        ("not-measured", unmeasured,
         "acidity or water activity is not measured: treated as needing the cold"),
        ("assess", assess_first,
         "by acidity and water activity it is kept cold until a study says otherwise"),
        ("need-not", dry, "by acidity and water activity alone it need not be kept cold"),
    )  # fmt: skip
    return [
        KeepReason(key, names[0] if len(names) == 1 else "", f"{', '.join(names)}: {text}.",
                   "law", "fda-food-code-2022")
        for key, names, text in told
        if names
    ]  # fmt: skip


def _room_reasons(found: tuple[KeepComponent, ...], cold: Interval | None) -> list[KeepReason]:
    if _has_raw_egg(found):
        text = "Without cooling: no time, egg that is not heated is in it."
        return [KeepReason("room-raw-egg", "", text, "assumed", "krume")]
    if cold is None:
        text = "Without cooling: no time is named while a component is not known."
        return [KeepReason("room-unknown", "", text, "assumed", "krume")]
    return [
        KeepReason(
            f"room-{row.text('key')}", "",
            f"Without cooling, only by FDA Food Code {row.text('page')}, with its written "
            f"procedure and where your law takes it over: {row.text('words')}.",
            row.text("status"), row.text("source"),
        )
        for row in room_rules()
    ]  # fmt: skip


def _remarks(
    found: tuple[KeepComponent, ...],
    formulas: Mapping[str, Formula],
    families: Mapping[str, str | None],
) -> list[KeepReason]:
    return [
        KeepReason(remark.key, part.name, remark.text, remark.status, remark.source)
        for part in found
        for remark in remarks_on(
            part.name, formulas[part.name], families.get(part.name),
            activity=part.activity, traits=part.traits,
        )
    ]  # fmt: skip


def _cautions(found: tuple[KeepComponent, ...]) -> tuple[Caution, ...]:
    of = frozenset(trait for part in found for trait in part.traits)
    keys = [key for key in _CAUTIONS if key in of]
    if "raw-egg" in of or "egg-heat-unknown" in of:
        keys = [key for key in keys if key != "heated-egg"]
    return tuple(caution(key) for key in ("cold-chain", *keys, "local-law"))
