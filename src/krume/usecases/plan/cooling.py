"""Whether a plan's usual minutes of cooling are likely too short for a cake, and what to do."""

import math

from krume.bake import cooling_value
from krume.base import Notice, as_text
from krume.design import Formula
from krume.plan import usual_cooling_min
from krume.usecases.bake.cooling_page import cooled_in_own_tin
from krume.usecases.bake.cooling_words import span_min


def cooling_notices(name: str, family: str | None, formula: Formula) -> tuple[Notice, ...]:
    """Notice where the cooling model has a cake cold clearly later than the plan's row."""
    planned = usual_cooling_min(family)
    found = None if planned is None else cooled_in_own_tin(formula)
    if planned is None or found is None or found.wrap_min is None:
        return ()
    if found.wrap_min.best <= cooling_value("plan-late") * planned:
        return ()
    late = 5 * math.ceil(found.wrap_min.high / 5)
    text = (
        f"{as_text(planned, 0)} min of cooling are planned as usual; by the cooling model it is "
        f"cold after {span_min(found.wrap_min)}. Write “Cooled: {late} min” into its text and "
        "the plan takes that."
    )
    return (Notice("cooling-may-be-longer", text, name),)
