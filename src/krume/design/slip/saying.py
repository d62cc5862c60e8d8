"""Ways in a baker's words: what to add now first, what then, and what it costs."""

import math
from collections.abc import Sequence
from dataclasses import replace

from krume.base import as_text
from krume.design.findings import Finding
from krume.design.ratios import Value, best_of
from krume.design.slip.bowl import FLOURS
from krume.design.slip.eggs import egg_words
from krume.design.slip.finish import Case
from krume.design.slip.state import NOISE_G
from krume.design.slip.way import Way, WayLine, WayTin

_TITLES = {
    "jar": "Fill the blend up, keep {jar} g in a jar",
    "leave": "Leave it, go on as planned",
    "hold": "{less} of the rest, same total",
    "hold-in-band": "{less} of the rest, same total, inside every usual range",
    "follow": "Leave the blend, everything else grows ×{factor}",
    "scale": "Make all of it larger, ×{factor}, whole eggs",
    "scale-exact": "Make all of it larger, ×{factor}, part of an egg",
    "second": "The surplus as a second cake, ×{factor}",
    "down": "Make all of it smaller, ×{factor}",
    "fresh": "Break fresh eggs for the whites",
    "add": "Nothing is over: go on as planned",
}


def told(case: Case, ways: Sequence[Way]) -> tuple[Way, ...]:
    """Ways with their title and text; some name what another one would give."""
    by_kind = {way.kind: way for way in ways}
    return tuple(_said(case, way, by_kind) for way in ways)


def _said(case: Case, way: Way, by_kind: dict[str, Way]) -> Way:
    title = _TITLES[way.kind].format(
        jar="" if way.jar is None else grams(way.jar.mass_g),
        factor=as_text(way.factor, 4),
        less="Less" if case.slip.over else "More",
    )
    if way.kind == "scale-exact" and not way.has_part_egg:
        title = title.partition(", part")[0]
    then = tuple(text for text in _then(case, way, by_kind) if text)
    first = _first(case, way)
    return replace(way, title=title, then=then, text=" ".join((first, *then)))


def grams(value: float) -> str:
    """A mass with the digits a scale shows.

    >>> grams(12.0), grams(0.325)
    ('12.0', '0.325')
    """
    return f"{value:.1f}" if abs(value * 10 - round(value * 10)) < 1e-6 else as_text(value, 3)


def _first(case: Case, way: Way) -> str:
    """What to add now, line by line."""
    if way.kind == "fresh":
        return _break(case)
    if way.kind in ("leave", "add") and all(line.share_pct is None for line in way.lines):
        return _on_plan(case, way)
    adds = [f"{line_name(case, line)} {grams(line.add_g)} g" for line in way.adding]
    out = [
        f"{line_name(case, line)} {grams(line.take_out_g)} g"
        for line in way.lines
        if line.take_out_g > 0
    ]
    said = [f"Add {_listed(adds)}." if adds else "Nothing more goes in."]
    if out:
        said.append(f"Take {_listed(out)} back out of the cup it lies alone in.")
    return " ".join(said)


def _on_plan(case: Case, way: Way) -> str:
    """That all that is still to add is as planned; what was begun is named with its rest."""
    begun = [line for line in way.adding if case.slip.held_g(line.line)]
    rest = [f"{line_name(case, line)} {grams(line.add_g)} g more" for line in begun]
    if len(way.adding) == len(begun):
        return f"Add {_listed(rest)}." if rest else "Nothing more goes in."
    return f"Add {_listed(rest)}; all else as planned." if rest else "Weigh the rest as planned."


def line_name(case: Case, line: WayLine) -> str:
    """Name of a line, as the formula has it."""
    return case.slip.lines[line.line].name


def _listed(parts: Sequence[str]) -> str:
    return parts[0] if len(parts) == 1 else f"{', '.join(parts[:-1])} and {parts[-1]}"


def _then(case: Case, way: Way, by_kind: dict[str, Way]) -> list[str]:
    texts = {
        "jar": _jar, "leave": _leave, "hold": _hold, "hold-in-band": _in_band, "follow": _follow,
        "scale": _larger, "scale-exact": _larger, "second": _second, "down": _down,
        "fresh": _fresh,
    }  # fmt: skip
    say = texts.get(way.kind)
    said = [] if say is None else say(case, way, by_kind)
    marks = [
        f"{grams(line.add_g)} g {line_name(case, line)}: {line.mark}."
        for line in way.lines
        if line.mark
    ]
    if way.lines[0].share_pct is not None:
        said = [*said, _beside(case)]
    return [*said, *marks, "" if way.kind == "hold" else _outside(case, way)]


