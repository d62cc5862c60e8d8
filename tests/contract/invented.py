"""Formulas invented from a seed: plausible sponges with odd grams, for the oracles to chew on."""

from random import Random
from typing import NamedTuple

GRAINS = (
    "white rice flour", "brown rice flour", "teff flour", "buckwheat flour", "millet flour",
    "sorghum flour", "quinoa flour",
)  # fmt: skip
STARCHES = ("potato starch", "maize starch", "tapioca starch")
SWEET = "sweet rice flour"
STEPS = (
    "Weigh the flours into one bowl, sift twice.\n"
    "Beat the yolks with half of the sugar.\n"
    "Whisk the whites with the salt and the lemon juice, add the rest of the sugar.\n"
    "Fold the flours in.\n"
    "Bake 30 to 35 minutes, core 95 C.\n"
)


class Sponge(NamedTuple):
    """An invented formula: its text, and the grams of its blend by name."""

    text: str
    blend: dict[str, float]
    eggs: int
    sugar_g: float


def sponge(seed: int, *, eggs_line: str = "{n} eggs, medium, separated") -> Sponge:
    """A separated sponge with three to six flours and starches, inside or near its bands."""
    chance = Random(seed)  # noqa: S311
    blend = {name: float(chance.randint(8, 50)) for name in chance.sample(GRAINS, 2)}
    blend |= {name: float(chance.randint(8, 30)) for name in chance.sample(STARCHES, 1)}
    if chance.random() < HALF:
        blend[SWEET] = chance.randint(12, 24) / 2
    if chance.random() < HALF:
        blend[next(s for s in STARCHES if s not in blend)] = float(chance.randint(3, 12))
    flour = sum(blend.values())
    eggs = max(2, round(flour * chance.uniform(2.2, 3.0) / MEDIUM_G))
    sugar = float(round(eggs * MEDIUM_G * chance.uniform(0.46, 0.6)))
    lines = [f"{grams:g} g {name}" for name, grams in blend.items()]
    lines += [eggs_line.format(n=eggs), f"{sugar:g} g caster sugar", "1 g fine salt"]
    lines += [f"{chance.randint(2, 5)} g lemon juice"]
    head = f"Invented sponge {seed}\nTin: round 20 x 7 cm\nOven: 170 C, no fan\nEggs: EU sizes\n"
    return Sponge(f"{head}\n" + "\n".join(lines) + f"\n\n{STEPS}", blend, eggs, sugar)


HALF = 0.5
MEDIUM_G = 51
