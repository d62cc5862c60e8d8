"""What the bench shows and hears."""

from dataclasses import dataclass

from krume.store import KeptStep
from krume.usecases.bench.plan import BenchPlan
from krume.usecases.bench.state import Standing
from krume.usecases.bench.ways import BenchSlip


@dataclass(frozen=True, slots=True)
class BenchSaid:
    """One thing said at the bench, under the sender's own id.

    Kinds: `tare`, `in`, `got` (the display shows `display_g`), `not-weighed`, `no-more`, `undo`
    (of the step `of`), `choose` (the way `way`). `version` is that of the formula whose rows the
    sender saw; None goes by the one that is weighed.
    """

    client_id: str
    kind: str
    position: int | None = None
    display_g: float | None = None
    way: str = ""
    of: str = ""
    version: int | None = None


@dataclass(frozen=True, slots=True)
class Bench:
    """A weighing as it stands; `key` is empty where none has begun."""

    key: str
    state: str
    plan: BenchPlan
    steps: tuple[KeptStep, ...]
    found: Standing
    slip: BenchSlip | None
    now_utc: str

    @property
    def is_begun(self) -> bool:
        """Whether anything was said yet."""
        return bool(self.steps)
