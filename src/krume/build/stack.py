"""What lies where in a torte: storeys from the bottom up, each a piece with what is on it."""

import re
from dataclasses import dataclass

from krume.base import Notice, Option, Problem, as_text
from krume.build.plan_lines import Component, TortePlan

_ON_PIECE = ("on the layer", "on each layer", "between the layers", "on the sheet", "in the shell")


@dataclass(frozen=True, slots=True)
class Spread:
    """What lies on one piece: a component, with its grams there where it goes by a bare mass."""

    component: Component
    mass_g: float | None


@dataclass(frozen=True, slots=True)
class Storey:
    """One piece, counted from the bottom, and what lies on it, syrup first."""

    number: int
    piece: Component
    on: tuple[Spread, ...]


@dataclass(frozen=True, slots=True)
class Stack:
    """The order of a torte from the bottom up; `outside` is what goes on top and around."""

    kind: str
    storeys: tuple[Storey, ...]
    outside: tuple[Component, ...]
    problems: tuple[Problem, ...] = ()
    notices: tuple[Notice, ...] = ()


def stack_of(plan: TortePlan) -> Stack:
    """Order of a plan's components from the bottom up; what cannot be placed is asked."""
    pieces = tuple(c for c in plan.components if c.piece is not None)
    expanded = [piece for piece in pieces for _ in range(piece.count or 0)]
    spread = [c for c in plan.components if c.piece is None]
    problems = [*_pieces_asked(plan, pieces), *_places_asked(plan, spread, expanded)]
    refused = {problem.where for problem in problems}
    placed = [c for c in spread if f"line {c.number}" not in refused]
    storeys = tuple(
        Storey(index + 1, piece, tuple(_on(plan, placed, expanded, index)))
        for index, piece in enumerate(expanded)
    )
    outside = tuple(c for c in placed if c.place not in _ON_PIECE and c.place is not None)
    notices = tuple(n for c in placed for n in _shared(c, expanded))
    return Stack(_kind(plan, pieces), storeys, outside, tuple(problems), notices)


def _kind(plan: TortePlan, pieces: tuple[Component, ...]) -> str:
    if any(piece.piece == "tier" for piece in pieces):
        return "tiers"
    if any(piece.piece == "shell" for piece in pieces):
        return "tart"
    if any(piece.rolled_from is not None for piece in pieces):
        return "roll"
    return "stacked" if plan.ring is None else "ring"


def _pieces_asked(plan: TortePlan, pieces: tuple[Component, ...]) -> list[Problem]:
    if not pieces:
        where = plan.components[0].number if plan.components else 1
        ask = "No layer, sheet or shell was found. What does it stand on? Such as: 3 layers of F1, "
        return [Problem("no-piece", f"line {where}", plan.name or "", f"{ask}14 mm")]
    if any(piece.piece == "tier" for piece in pieces):
        return _tiers_asked(pieces)
    alone = [p for p in pieces if p.piece == "shell" or p.rolled_from is not None]
    if not alone or (len(pieces) == 1 and pieces[0].count in (1, None)):
        return []
    odd = alone[0]
    one = re.sub(r"^\S+\s+(sheet|shell)s?", r"1 \1", odd.read, flags=re.IGNORECASE)
    ask = "A roll or a tart is one piece: one sheet or one shell, and no layers beside it."
    options = (Option("One of it", one),) if len(pieces) == 1 else ()
    return [Problem("one-piece", f"line {odd.number}", odd.read, f"{ask} How many is it?", options)]


def _tiers_asked(pieces: tuple[Component, ...]) -> list[Problem]:
    other = next((piece for piece in pieces if piece.piece != "tier"), None)
    if other is None:
        return []
    ask = (
        "Tiers stand on one another, each a torte with a text of its own. Write this line in the "
        "text of its torte, and name that torte here, such as: 1 tier of T1"
    )
    return [Problem("tier-beside-layer", f"line {other.number}", other.read, ask)]


