"""How many eggs of which size to crack, so that the fewest are bought: a whole-number sum."""

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from krume.base import KrumeError
from krume.plan.eggs.cracked import Cracked, Cracking, Filled, cracking_faults
from krume.plan.eggs.filling import Filling, fillings
from krume.plan.eggs.rules import cold_days
from krume.plan.eggs.wanting import Bowl, EggNeed, EggStock, Liquid, bowls

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray
    from scipy.optimize import LinearConstraint

_DUST = 1e-6
_TIME_LIMIT_S = 10.0


class EggsError(KrumeError):
    """An answer that the second look found at fault: a fault of the program."""

    code = "eggs"


def crack(needs: Sequence[EggNeed], stock: EggStock = EggStock()) -> Cracking | None:  # noqa: B008
    """Fill every bowl with the fewest eggs bought; None where what there is does not do.

    Minimise, one after the other: eggs bought, grams out of packs, bowls not filled as written,
    part eggs, grams off, eggs cracked, so that per size and day
    cracked >= whole + yolks and cracked >= whole + whites

    Parameters
    ----------
    needs : egg lines of the formulas, with their batches and day
    stock : eggs of the house and the shop, packs, how close whole eggs of other sizes must weigh

    Returns
    -------
    how every bowl is filled, eggs cracked and bought, and whether no better answer exists; None
    where the eggs of house and shop cannot fill every bowl

    Raises
    ------
    EggsError : the second look finds the answer at fault

    Valid for
    ---------
    Planning masses; at most two sizes in one bowl; one bowl from eggs or from a pack, not both.

    Source
    ------
    `krume`, an integer program; the masses of `eggs.csv`

    Examples
    --------
    >>> torte = EggNeed("torte", "yolk", 157.5, size="eu-m", count=9.0)
    >>> roll = EggNeed("roll", "white", 268.0, size="eu-m", count=8.0)
    >>> crack((torte, roll)).bought
    {'eu-m': 9}
    """
    wanted = tuple(bowl for need in needs for bowl in bowls(need))
    if not wanted:
        return Cracking((), (), {}, (0.0,) * len(stock.liquids), proven=True)
    shop = _shop(wanted, stock)
    plain = stock.is_plain and len({need.day for need in needs}) <= 1
    answer = _as_written(wanted) if plain else _Program(wanted, stock, shop).solved()
    if answer is None:
        return None
    faults = cracking_faults(answer, wanted, stock, shop)
    if faults:
        raise EggsError(f"The eggs found do not hold: {faults[0]}.", got=faults[0])
    return answer


def missing_eggs(needs: Sequence[EggNeed], stock: EggStock) -> dict[str, int]:
    """Eggs of the formulas' own sizes that would have to be bought beyond what there is."""
    own = {need.size for need in needs if need.size is not None}
    found = crack(needs, replace(stock, shop=tuple(sorted({*own, *(stock.shop or ())}))))
    return {} if found is None else {size: n for size, n in found.bought.items() if n}


def _shop(wanted: Sequence[Bowl], stock: EggStock) -> tuple[str, ...]:
    if stock.shop is not None:
        return stock.shop
    return tuple(sorted({b.need.size for b in wanted if b.need.size is not None}))


def _as_written(wanted: Sequence[Bowl]) -> Cracking | None:
    """Every bowl from its own eggs, all from the shop: there is only one way, so it is the best."""
    filled = []
    for bowl in wanted:
        if bowl.need.size is None or bowl.count is None:
            return None
        own = Filling("own", ((bowl.need.size, bowl.count),), bowl.mass_g)
        filled.append(Filled(bowl, own, bowl.times))
    answer = Cracking(tuple(filled), (), {}, (), proven=True)
    sizes = sorted({b.need.size for b in wanted if b.need.size is not None})
    counts = {size: _count(answer, size) for size in sizes}
    day = wanted[0].need.day
    cracked = tuple(Cracked(size, day, count) for size, count in counts.items())
    return replace(answer, cracked=cracked, bought=counts)


def _count(answer: Cracking, size: str) -> int:
    yolks, whites = answer.used(size, "yolk"), answer.used(size, "white")
    return math.ceil(answer.used(size, "whole") + max(yolks, whites) - _DUST)


@dataclass(frozen=True, slots=True)
class _Flow:
    """Loose parts of one size kept from one day to another."""

    size: str
    part: str
    made: int
    used: int


