"""What the bake model says, for the printed sheets: one sentence and one small curve a formula."""

from collections.abc import Mapping

from krume.base import as_text
from krume.publish import LeafPart, LeafTable, ModelBake
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.read import FormulaRead
from krume.usecases.bake.bake import own_prediction


def model_bake(found: FormulaRead, asked: Asked) -> ModelBake | None:
    """A formula in its own tin and oven; None where the model gives no minutes for it."""
    answer = own_prediction(found, asked)
    if answer is None:
        return None
    curve = answer.bake.curve
    return ModelBake(
        minutes=answer.minutes,
        likely_min=answer.bake.minutes,
        last=answer.done_by,
        core_c=round(answer.core_c, 1),
        time_min=curve.time_min,
        temp_c=curve.core_c,
    )


def oven_part(bakes: Mapping[str, ModelBake | None]) -> LeafPart | None:
    """When to look into the oven at what is baked for an order; None where nothing is."""
    rows = tuple(
        (
            name,
            as_text(bake.minutes.low, 0),
            as_text(bake.likely_min, 0),
            as_text(bake.minutes.high, 0),
            as_text(bake.core_c, 1),
            bake.last,
        )
        for name, bake in bakes.items()
        if bake is not None
    )
    if not rows:
        return None
    head = ("formula", "check from", "likely", "latest", "core, °C", "last")
    table = LeafTable(head, rows, right=(1, 2, 3, 4), wide=0)
    line = (
        "Minutes by the bake model, one cake in its own tin. The skewer, the probe and the eye "
        "decide."
    )
    return LeafPart("In the oven", (line,), table=table)
