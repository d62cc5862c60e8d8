"""What a torte needs to know of a formula, asked at the place in that formula's text."""

from krume.base import Option, Problem, as_text
from krume.build.figures import figure
from krume.build.outline import floor_of
from krume.build.plan_lines import Component, TortePlan
from krume.build.torte import ComponentFormula, Torte


def not_found(component: Component) -> Problem:
    """Question about a component whose formula is not at hand."""
    ask = f"There is no formula called {component.what}. Correct the name, or add the formula."
    return Problem("formula-missing", f"line {component.number}", component.read, ask)


def piece_asked(part: ComponentFormula, component: Component) -> tuple[Problem, ...]:
    """What is not known of a baked formula: its tin, and how high and heavy it bakes."""
    asked: list[Problem] = []
    if part.tin is None or floor_of(part.tin) is None:
        ask = (
            f"Which tin is {part.name} baked in? Layers need upright walls. "
            "Add to it, such as: Tin: round 20 x 7 cm"
        )
        asked.append(Problem("tin-missing", _after(part), part.title, ask))
    is_shell = component.piece == "shell"
    known = (part.baked_height_mm, part.baked_mass_g)
    if None in known or (is_shell and part.baked_thickness_mm is None):
        asked.append(_baked(part, is_shell=is_shell))
    elif part.baked_thickness_mm is not None and not is_shell:
        asked.append(_is_a_shell(part, component))
    return tuple(asked)


def roll_asked(part: ComponentFormula, component: Component) -> tuple[Problem, ...]:
    """Question about a cake that is to be rolled and is round."""
    floor = None if part.tin is None else floor_of(part.tin)
    if component.rolled_from is None or floor is None or floor.diameter_cm is None:
        return ()
    ask = f"The cake of {part.name} is round, so it has no side to roll from. Is it a layer?"
    height = "" if component.height_mm is None else f", {as_text(component.height_mm, 2)} mm"
    options = (Option("One layer", f"1 layer of {component.what}{height}"),)
    return (Problem("roll-round", f"line {component.number}", component.read, ask, options),)


def _baked(part: ComponentFormula, *, is_shell: bool) -> Problem:
    example = "shell 25 mm high, 3 mm thick, 214 g" if is_shell else "50 mm high, 482 g"
    ask = (
        f"How high and how heavy is {part.name}, baked and cold? Without both no piece of it can "
        f"be weighed. Add to it, such as: Baked: {example}"
    )
    return Problem("baked-missing", _after(part), part.title, ask)


def _is_a_shell(part: ComponentFormula, component: Component) -> Problem:
    ask = f"{part.name} bakes as a shell, so no layers are cut from it. Is it its shell?"
    options = (Option("One shell", f"1 shell of {component.what}"),)
    return Problem("piece-is-shell", f"line {component.number}", component.read, ask, options)


def density_asked(part: ComponentFormula) -> Problem:
    """Question about what a cream weighs, where height and mass are tied by it."""
    ask = (
        f"How much does 1 ml of {part.name} weigh, finished? Fill a cup of known volume and weigh "
        "it. Add to it, such as: Density: 0.75 g/ml"
    )
    return Problem("density-missing", _after(part), part.title, ask)


def ring_asked(plan: TortePlan, stack_mm: float | None) -> Problem:
    """Question about the height of a ring, without which nobody knows whether it holds."""
    read = "" if plan.ring is None else plan.ring.read
    number = next((line.number for line in plan.source_lines if line.text == read), 1)
    options: tuple[Option, ...] = ()
    if stack_mm is not None and plan.ring is not None and plan.ring.diameter_cm is not None:
        height, across = as_text(stack_mm / 10, 2), as_text(plan.ring.diameter_cm, 2)
        options = (Option("As high as the torte", f"Ring: {across} x {height} cm"),)
    ask = "How high is the ring?"
    return Problem("ring-height-missing", f"line {number}", read, ask, options)


def _after(part: ComponentFormula) -> str:
    return f"{part.name} after line 1"


def goods_asked(part: ComponentFormula, component: Component) -> Problem:
    """Question about how high fruit lies between layers: it is loose, so no sum knows it."""
    ask = f"How high does it lie? {part.title} is loose: no sum knows its height."
    options = tuple(
        Option(f"{height} mm", f"{component.read}, {height} mm") for height in ("10", "12", "15")
    )
    return Problem("fruit-height-missing", f"line {component.number}", component.read, ask, options)


def weight_asked(part: ComponentFormula, component: Component) -> Problem:
    """Question about how heavy one piped rosette or one decoration is."""
    count = component.count or 1
    ask = (
        f"How heavy is {'one of them' if count > 1 else 'it'}? Weigh ten and share. Type such as: "
        f"{count} x 8 g {part.name} {component.place or 'on top'}"
    )
    return Problem("decoration-mass-missing", f"line {component.number}", component.read, ask)


def dome_asked(component: Component, *, is_round: bool) -> Problem:
    """Question about a dome that cannot be one, or about what would lie on it."""
    where = f"line {component.number}"
    if not is_round:
        flat = component.read.replace(", domed", "")
        ask = "Only a round torte is domed. Is it flat?"
        return Problem("dome-not-round", where, component.read, ask, (Option("Flat", flat),))
    ask = "It lies on a dome, where only a coat, a cover or decorations stay. Where does it go?"
    options = (
        Option("Around and on top", component.read.replace("on top", "around and on top")),
        Option("Piped on it", f"{component.read}, piped"),
    )
    return Problem("dome-covered", where, component.read, ask, options)


def high_asked(torte: Torte) -> tuple[Problem, ...]:
    """Question about the line that makes a torte higher than any is."""
    most = figure("most-high").value
    if torte.height_mm is None or torte.height_mm <= most:
        return ()
    lying = [layer for layer in torte.layers if layer.height_mm is not None]
    layer = max(lying, key=lambda each: each.height_mm or 0.0)
    ask = (
        f"The torte would be {as_text(torte.height_mm, 0)} mm high, and {layer.of} alone "
        f"{as_text(layer.height_mm or 0.0, 0)} mm of it. A torte is up to {as_text(most)} mm high. "
        "Is it g, not kg, or mm, not cm? Correct its line."
    )
    return (Problem("torte-too-high", f"line {layer.line}", layer.of, ask),)