class _Program:
    """The whole-number program: its columns are ways to fill bowls, eggs, flows and packs."""

    def __init__(self, wanted: Sequence[Bowl], stock: EggStock, shop: Sequence[str]) -> None:
        self.stock, self.shop, self.wanted = stock, shop, wanted
        self.ways = [(bowl, way) for bowl in wanted for way in fillings(bowl, stock)]
        self.days = sorted({bowl.need.day for bowl in wanted})
        sizes = {size for size, _ in stock.house} | set(shop)
        self.sizes = sorted(sizes | {size for _, way in self.ways for size, _ in way.pieces})
        self.eggs = [(size, day) for size in self.sizes for day in self.days]
        self.flows = [
            _Flow(size, part, made, used)
            for size in self.sizes
            for part in ("yolk", "white")
            for made in self.days
            for used in self.days
            if made <= used <= made + cold_days(part)
        ]
        starts = [0]
        for count in (len(self.ways), len(self.eggs), len(self.sizes), len(self.flows)):
            starts.append(starts[-1] + count)
        self.at_egg, self.at_buy, self.at_flow, self.width = starts[1:]

    def solved(self) -> Cracking | None:
        """The best answer, one aim after the other; None where there is none."""
        import numpy as np
        from scipy.optimize import LinearConstraint

        if {bowl for bowl, _ in self.ways} != set(self.wanted):
            return None
        held = list(self._constraints())
        found: NDArray[np.float64] | None = None
        proven = True
        for aim in self._aims():
            if found is not None and not aim.any():
                continue
            answer = self._solve(aim, held)
            if answer is None:
                break
            found, shown = answer
            proven = proven and shown
            held.append(LinearConstraint(aim, -np.inf, float(aim @ found) + _DUST))
        return None if found is None else self._read(found, proven=proven)

    def _solve(
        self, aim: "NDArray[np.float64]", held: "Sequence[LinearConstraint]"
    ) -> "tuple[NDArray[np.float64], bool] | None":
        import numpy as np
        from scipy.optimize import Bounds, milp

        whole = np.ones(self.width, dtype=np.int64)
        whole[self.at_flow :] = 0
        upper = np.full(self.width, np.inf)
        for index, size in enumerate(self.sizes):
            if size not in self.shop:
                upper[self.at_buy + index] = 0
        found = milp(
            aim,
            integrality=whole,
            bounds=Bounds(0, upper),
            constraints=held,
            options={"time_limit": _TIME_LIMIT_S, "mip_rel_gap": 0.0},
        )
        return None if found.x is None else (found.x, bool(found.status == 0))

    def _aims(self) -> "Iterator[NDArray[np.float64]]":
        import numpy as np

        bought, cracked = np.zeros(self.width), np.zeros(self.width)
        bought[self.at_buy : self.at_flow] = 1
        cracked[self.at_egg : self.at_buy] = 1
        yield bought
        kinds = [way.kind for _, way in self.ways]
        for worth in (
            [way.mass_g if way.liquid is not None else 0.0 for _, way in self.ways],
            [float(kind != "own") for kind in kinds],
            [float(kind == "weighed") for kind in kinds],
            [way.off_g for _, way in self.ways],
        ):
            aim = np.zeros(self.width)
            aim[: self.at_egg] = worth
            yield aim
        yield cracked

    def _constraints(self) -> "Iterator[LinearConstraint]":
        import numpy as np
        from scipy.optimize import LinearConstraint

        for bowl in self.wanted:
            row = np.zeros(self.width)
            row[: self.at_egg] = [float(of == bowl) for of, _ in self.ways]
            yield LinearConstraint(row, bowl.times, bowl.times)
        for index, (size, day) in enumerate(self.eggs):
            for part in ("yolk", "white"):
                row = self._pieces(size, "whole", day)
                row[self.at_egg + index] = -1
                row[self.at_flow :] += [
                    float((f.size, f.part, f.made) == (size, part, day)) for f in self.flows
                ]
                yield LinearConstraint(row, -np.inf, 0)
                row = self._pieces(size, part, day)
                row[self.at_flow :] -= [
                    float((f.size, f.part, f.used) == (size, part, day)) for f in self.flows
                ]
                yield LinearConstraint(row, 0, 0)
        for index, size in enumerate(self.sizes):
            row = np.zeros(self.width)
            row[self.at_egg : self.at_buy] = [float(of == size) for of, _ in self.eggs]
            row[self.at_buy + index] = -1
            yield LinearConstraint(row, -np.inf, self.stock.in_house(size))
        for index, liquid in enumerate(self.stock.liquids):
            if liquid.mass_g is not None:
                row = np.zeros(self.width)
                row[: self.at_egg] = [_liquid_g(way, index, liquid) for _, way in self.ways]
                yield LinearConstraint(row, -np.inf, liquid.mass_g + _DUST)

    def _pieces(self, size: str, part: str, day: int) -> "NDArray[np.float64]":
        import numpy as np

        row = np.zeros(self.width)
        row[: self.at_egg] = [
            way.of(size) if (of.need.part, of.need.day) == (part, day) else 0.0
            for of, way in self.ways
        ]
        return row

    def _read(self, found: "NDArray[np.float64]", *, proven: bool) -> Cracking:
        """The answer in eggs; every count is made again from the bowls where there is one day."""
        counts = [round(float(x)) for x in found[: self.at_flow]]
        filled = tuple(
            Filled(bowl, way, counts[index])
            for index, (bowl, way) in enumerate(self.ways)
            if counts[index]
        )
        liquid = tuple(
            sum(each.times * _liquid_g(each.filling, index, pack) for each in filled)
            for index, pack in enumerate(self.stock.liquids)
        )
        answer = Cracking(filled, (), {}, liquid, proven=proven)
        cracked = tuple(
            Cracked(size, day, self._eggs(answer, size, counts[self.at_egg + index]))
            for index, (size, day) in enumerate(self.eggs)
        )
        answer = replace(answer, cracked=tuple(each for each in cracked if each.count))
        bought = {
            size: max(0, answer.count_of(size) - self.stock.in_house(size)) for size in answer.sizes
        }
        return replace(answer, bought={size: n for size, n in bought.items() if n})

    def _eggs(self, answer: Cracking, size: str, counted: int) -> int:
        return counted if len(self.days) > 1 else _count(answer, size)


def _liquid_g(way: Filling, index: int, liquid: Liquid) -> float:
    """Grams out of a pack for one bowl."""
    return liquid.pack_g(way.mass_g) if way.liquid == index else 0.0
