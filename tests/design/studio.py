"""Formulas of the demo studio, built by hand: the weighing order is tested without the reader."""

from dataclasses import dataclass
from typing import Any

from krume.base import Interval
from krume.design import Formula, Line, OvenLine, Use
from krume.pantry import egg_size, find
from krume.size import Tin

EGGS = "eu-m"


@dataclass(frozen=True)
class Named:
    """An amount a step names: step, the line's name, grams (None is all or the rest), words."""

    step: int
    line: str
    mass_g: float | None = None
    words: str = ""


def item(mass_g: float | None, name: str, **more: Any) -> Line:
    """A line weighed in grams; a comma ends the name and begins the note."""
    bare, _, note = name.partition(", ")
    found = find(bare)
    read = f"{mass_g:g} g {name}" if mass_g is not None else f"a pinch of {name}"
    return Line(
        **{
            "read": read,
            "number": 0,
            "amount": mass_g,
            "unit": "g",
            "mass_g": mass_g,
            "basis": "weighed" if mass_g is not None else "unknown",
            "name": bare,
            "ingredient": found.key,
            "note": note or None,
            **more,
        }
    )


def eggs(count: float, *, part: str | None = None, size: str = EGGS, note: str = "") -> Line:
    """Eggs by count and size."""
    each = egg_size(size).part_g(part)
    word = "egg" if part is None else f"egg {part}"
    return Line(
        read=f"{count:g} {word}s, {note}",
        number=0,
        amount=count,
        unit="each",
        mass_g=count * each.best,
        basis="egg",
        name=f"{word}s",
        ingredient=f"egg-{part or 'whole'}-fresh",
        part=part,
        note=note or None,
        mass_interval_g=each.times(count),
        egg_size=size,
    )


def formula(
    name: str,
    lines: tuple[Line, ...],
    steps: tuple[str, ...] = (),
    named: tuple[Named, ...] = (),
    **more: Any,
) -> Formula:
    """A formula whose steps name amounts of its lines."""
    at = {line.name: number for number, line in enumerate(lines)}
    uses = tuple(Use(n.step, at[n.line], n.mass_g, n.words or n.line) for n in named)
    return Formula(name=name, lines=lines, steps=steps, uses=uses, **more)


F1 = formula(
    "Orl hazel sponge",
    (
        item(50, "buckwheat flour"),
        item(12, "white rice flour"),
        item(34, "potato starch"),
        item(8, "sweet rice flour"),
        item(40, "ground hazelnuts, toasted"),
        eggs(5, note="medium, separated"),
        item(135, "caster sugar"),
        item(1, "fine salt"),
        item(4, "lemon juice"),
        item(3, "vanilla extract"),
    ),
    (
        "Sift the flours and the starch together twice and stir in the hazelnuts.",
        "Beat the yolks with 60 g of the sugar and the vanilla until pale and thick.",
        (
            "Whisk the whites with the salt and lemon juice, add the remaining 75 g sugar in three"
            " parts, stop at soft curved peaks."
        ),
        "Fold a third of the whites into the yolks, then the dry mix, then the rest of the whites.",
        "Bake 34 to 40 minutes, core 95 C.",
        "Cool in the tin 10 minutes, then on a rack.",
    ),
    (
        Named(0, "buckwheat flour", words="flours"),
        Named(0, "ground hazelnuts", words="hazelnuts"),
        Named(1, "caster sugar", 60, "sugar"),
        Named(1, "vanilla extract", words="vanilla"),
        Named(2, "fine salt", words="salt"),
        Named(2, "lemon juice"),
        Named(2, "caster sugar", 75, "sugar"),
    ),
    family="separated",
    tin=Tin("round 20 x 7 cm", "round", diameter_cm=20, height_cm=7),
    oven=OvenLine("170 C, no fan", 170.0, fan=False),
    bake_min=Interval(34, 37, 40),
    core_c=95.0,
    egg_size=EGGS,
)

F3 = formula(
    "Lighthouse lemon roulade",
    (
        item(26, "white rice flour"),
        item(16, "millet flour"),
        item(22, "potato starch"),
        item(6, "sweet rice flour"),
        item(0.25, "xanthan gum"),
        eggs(4, note="medium, separated"),
        item(100, "caster sugar"),
        item(10, "sunflower oil"),
        item(10, "lemon juice"),
        item(3, "lemon zest"),
        item(0.75, "fine salt"),
    ),
    (
        "Sift the flours with the xanthan twice.",
        "Beat the yolks with 40 g of the sugar, then the oil, 6 g of the juice and the zest.",
        (
            "Whisk the whites with the salt and the remaining 4 g of juice, add the remaining 60 g"
            " sugar, stop at soft peaks."
        ),
    ),
    (
        Named(0, "xanthan gum", words="xanthan"),
        Named(1, "caster sugar", 40, "sugar"),
        Named(1, "sunflower oil", words="oil"),
        Named(1, "lemon juice", 6, "juice"),
        Named(1, "lemon zest", words="zest"),
        Named(2, "fine salt", words="salt"),
        Named(2, "lemon juice", 4, "juice"),
        Named(2, "caster sugar", 60, "sugar"),
    ),
    family="roulade",
    egg_size=EGGS,
)

