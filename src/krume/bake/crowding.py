"""The loads of one oven as they stand on its shelves, and what neighbours take from a tin."""

import math
from collections.abc import Sequence
from dataclasses import dataclass, field

from krume.bake.batter import Around, Batter
from krume.bake.oven_air import OvenBox, oven_air_half_width, oven_air_value
from krume.size import Tin, area_cm2


@dataclass(frozen=True, slots=True)
class OvenLoad:
    """A load: `tins` alike, each with `batter`, in at a minute of one common clock.

    `out_min` is when it came out, None where it comes out when it is done. `around.rack` is its
    shelf. `gap_cm` is the room between its tins and their neighbours, None where nobody said.
    """

    batter: Batter
    tin: Tin
    tins: int = 1
    in_min: float = 0.0
    out_min: float | None = None
    around: Around = field(default_factory=Around)
    gap_cm: float | None = None

    def stay_min(self, done_min: float) -> float:
        """Minutes it is in: until it came out, else until it is done."""
        return done_min if self.out_min is None else max(0.0, self.out_min - self.in_min)


@dataclass(frozen=True, slots=True)
class Crowding:
    """What neighbours leave of a tin's surface heat, and the doubt of it as a logarithm."""

    factor: float
    ln_sd: float


def covered(load: OvenLoad, box: OvenBox) -> float:
    """Share of a shelf that one tin of a load covers, its hole too."""
    floor = area_cm2(load.tin) or 0.0
    if load.tin.shape == "tube":
        floor += math.pi / 4 * (load.tin.hole_cm or 0.0) ** 2
    return floor / (box.shelf_length_cm * box.shelf_width_cm)


def overlap(one: OvenLoad, one_min: float, other: OvenLoad, other_min: float) -> float:
    """Share of the first load's minutes in which the other is in as well, 0 to 1."""
    stay = one.stay_min(one_min)
    both = min(one.in_min + stay, other.in_min + other.stay_min(other_min))
    return max(0.0, both - max(one.in_min, other.in_min)) / stay if stay > 0 else 0.0


def crowding(
    place: int, loads: Sequence[OvenLoad], box: OvenBox, minutes: Sequence[float], *, fan: bool
) -> Crowding:
    r"""What the other tins leave of the surface heat of one tin of a load.

    ln f = -r (c sum_j a_j w_j + g min(1, n) (1 - gap/gap_open))

    Each other tin counts by the share of a shelf it covers and the share of the bake it is there;
    less on another shelf. Touching counts for neighbours on the same shelf.

    Parameters
    ----------
    place : which load, from 0
    loads : all loads, (loads,)
    box : the oven and its shelf
    minutes : likely minutes of each load, (loads,) [min]
    fan : fan on, which makes both count less

    Returns
    -------
    factor of the surface heat and the doubt of its logarithm

    Raises
    ------
    nothing

    Valid for
    ---------
    One or two shelves of a domestic oven; all its figures are assumed.

    Source
    ------
    `krume`, assumed

    Examples
    --------
    >>> from krume.bake import Batter, oven_box
    >>> from krume.size import read_tin
    >>> batter = Batter(540, 0.48, 0.40, 0.08, 0.09, 0.40, 0.02, 0.01, 0.26)
    >>> two = [OvenLoad(batter, read_tin("round 20 x 7 cm").value, tins=2)]
    >>> round(crowding(0, two, oven_box(), [34.0], fan=False).factor, 3)
    0.911
    """
    load, own = loads[place], loads[place].around.rack
    cover = near = 0.0
    for other_place, other in enumerate(loads):
        count = other.tins - (1 if other_place == place else 0)
        share = overlap(load, minutes[place], other, minutes[other_place])
        same_shelf = other.around.rack == own
        weight = count * share * (1.0 if same_shelf else oven_air_value("other-shelf"))
        cover += weight * covered(other, box)
        near += count * share if same_shelf else 0.0
    gap = oven_air_value("gap-assumed") if load.gap_cm is None else load.gap_cm
    shade = max(0.0, 1.0 - gap / oven_air_value("gap-open")) * min(1.0, near)
    lost = oven_air_value("crowding") * cover + oven_air_value("touching") * shade
    lost *= oven_air_value("fan-relief") if fan else 1.0
    doubt = oven_air_half_width("crowding") / oven_air_value("crowding")
    return Crowding(math.exp(-lost), lost * doubt)