def _how_planned(way: Way) -> str:
    """Whether the scale reaches the exact grams of every line."""
    off = max(abs(line.mass_g - way.factor * line.was_g) for line in way.lines)
    return "exactly as planned" if off < NOISE_G else "as planned to the step of the scale"


def _beside(case: Case) -> str:
    """What is over outside the bowl and stays so, when the bowl alone is put right."""
    slip, bowl = case.slip, case.bowls.slip
    beside = [n for n in slip.over if bowl is not None and n not in bowl.lines]
    parts = [
        f"{slip.lines[n].name} {grams(slip.held_g(n) - (slip.plan_g(n) or 0.0))} g over"
        for n in beside
    ]
    return f"Still {_listed(parts)}." if parts else ""


def _jar(case: Case, way: Way, _: dict[str, Way]) -> list[str]:
    bowl, jar = case.bowls.slip, way.jar
    if bowl is None or jar is None:
        return []
    plan, word = grams(bowl.plan_g), _bowl_word(case)
    mix = "Sift it twice" if word == "the blend" else "Mix it well"
    return [
        f"Then {word} is {_how_planned(way)}, ×{as_text(way.factor, 4)}.",
        f"{mix}, so that the jar is the same as the bowl: {plan} g for this cake, "
        f"{grams(jar.mass_g)} g into a labelled jar.",
        f"The next cake starts from the jar: {grams(jar.next_g)} g more."
        if jar.next_g
        else "The next cake comes out of the jar whole.",
    ]  # fmt: skip


def _leave(case: Case, way: Way, by_kind: dict[str, Way]) -> list[str]:
    said = [_moved(case, way)]
    if way.in_band:
        said.append("All figures stay in their usual ranges." if case.judge.limits else "")
    follow = by_kind.get("follow")
    if follow is not None:
        said.append(f"Or all else ×{as_text(follow.factor, 4)}: {_rest(case, follow)}.")
    return said


def _rest(case: Case, way: Way) -> str:
    """Sugar and eggs of a way, the lines a baker changes first."""
    egg = _eggs(way)
    sugar = [
        f"{line.name} {grams(mass)} g"
        for line, mass in zip(case.slip.lines, way.card_g, strict=True)
        if mass is not None and "sugar" in (line.ingredient or "")
    ]
    return ", ".join((*sugar, egg) if way.eggs.mass_g else sugar)


def _moved(case: Case, way: Way) -> str:
    """What moved most: a share of the blend, else the figures of the line."""
    if way.lines and way.lines[0].share_pct is not None:
        return _moved_share(case, way)
    first = sorted(way.shifts, key=lambda s: s.figure != "sugar_per_egg")[:2]
    if not first:
        return f"It moves one line by {as_text(way.worst_shift_pct, 1)} % against the rest."
    said = "; ".join(
        f"{s.label.lower()} {_value(s.after, s.unit)} instead of {_value(s.before, s.unit)}"
        for s in first
    )
    return f"{said[:1].upper()}{said[1:]}."


def _value(value: Value, unit: str) -> str:
    best = best_of(value)
    if best is None:
        return "unknown"
    return f"{best:.3f}" if unit == "ratio" else f"{best:.1f} {unit}"


def _moved_share(case: Case, way: Way) -> str:
    wrong = [line for line in way.lines if line.line in (*case.slip.over, *case.slip.short)]
    line = max(wrong or way.lines, key=_share_shift)
    now, was = line.share_pct or 0.0, line.was_share_pct or 0.0
    name = line_name(case, line)
    return (
        f"{name[:1].upper()}{name[1:]} is {now:.1f} % of {_bowl_word(case)} instead of {was:.1f} "
        f"({now - was:+.1f} points)."
    )


def _share_shift(line: WayLine) -> float:
    return abs((line.share_pct or 0.0) - (line.was_share_pct or 0.0))


def _bowl_word(case: Case) -> str:
    """What the slip's bowl is called: a blend where it has flour, else by its own name."""
    bowl = case.bowls.slip
    if bowl is None or any(item.role in FLOURS for item in bowl.items):
        return "the blend"
    return f"the {bowl.label.lower()}"


