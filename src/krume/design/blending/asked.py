"""Whether a task can be worked on at all: its numbers, and that its parts belong together."""

from collections.abc import Iterable, Iterator
from math import isfinite

from krume.base import InputError
from krume.design.blending.task import BlendTask

_Fault = tuple[str, str]


def checked(task: BlendTask) -> None:
    """Refuse a task that is not about numbers of grams; the first thing wrong is named."""
    for field, message in _faults(task):
        raise InputError(message, field=field)


def _faults(task: BlendTask) -> Iterator[_Fault]:
    if not task.names:
        yield "names", "There are no flours to blend."
    if not (_are_amounts([task.total_g, task.step_g]) and task.total_g > 0 and task.step_g > 0):
        yield "total", "The total and the step of the scale are grams above 0."
    if len(task.composition) != len(task.names) or not task.properties:
        yield "composition", "Each flour needs a composition of one property or more."
    if len(task.target) != len(task.properties) or not _are_amounts(task.target):
        yield "target", "The target is a number of 0 or more for each property."
    for name, row in zip(task.names, task.composition, strict=False):
        if len(row) != len(task.properties) or not _are_amounts(row):
            yield name, f"The composition of {name} is not known for every property."
    yield from _limit_faults(task)


def _limit_faults(task: BlendTask) -> Iterator[_Fault]:
    count = len(task.names)
    for limit in task.limits:
        if not all(0 <= at < count for at in limit.members):
            yield limit.name, f"The limit on {limit.name} names a flour that is not at hand."
    for held in task.property_limits:
        if len(held.composition) != count or not _are_amounts(held.composition):
            yield held.name, f"How much {held.name} each flour holds is not known."
    for field, values in (("stock", task.most_g), ("price", task.price_per_kg)):
        known = [value for value in values or () if value is not None]
        if values is not None and (len(values) != count or not _are_amounts(known)):
            yield field, f"The {field} of each flour is a number of 0 or more."


def _are_amounts(values: Iterable[float]) -> bool:
    return all(isfinite(value) and value >= 0 for value in values)
