"""All that goes on top of a torte and around it, in the order of the text."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from krume.build.coat import Body, around, on_top
from krume.build.cover import cover_of
from krume.build.decorated import decoration, is_decoration
from krume.build.plan_lines import Component
from krume.build.torte import ComponentFormula, Cover, Layer


@dataclass(frozen=True, slots=True)
class Dressed:
    """The layers with what goes on top and around, the body they make, and what is rolled out."""

    layers: tuple[Layer, ...]
    body: Body
    covers: tuple[Cover, ...] = ()


def put_outside(
    layers: tuple[Layer, ...],
    body: Body,
    outside: Sequence[Component],
    parts: Mapping[str, ComponentFormula],
) -> Dressed:
    """A torte of layers, dressed in the order of the text."""
    covers: tuple[Cover, ...] = ()
    for component in outside:
        part = parts[component.what]
        if is_decoration(part, component):
            layers = (*layers, decoration(body, part, component))
            continue
        put = on_top if component.place == "on top" else around
        layer, after = put(body, part, component)
        if component.is_rolled_out:
            covers = (*covers, *cover_of(body, part, component, layer))
        layers, body = (*layers, layer), after
    return Dressed(layers, body, covers)