def _hold(case: Case, way: Way, by_kind: dict[str, Way]) -> list[str]:
    said = [f"The blend stays {grams(way.total_g)} g.", _moved(case, way), _outside(case, way)]
    inside = by_kind.get("hold-in-band")
    if inside is not None and not way.in_band:
        adds = [f"{line_name(case, line)} {grams(line.add_g)} g" for line in inside.adding]
        said.append(f"Inside every usual range with {_listed(adds)}.")
    return said


def _in_band(case: Case, way: Way, _: dict[str, Way]) -> list[str]:
    return [
        f"The blend stays {grams(way.total_g)} g, every figure in its usual range: of all such "
        "splits the one closest to the plan.",
        _moved(case, way),
    ]


def _follow(case: Case, way: Way, _: dict[str, Way]) -> list[str]:
    return [f"Everything else ×{as_text(way.factor, 4)}: {_rest(case, way)}.", *_in_tin(way)]


def _larger(case: Case, way: Way, _: dict[str, Way]) -> list[str]:
    bowl = case.bowls.slip
    names = "" if bowl is None else _listed([case.slip.lines[n].name for n in bowl.added] or [""])
    why = f"No jar, because {names} lies in the same bowl: the whole cake grows." if names else ""
    eggs = f": {_eggs(way)}" if way.eggs.mass_g else ""
    return [why, f"All of it ×{as_text(way.factor, 4)}{eggs}.", *_in_tin(way)]


def _in_tin(way: Way) -> list[str]:
    """Depth in the own tin, and the tin that fits better."""
    tin = way.tin
    if tin is None or tin.depth_cm is None or tin.was_depth_cm is None:
        return []
    full = "" if tin.fill is None else f", {100 * tin.fill:.0f} % full"
    said = f"In its own tin {tin.depth_cm:.1f} cm deep instead of {tin.was_depth_cm:.1f}{full}."
    if tin.is_full:
        said += " It may run over."
    if tin.fits == tin.own:
        return [said]
    return [said, _fitting(tin)]


def _fitting(tin: WayTin) -> str:
    """The tin at hand that fits, or the floor that would."""
    if tin.fits is not None and tin.fits_depth_cm is not None:
        return f"Closest to the planned depth: {tin.fits}, {tin.fits_depth_cm:.1f} cm."
    if tin.wanted_area_cm2 is None:
        return ""
    across = 2 * math.sqrt(tin.wanted_area_cm2 / math.pi)
    return (
        f"No tin at hand keeps the planned depth; a floor of {tin.wanted_area_cm2:.0f} cm² would "
        f"(round {across:.1f} cm)."
    )


def _second(case: Case, way: Way, _: dict[str, Way]) -> list[str]:
    small = [
        f"{line.name} {grams(mass)} g"
        for line, mass in zip(case.slip.lines, way.card_g, strict=True)
        if mass is not None and "sugar" in (line.ingredient or "")
    ]
    parts = ", ".join((*small, _eggs(way)))
    fits = "" if way.tin is None else _fitting(way.tin)
    return [f"Of it the second cake gets ×{as_text(way.factor, 4)}: {parts}.", fits]


def _down(_: Case, way: Way, __: dict[str, Way]) -> list[str]:
    said = [f"All of it ×{as_text(way.factor, 4)}: {_eggs(way)}."]
    if way.jar is not None:
        said.append(f"Keep {grams(way.jar.mass_g)} g of the blend in a labelled jar.")
    return [*said, *_in_tin(way)]


def _break(case: Case) -> str:
    count = case.slip.spoilt_whites
    eggs = "1 fresh egg" if count == 1 else f"{count} fresh eggs"
    return f"Break {eggs} and take the whites, into a clean, dry bowl."


def _fresh(_: Case, way: Way, __: dict[str, Way]) -> list[str]:
    white = sum(line.add_g for line in way.lines)
    return [
        f"That is {grams(white)} g of white.",
        "Yolk is fat, and fat keeps whites from whipping (common practice).",
        "The fresh yolks are left over.",
    ]


def _eggs(way: Way) -> str:
    """The eggs of a way; yolks and whites that are weighed apart are named apart."""
    words = egg_words(way.eggs)
    return words if words.startswith(("yolk", "white")) else f"eggs {words}"


def _outside(case: Case, way: Way) -> str:
    return f"Outside: {short(case.judge.new_findings(way.balance))}" if not way.in_band else ""


def short(findings: Sequence[Finding]) -> str:
    """Findings in a few words: each figure and its usual range.

    >>> short(())
    ''
    """
    return " ".join(f"{each.text.partition('. ')[0].rstrip('.')}." for each in findings)
