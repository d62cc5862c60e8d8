"""Formulas built line by line for tests, without a reader: what each line is stands here."""

from dataclasses import replace
from typing import Any

from krume.base import Interval
from krume.design.formula import BakedLine, Formula, Line
from krume.size import Tin

EGG, WHITE, YOLK = "egg-whole-fresh", "egg-white-fresh", "egg-yolk-fresh"
RICE, SWEET_RICE = "flour-rice-white", "flour-rice-sweet-fdc"
BUCKWHEAT, TEFF, MILLET = "flour-buckwheat-whole", "teff-grain-raw", "flour-millet"
POTATO, MAIZE = "starch-potato-jp", "starch-corn"
SUGAR, ICING = "sugar-granulated", "sugar-powdered"
BUTTER, OIL = "butter-82-ciqual", "oil-sunflower-linoleic"
LEMON, ORANGE, ZEST = "lemon-juice", "orange-juice", "lemon-peel"
SALT, VANILLA, WATER, MILK = "salt", "vanilla-extract", "water-tap", "milk-whole"
HAZELNUT, WALNUT = "hazelnuts", "walnuts-english"
XANTHAN, PSYLLIUM, POWDER = "xanthan-gum", "psyllium-husk", "baking-powder-gf"
GELATINE, CREAM, YOGHURT = "gelatin-dry", "cream-heavy-whipping", "yogurt-greek-plain-whole"
CHOCOLATE, CURRANT = "chocolate-dark-60-69", "currant-black-raw"
TARTAR = "cream-of-tartar"

ROUND = Tin("round 20 x 7 cm", "round", diameter_cm=20.0, height_cm=7.0)
SHEET = Tin("13x9 in", "sheet", length_cm=33.02, width_cm=22.86, height_cm=2.54)
TART_RING = Tin("ring 24 x 2.5 cm", "ring", diameter_cm=24.0, height_cm=2.5)
EU_M_G, EU_L_G = 51.0, 60.0

Weighed = tuple[str | None, float | Interval | None]


def line(number: int, key: str | None, mass_g: float | Interval | None, **more: Any) -> Line:
    """A weighed line; an interval is a mass that is not settled, None one that nobody wrote."""
    settled = mass_g if isinstance(mass_g, int | float) else None
    made = Line(
        read=f"{mass_g} g {key}",
        number=number,
        amount=mass_g,
        unit="g",
        mass_g=settled,
        basis="weighed",
        name=key or "fonio husk stuff",
        ingredient=key,
        mass_interval_g=mass_g if isinstance(mass_g, Interval) else None,
    )
    return replace(made, **more)


def eggs(number: int, count: float, *, size: str = "eu-m", each_g: float = EU_M_G) -> Line:
    """Whole eggs of a size, separated."""
    read = f"{count} eggs, separated"
    return line(
        number, EGG, count * each_g, read=read, amount=count, unit="each", basis="egg",
        egg_size=size,
    )  # fmt: skip


def parts(number: int, count: float, part: str, each_g: float) -> Line:
    """Whites or yolks by count."""
    key = WHITE if part == "white" else YOLK
    return line(
        number, key, count * each_g, read=f"{count} egg {part}s", amount=count, unit="each",
        basis="egg", part=part, egg_size="eu-m",
    )  # fmt: skip


def formula(
    *lines: Weighed | Line,
    name: str = "A formula",
    family: str | None = None,
    tin: Tin | None = ROUND,
    steps: tuple[str, ...] = (),
    baked_mm: float | None = None,
    density_g_ml: float | None = None,
) -> Formula:
    """A formula of weighed lines in the order given."""
    made = tuple(
        each if isinstance(each, Line) else line(number, *each)
        for number, each in enumerate(lines, start=3)
    )
    return Formula(
        name,
        made,
        steps=steps,
        tin=tin,
        family=family,
        family_basis="stated" if family else "unknown",
        baked=BakedLine("Baked:", baked_mm) if baked_mm is not None else None,
        density_g_ml=density_g_ml,
    )


