"""The bowl of a slip as a bar: what lies in it by its grams, what is over, what is not in yet."""

from dataclasses import dataclass

from krume.usecases import SlipHeld, SlipResult

WIDTH = 326.0
_PER_SIGN = {"planned": 8.0, "over": 8.0, "rest": 6.4}
_PADDING = 14.0


@dataclass(frozen=True, slots=True)
class Segment:
    """A stretch of the bar: `planned`, `over` or `rest`; a short one has no room for its name."""

    kind: str
    left: float
    width: float
    name: str
    has_room: bool


def bar(slip: SlipResult) -> tuple[Segment, ...]:
    """Stretches of the bar, from the left; none where no bowl is known."""
    if slip.bowl is None:
        return ()
    names = (*slip.bowl.lines, *slip.bowl.added)
    held = [each for each in slip.in_bowl if each.name in names and each.weighed_g]
    grams = [stretch for each in held for stretch in _grams(each)]
    rest = slip.bowl.planned_g - sum(min(e.weighed_g or 0.0, e.planned_g or 0.0) for e in held)
    if rest > 0:
        grams.append(("rest", rest, "not yet weighed"))
    return _placed(grams)


def _grams(held: SlipHeld) -> list[tuple[str, float, str]]:
    weighed, over = held.weighed_g or 0.0, max(held.over_g or 0.0, 0.0)
    planned = [("planned", weighed - over, held.name)] if weighed > over else []
    return [*planned, ("over", over, held.name)] if over else planned


def _placed(grams: list[tuple[str, float, str]]) -> tuple[Segment, ...]:
    whole = sum(mass for _, mass, _ in grams)
    found, left = [], 0.0
    for kind, mass, name in grams:
        width = WIDTH * mass / whole
        label = name.removesuffix(" flour").removesuffix(" starch")
        has_room = width >= _PER_SIGN[kind] * len(label) + _PADDING
        found.append(Segment(kind, round(left, 1), round(width, 1), label, has_room))
        left += width
    return tuple(found)