def _places_asked(
    plan: TortePlan, spread: list[Component], pieces: list[Component]
) -> list[Problem]:
    found = [_place_asked(component, plan, pieces) for component in spread]
    return [problem for problem in found if problem is not None]


def _place_asked(component: Component, plan: TortePlan, pieces: list[Component]) -> Problem | None:
    if not pieces or component.place is None or component.count is None:
        return None
    wanted = {"on the sheet": "sheet", "in the shell": "shell"}.get(component.place)
    if wanted is not None and all(piece.piece != wanted for piece in pieces):
        other = "on each layer" if wanted == "sheet" else "on top"
        return _ask_place(component, f"The torte has no {wanted}.", (other,))
    if component.place == "between the layers" and len(pieces) == 1:
        return _ask_place(component, "One layer has nothing between.", ("on the layer", "on top"))
    if component.place == "on the layer" and len(pieces) > 1 and _below(component, plan) is None:
        return _ask_place(component, f"There are {len(pieces)} layers.", ("on each layer",))
    return _count_asked(component, plan, pieces)


def _ask_place(component: Component, why: str, places: tuple[str, ...]) -> Problem:
    options = tuple(
        Option(place, component.read.replace(component.place or "", place)) for place in places
    )
    where = f"line {component.number}"
    return Problem("place-unclear", where, component.read, f"{why} Where does it go?", options)


def _count_asked(component: Component, plan: TortePlan, pieces: list[Component]) -> Problem | None:
    count = component.count or 1
    if component.place not in _ON_PIECE or count == 1:
        return None
    places = sum(_lies_on(component, plan, pieces, index) for index in range(len(pieces)))
    if count == places:
        return None
    options = (Option(f"{places} of it", re.sub(r"^\S+", str(places), component.read, count=1)),)
    ask = f"{count} are written, and there are {places} places {component.place}. How many is it?"
    return Problem("count-differs", f"line {component.number}", component.read, ask, options)


def _below(component: Component, plan: TortePlan) -> Component | None:
    """The single layer a line stands under in the text; None where that is no single one."""
    above = [c for c in plan.components if c.piece and c.number < component.number]
    return above[-1] if above and above[-1].count == 1 else None


def _lies_on(component: Component, plan: TortePlan, pieces: list[Component], index: int) -> bool:
    if component.place == "between the layers":
        return index + 1 < len(pieces)
    if component.place == "on the layer":
        return len(pieces) == 1 or pieces[index] is _below(component, plan)
    return component.place in _ON_PIECE


def _on(
    plan: TortePlan, spread: list[Component], pieces: list[Component], index: int
) -> list[Spread]:
    found = [c for c in spread if _lies_on(c, plan, pieces, index)]
    return [Spread(c, _share_g(c, pieces)) for c in sorted(found, key=_turn)]


def _turn(component: Component) -> int:
    """Syrup soaks in first; what lies between the layers comes last."""
    if component.g_per_cm2 is not None:
        return 0
    return 2 if component.place == "between the layers" else 1


def _share_g(component: Component, pieces: list[Component]) -> float | None:
    if component.mass_g is None or not _is_shared(component, pieces):
        return component.mass_g
    return component.mass_g / (len(pieces) - 1)


def _is_shared(component: Component, pieces: list[Component]) -> bool:
    gaps = len(pieces) - 1
    return component.place == "between the layers" and component.count == 1 and gaps > 1


def _shared(component: Component, pieces: list[Component]) -> tuple[Notice, ...]:
    if component.mass_g is None or not _is_shared(component, pieces):
        return ()
    gaps = len(pieces) - 1
    each = as_text(component.mass_g / gaps, 1)
    text = f"{as_text(component.mass_g, 1)} g are taken as all of it: {each} g in each of {gaps}"
    where = f"line {component.number}"
    return (Notice("mass-shared", f"{text} places between the layers.", where),)