F1 = formula(
    (BUCKWHEAT, 50), (RICE, 12), (POTATO, 34), (SWEET_RICE, 8), (HAZELNUT, 40), eggs(8, 5),
    (SUGAR, 135), (SALT, 1), (LEMON, 4), (VANILLA, 3), name="Orl hazel sponge",
)  # fmt: skip
F2 = formula(
    (RICE, 40), (TEFF, 20), (POTATO, 30), (SWEET_RICE, 9), (MAIZE, 6), eggs(8, 5), (SUGAR, 130),
    (BUTTER, 20), (SALT, 1), (LEMON, 4), (VANILLA, 4), name="Tidewick vanilla sponge",
)  # fmt: skip
F3 = formula(
    (RICE, 26), (MILLET, 16), (POTATO, 22), (SWEET_RICE, 6), (XANTHAN, 0.25), eggs(8, 4),
    (SUGAR, 100), (OIL, 10), (LEMON, 10), (ZEST, 3), (SALT, 0.75),
    name="Lighthouse lemon roulade", tin=SHEET, baked_mm=13.0,
)  # fmt: skip
F4 = formula(
    (WALNUT, 115), (RICE, 20), (POTATO, 16), (SWEET_RICE, 4), eggs(7, 4, size="eu-l", each_g=60.0),
    (SUGAR, 120), (SALT, 1), (LEMON, 4), (ZEST, 2), name="Net-loft walnut sponge",
)  # fmt: skip
F5 = formula(
    (RICE, 42), (MILLET, 12), (POTATO, 28), (SWEET_RICE, 8), (POWDER, 2.7),
    parts(8, 4, "yolk", 17.5), parts(9, 5, "white", 33.5), (SUGAR, 108), (OIL, 45), (ORANGE, 65),
    (ZEST, 4), (SALT, 1), name="Orange sponge",
)  # fmt: skip
F6 = formula(
    (BUTTER, 150), (SUGAR, 150), line(5, EGG, 153.0, amount=3, unit="each", egg_size="eu-m"),
    (RICE, 64), (TEFF, 22), (POTATO, 52), (SWEET_RICE, 12), (POWDER, 4.8), (XANTHAN, 0.4),
    (MILK, 30), (VANILLA, 4), (SALT, 1.5), name="Harbour sponge",
)  # fmt: skip
F7 = formula(
    (RICE, 100), (BUCKWHEAT, 50), (POTATO, 50), (BUTTER, 110), (ICING, 65),
    line(8, EGG, 51.0, amount=1, unit="each", egg_size="eu-m"), (SALT, 1.5), (PSYLLIUM, 4),
    name="Buckwheat base", tin=TART_RING,
)  # fmt: skip
C1 = formula(
    (MILK, 400), parts(4, 5, "yolk", 17.5), (SUGAR, 80), (MAIZE, 35), (BUTTER, 40), (SALT, 1),
    (GELATINE, 8), (WATER, 40), (CREAM, 250), tin=None, density_g_ml=0.75,
)  # fmt: skip
C2 = formula(
    (CREAM, 420), (YOGHURT, 260), (SUGAR, 85), (LEMON, 40), (GELATINE, 8), (WATER, 40),
    tin=None, density_g_ml=0.72,
)  # fmt: skip
C3 = formula((CHOCOLATE, 180), (CREAM, 180), (BUTTER, 20), tin=None, density_g_ml=1.15)
C4 = formula((CURRANT, 300), (SUGAR, 60), (GELATINE, 5), (WATER, 25), tin=None, density_g_ml=1.08)
C5 = formula(
    line(3, WHITE, 120, part="white"), (SUGAR, 190), (BUTTER, 300), (SALT, 1), (VANILLA, 4),
    tin=None, density_g_ml=0.80,
)  # fmt: skip
S1 = formula((SUGAR, 100), (WATER, 100), (LEMON, 20), tin=None)
