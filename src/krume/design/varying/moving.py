"""Which lines may move for a variation: one for the fat, one for the water, one for the sugar."""

from krume.design.balance import Balance
from krume.design.formula import Line
from krume.design.varying.closing import Mover
from krume.design.varying.drafting import Draft, Wish, new_line
from krume.design.varying.matching import role_of
from krume.design.varying.parts_of import HELD, Holding, known, maybe, per_gram
from krume.design.varying.rules import SwapRule
from krume.design.varying.weights import weights_g
from krume.properties import constants

PLAIN_OIL = "oil-sunflower-linoleic"
PLAIN_OIL_NAME = "sunflower oil"
WATER = "water-tap"
_TABLE = "varying.csv"
_LIQUIDS = ("water", "liquid", "dairy")


def movers_of(
    drafts: list[Draft],
    rules: tuple[SwapRule, ...],
    gaps: Holding,
    before: Balance,
    wish: Wish,
) -> list[tuple[int, Mover]]:
    """Lines that may move, one for each thing that is off by enough; new lines are added."""
    said = {word for rule in rules for word in rule.moves}
    wanted = {word.removesuffix("-always").removesuffix("-there") for word in said}
    may_be_new = bool(said & {"fat", "fat-always"}) or wish.fat is not None
    weights = weights_g(before)
    found: list[tuple[int, Mover]] = []
    if "swap" in wanted:
        found += _swapped(drafts, rules, wish)
    for word, quantity in (("fat", "fat"), ("liquid", "water"), ("sugar", "sugar")):
        off = dict(zip(HELD, gaps.values(), strict=False))[quantity]
        least = constants(_TABLE)[f"moves-from-{quantity}"] / 100 * weights[quantity]
        if f"{word}-always" in said:
            least = 0.0
        answered = {mover.answers for _, mover in found}
        if word not in wanted or off is None or HELD.index(quantity) in answered:
            continue
        if abs(off) < max(least, wish.step_g / 2):
            continue
        place = _place(drafts, word, off, wish, may_be_new=may_be_new)
        if place is not None:
            found.append((place, _mover(drafts, place, word, quantity, before, wish)))
    return found


def _swapped(
    drafts: list[Draft], rules: tuple[SwapRule, ...], wish: Wish
) -> list[tuple[int, Mover]]:
    """The first new line, where its rule lets it answer for what it stands in for."""
    answers = {"fat": "fat", "sugar": "sugar", "egg-bind": "water"}
    rule = next(rule for rule in rules if "swap" in rule.moves)
    roles = {"fat": ("fat",), "sugar": ("sugar",), "egg-bind": ("water",)}[rule.key]
    for at, draft in enumerate(drafts):
        if draft.comes and draft.line is not None and role_of(draft.line) in roles:
            most = constants(_TABLE)["most-times"] * draft.mass_g
            per_g = _per_g(draft.line, wish)
            return [(at, Mover("swap", per_g, HELD.index(answers[rule.key]), draft.mass_g, most))]
    return []


def _per_g(line: Line, wish: Wish) -> tuple[float, ...]:
    """What a gram of a mover holds; of what its row leaves blank it answers for nothing."""
    found = maybe(line.ingredient, wish.own)
    held = Holding() if found is None else per_gram(found)
    return tuple(value or 0.0 for value in held.values()[: len(HELD)])


def _place(
    drafts: list[Draft], word: str, off_g: float, wish: Wish, *, may_be_new: bool
) -> int | None:
    """Place of the line that moves for a thing: one that is there, else a new one."""
    if word == "fat":
        return _fat_place(drafts, off_g, wish) if may_be_new else _largest(drafts, ("fat",))
    roles = ("sugar",) if word == "sugar" else _LIQUIDS
    place = _largest(drafts, roles)
    if place is None and word == "liquid" and off_g > 0:
        drafts.append(Draft(None, new_line(WATER, "water", 0.0), 0.0))
        return len(drafts) - 1
    return place


def _fat_place(drafts: list[Draft], off_g: float, wish: Wish) -> int | None:
    if wish.fat == "none":
        return None
    if wish.fat is not None:
        place = _of_key(drafts, wish.fat)
        if place is not None or off_g < 0:
            return place if place is not None else _largest(drafts, ("fat",))
        return _new_fat(drafts, wish.fat, wish.fat_name or known(wish.fat, wish.own).label_name)
    place = _largest(drafts, ("fat",))
    if place is None and off_g > 0:
        return _new_fat(drafts, PLAIN_OIL, PLAIN_OIL_NAME)
    return place


def _of_key(drafts: list[Draft], key: str) -> int | None:
    places = (at for at, d in enumerate(drafts) if d.line and d.line.ingredient == key)
    return next(places, None)


def _new_fat(drafts: list[Draft], key: str, name: str) -> int:
    drafts.append(Draft(None, new_line(key, name, 0.0), 0.0))
    return len(drafts) - 1


def _largest(drafts: list[Draft], roles: tuple[str, ...]) -> int | None:
    """The heaviest line of some roles, a swapped-in one only where there is no other."""
    fitting = [
        (not draft.comes, draft.mass_g, -at)
        for at, draft in enumerate(drafts)
        if draft.line is not None
        and draft.line.mass_g is not None
        and draft.line.part is None
        and role_of(draft.line) in roles
    ]
    return -max(fitting)[2] if fitting else None


def _mover(
    drafts: list[Draft], place: int, word: str, quantity: str, before: Balance, wish: Wish
) -> Mover:
    draft = drafts[place]
    total = before.total_g if isinstance(before.total_g, float | int) else draft.mass_g
    times, share = constants(_TABLE)["most-times"], constants(_TABLE)["most-new"] / 100
    most = max(times * draft.mass_g, share * total)
    per_g = _per_g(draft.line, wish) if draft.line is not None else ()
    return Mover(word, per_g, HELD.index(quantity), draft.mass_g, most)