F4 = formula(
    "Net-loft walnut sponge",
    (
        item(115, "ground walnuts"),
        item(20, "white rice flour"),
        item(16, "potato starch"),
        item(4, "sweet rice flour"),
        eggs(4, size="eu-l", note="large, separated"),
        item(120, "caster sugar"),
        item(1, "fine salt"),
        item(4, "lemon juice"),
        item(2, "orange zest"),
    ),
    (
        "Toast the walnuts at 150 C for 8 minutes, cool fully, grind with 30 g of the sugar.",
        "Beat the yolks with 40 g of the sugar and the zest.",
        "Whisk the whites with salt and lemon juice, add the remaining 50 g sugar.",
        "Fold the walnuts and flours in with the whites in three turns.",
        "Bake 26 to 30 minutes, core 96 C.",
    ),
    (
        Named(0, "ground walnuts", words="walnuts"),
        Named(0, "caster sugar", 30, "sugar"),
        Named(1, "caster sugar", 40, "sugar"),
        Named(1, "orange zest", words="zest"),
        Named(2, "fine salt", words="salt"),
        Named(2, "lemon juice"),
        Named(2, "caster sugar", 50, "sugar"),
        Named(3, "ground walnuts", words="walnuts"),
    ),
    family="nut",
)

F5 = formula(
    "Orange chiffon",
    (
        item(42, "white rice flour"),
        item(12, "millet flour"),
        item(28, "potato starch"),
        item(8, "sweet rice flour"),
        item(2.7, "baking powder"),
        eggs(4, part="yolk"),
        eggs(5, part="white"),
        item(108, "caster sugar"),
        item(45, "sunflower oil"),
        item(65, "orange juice"),
        item(4, "orange zest"),
        item(1, "fine salt"),
    ),
    (
        "Sift the flours and baking powder.",
        "Whisk yolks, 30 g of the sugar, oil, juice and zest, then the flours until smooth.",
        "Whisk the whites with the salt and the remaining 78 g sugar to firm curved peaks.",
        "Fold in three turns and pour into the dry tin.",
        "Bake 42 to 48 minutes, core 97 C, hang upside down until cold.",
    ),
    (
        Named(0, "baking powder"),
        Named(1, "caster sugar", 30, "sugar"),
        Named(1, "sunflower oil", words="oil"),
        Named(1, "orange juice", words="juice"),
        Named(1, "orange zest", words="zest"),
        Named(1, "white rice flour", words="flours"),
        Named(2, "fine salt", words="salt"),
        Named(2, "caster sugar", 78, "sugar"),
    ),
    family="chiffon",
    tin=Tin(
        "tube 20 x 10 cm, hole 6 cm, not greased",
        "tube",
        diameter_cm=20,
        height_cm=10,
        hole_cm=6,
    ),
    oven=OvenLine("165 C, no fan", 165.0, fan=False),
    bake_min=Interval(42, 45, 48),
    core_c=97.0,
)

C1 = formula(
    "Vanilla custard cream",
    (
        item(400, "whole milk"),
        eggs(5, part="yolk"),
        item(80, "caster sugar"),
        item(35, "maize starch"),
        item(40, "butter"),
        item(1, "fine salt"),
        item(8, "powdered gelatine, 200 bloom"),
        item(40, "water"),
        item(250, "whipping cream, 35 % fat"),
    ),
    (
        "Soak the gelatine in the water 10 minutes.",
        "Boil milk, yolks, sugar, starch and salt, stirring; keep it boiling 1 minute.",
        "Off the heat stir in butter and gelatine.",
        "Spread shallow, cover on the surface, cool to 20 C within 2 hours.",
        "Whip the cream to soft peaks and fold in at 18 to 20 C.",
    ),
    (
        Named(0, "powdered gelatine", words="gelatine"),
        Named(0, "water"),
        Named(1, "whole milk", words="milk"),
        Named(1, "egg yolks", words="yolks"),
        Named(1, "caster sugar", words="sugar"),
        Named(1, "maize starch", words="starch"),
        Named(1, "fine salt", words="salt"),
        Named(2, "butter"),
        Named(2, "powdered gelatine", words="gelatine"),
        Named(4, "whipping cream", words="cream"),
    ),
    family="custard-lightened",
)

C2 = formula(
    "Set yoghurt cream",
    (
        item(420, "whipping cream, 35 % fat"),
        item(260, "thick yoghurt, 10 % fat"),
        item(85, "caster sugar"),
        item(40, "lemon juice"),
        item(8, "powdered gelatine, 200 bloom"),
        item(40, "water"),
    ),
    (
        "Soak the gelatine 10 minutes, melt at 45 to 60 C.",
        (
            "Stir a third of the yoghurt into the gelatine, then the rest with sugar and juice;"
            " it must be above 20 C."
        ),
        "Fold in the cream whipped to soft peaks when the yoghurt begins to thicken.",
    ),
    (
        Named(0, "powdered gelatine", words="gelatine"),
        Named(1, "thick yoghurt", words="yoghurt"),
        Named(1, "caster sugar", words="sugar"),
        Named(1, "lemon juice", words="juice"),
        Named(2, "whipping cream", words="cream"),
        Named(2, "thick yoghurt", words="yoghurt"),
    ),
    family="set-cream",
)

S1 = formula(
    "Lemon syrup",
    (item(100, "caster sugar"), item(100, "water"), item(20, "lemon juice")),
    family="syrup",
)
