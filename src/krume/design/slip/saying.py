"""Ways in a baker's words: what to add now first, what then, and what it costs."""

import math
from collections.abc import Sequence
from dataclasses import replace

from krume.base import as_text
from krume.design.bands import family
from krume.design.findings import Finding
from krume.design.slip.bowl import FLOURS, role_of
from krume.design.slip.finish import Case
from krume.design.slip.moved import egg_text, moved_figures, unbanded, value_text
from krume.design.slip.state import NOISE_G, figure
from krume.design.slip.way import GROWING, Way, WayLine, WayTin

_TITLES = {
    "jar": "Fill {bowl} up, keep {jar} g in a jar",
    "leave": "Leave it, go on as planned",
    "hold": "{less} of the rest, same total",
    "hold-in-band": "{less} of the rest, same total, inside every usual range",
    "follow": "Leave {bowl}, everything else grows ×{factor}",
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
        bowl=_bowl_word(case),
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
        if line.mark and not _is_as_planned(case, way, line)
    ]
    if way.is_of_blend:
        said = [*said, _beside(case)]
    return [*said, *marks, "" if way.kind == "hold" else _outside(case, way), _unknown(case, way)]


def _is_as_planned(case: Case, way: Way, line: WayLine) -> bool:
    """Whether a line is only weighed as planned, so that nothing has to be said of it."""
    plain = way.kind in ("leave", "add") and line.share_pct is None
    return plain and not case.slip.held_g(line.line)


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
    mix = "Mix it well" if any(i.role in ("nut", "sugar") for i in bowl.items) else "Sift it twice"
    return [
        f"Then {word} is {_how_planned(way)}, ×{as_text(way.factor, 4)}.",
        f"{mix}, so that the jar is the same as the bowl: {plan} g for this cake, "
        f"{grams(jar.mass_g)} g into a labelled jar.",
        f"The next cake starts from the jar: {grams(jar.next_g)} g more."
        if jar.next_g
        else "The next cake comes out of the jar whole.",
    ]  # fmt: skip


def _leave(case: Case, way: Way, by_kind: dict[str, Way]) -> list[str]:
    free = unbanded(case, way)
    in_shares = way.is_of_blend
    said = [_moved(case, way), *(_times(case, n, in_shares=in_shares) for n in free)]
    if way.in_band and case.judge.limits and not free:
        is_out = bool(case.judge.plan.findings)
        said.append(
            "No known figure leaves its usual range."
            if way.unknown
            else "No figure leaves its usual range."
            if is_out
            else "All figures stay in their usual ranges."
        )
    follow = by_kind.get("follow")
    if follow is not None:
        said.append(f"Or all else ×{as_text(follow.factor, 4)}: {_rest(case, follow)}.")
    return said


def _rest(case: Case, way: Way) -> str:
    """The heavy lines outside the bowl and the eggs, what a baker changes first."""
    bowl, total = case.bowls.slip, math.fsum(mass or 0.0 for mass in way.card_g)
    inside = frozenset() if bowl is None else bowl.lines
    heavy = [
        f"{line.name} {grams(mass)} g"
        for n, (line, mass) in enumerate(zip(case.slip.lines, way.card_g, strict=True))
        if mass
        and mass >= figure("heavy-from") * total
        and n not in inside
        and role_of(line) != "egg"
    ]
    return ", ".join((*heavy, egg_text(case, way)) if way.eggs.mass_g else heavy)


def _moved(case: Case, way: Way) -> str:
    """What moved most: a share of the blend, else the figures that the slip itself moves."""
    if way.is_of_blend:
        return _moved_share(case, way)
    said = "; ".join(
        f"{s.label.lower()} {value_text(s.after, s.unit)} instead of {value_text(s.before, s.unit)}"
        for s in moved_figures(case, way)[:2]
    )
    return f"{said[:1].upper()}{said[1:]}." if said else ""


def _times(case: Case, line: int, *, in_shares: bool) -> str:
    """A line no usual range speaks of: what lies there, and how often the plan that is."""
    slip = case.slip
    if in_shares:
        return f"No usual range speaks of {slip.lines[line].name}."
    plan, held, name = slip.plan_g(line) or 0.0, slip.held_g(line), slip.lines[line].name
    often = held / plan if plan else 0.0
    many = f", {as_text(often, 1)} times the plan" if often >= figure("often-from") else ""
    return (
        f"{name[:1].upper()}{name[1:]}: {as_text(held, 2)} g for {as_text(plan, 2)} g{many}; no "
        "usual range speaks of it."
    )


