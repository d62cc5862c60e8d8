"""What a slip is about: grams in the bowls, what can still be added, the scale, the tins."""

from dataclasses import dataclass

from krume.design.formula import Formula, Line
from krume.evidence import figures
from krume.size import Tin

NOISE_G = 1e-6
"""Far below anything a scale shows: what is closer than this is the same mass."""


@dataclass(frozen=True, slots=True)
class Slip:
    """A formula with what has been weighed of it.

    `weighed_g` holds one mass for each line, None where nothing of it is in a bowl yet. `closed`
    are lines of which nothing more can be added; `same_bowl` are lines that also lie in the bowl
    of the slip, beyond what the steps say. `spoilt_whites` counts whites with yolk in them.
    `step_g` is what the scale shows. `tins` are the tins at hand beside the formula's own,
    `density_g_ml` that of the batter.
    """

    formula: Formula
    weighed_g: tuple[float | None, ...]
    closed: frozenset[int] = frozenset()
    same_bowl: frozenset[int] = frozenset()
    spoilt_whites: int = 0
    step_g: float = 0.1
    tins: tuple[Tin, ...] = ()
    density_g_ml: float | None = None

    @property
    def lines(self) -> tuple[Line, ...]:
        """The formula's lines."""
        return self.formula.lines

    def plan_g(self, line: int) -> float | None:
        """Planned mass of a line; None is unknown."""
        return self.formula.lines[line].mass_g

    def held_g(self, line: int) -> float:
        """What lies in the bowls of a line."""
        return self.weighed_g[line] or 0.0

    @property
    def over(self) -> tuple[int, ...]:
        """Lines of which more was weighed than planned."""
        return tuple(i for i in range(len(self.lines)) if self._beyond_g(i) > NOISE_G)

    @property
    def short(self) -> tuple[int, ...]:
        """Closed lines of which less lies in the bowl than planned."""
        return tuple(i for i in sorted(self.closed) if self._beyond_g(i) < -NOISE_G)

    def _beyond_g(self, line: int) -> float:
        plan = self.plan_g(line)
        return 0.0 if plan is None else self.held_g(line) - plan


def figure(key: str) -> float:
    """A figure of slip.csv, in the unit its row names."""
    return figures("slip.csv")[key].value