def _moved_share(case: Case, way: Way) -> str:
    wrong = [line for line in way.lines if line.line in (*case.slip.over, *case.slip.short)]
    line = max(wrong or way.lines, key=_share_shift)
    now, was = line.share_pct or 0.0, line.was_share_pct or 0.0
    name = line_name(case, line)
    return (
        f"{name[:1].upper()}{name[1:]}: {now:.1f} % of {_basis_word(case)} instead of {was:.1f} "
        f"({now - was:+.1f} points)."
    )


def _share_shift(line: WayLine) -> float:
    return abs((line.share_pct or 0.0) - (line.was_share_pct or 0.0))


def _bowl_word(case: Case) -> str:
    """What the slip's bowl is called: a blend where it is all flour, else by its own name."""
    bowl = case.bowls.slip
    if bowl is None or all(item.role in FLOURS for item in bowl.items):
        return "the blend"
    return f"the {bowl.label.lower()}"


def _basis_word(case: Case) -> str:
    """What a share is taken of: the blend, or the flour in a bowl that holds more than flour."""
    bowl = case.bowls.slip
    has_flour = bowl is not None and any(item.role in FLOURS for item in bowl.items)
    word = _bowl_word(case)
    return "the flour" if has_flour and word != "the blend" else word


def _hold(case: Case, way: Way, by_kind: dict[str, Way]) -> list[str]:
    stays = f"{_bowl_word(case)} stays {grams(way.total_g)} g in all."
    said = [f"{stays[:1].upper()}{stays[1:]}", _moved(case, way), _outside(case, way)]
    inside = by_kind.get("hold-in-band")
    if inside is not None and not way.in_band:
        adds = [f"{line_name(case, line)} {grams(line.add_g)} g" for line in inside.adding]
        said.append(f"Inside every usual range with {_listed(adds)}.")
    return said


def _in_band(case: Case, way: Way, _: dict[str, Way]) -> list[str]:
    word = _bowl_word(case)
    return [
        f"{word[:1].upper()}{word[1:]} stays {grams(way.total_g)} g in all, every"
        f"{' known' if way.unknown else ''} figure in its usual range: of all such splits the one "
        "closest to the plan.",
        _moved(case, way),
    ]


def _follow(case: Case, way: Way, _: dict[str, Way]) -> list[str]:
    return [f"Everything else ×{as_text(way.factor, 4)}: {_rest(case, way)}.", *_in_tin(way)]


def _larger(case: Case, way: Way, _: dict[str, Way]) -> list[str]:
    bowl = case.bowls.slip
    names = "" if bowl is None else _listed([case.slip.lines[n].name for n in bowl.added] or [""])
    why = f"No jar, because {names} lies in the same bowl: the whole cake grows." if names else ""
    eggs = f": {egg_text(case, way)}" if way.eggs.mass_g else ""
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
    parts = ", ".join((*small, egg_text(case, way)))
    fits = "" if way.tin is None else _fitting(way.tin)
    return [f"Of it the second cake gets ×{as_text(way.factor, 4)}: {parts}.", fits]


def _down(case: Case, way: Way, _: dict[str, Way]) -> list[str]:
    eggs = f": {egg_text(case, way)}" if way.eggs.mass_g else ""
    said = [f"All of it ×{as_text(way.factor, 4)}{eggs}."]
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


def _outside(case: Case, way: Way) -> str:
    """What leaves its usual range, what the scale's step alone puts there, and another basis."""
    said = []
    if way.balance.family != case.judge.plan.family and way.balance.family is not None:
        kind = family(way.balance.family)
        said.append(f"With these grams it is judged as a {kind.label}, on {kind.basis}.")
    if way.outside:
        said.append(f"Outside: {short(way.outside)}")
    known = {each.code for each in (*way.outside, *case.judge.plan.findings)}
    by_step = [each for each in way.findings if each.code not in known]
    if by_step:
        said.append(f"By the step of the scale alone: {short(by_step)}")
    return " ".join(said)


def _unknown(case: Case, way: Way) -> str:
    """What nobody can say: lines without grams, and the figures they count into."""
    names = [line.name for line in case.slip.lines if line.mass_g is None]
    said = f"Not known: {', '.join(label.lower() for label in way.unknown)}." if way.unknown else ""
    if not names or way.kind not in GROWING:
        return said
    goes = "goes" if len(names) == 1 else "go"
    grown = f"{_listed(names)} {goes} with it, ×{as_text(way.factor, 4)} of what you take."
    return f"{said} {grown[:1].upper()}{grown[1:]} The depth is not known.".strip()


def short(findings: Sequence[Finding]) -> str:
    """Findings in a few words: each figure and its usual range.

    >>> short(())
    ''
    """
    return " ".join(f"{each.text.partition('. ')[0].rstrip('.')}." for each in findings)
