"""Lengths of a tin text in cm: units settled, signs checked, numbers ready for a shape."""

from dataclasses import dataclass, field

from krume.base import INCH_CM, as_text
from krume.size.asking import Asking
from krume.size.limits import value
from krume.size.measures import Chain, Measures, Number

_RECTANGLES = frozenset({"sheet", "loaf"})


@dataclass(slots=True)
class Sizes:
    """Lengths in cm: groups of the main chain, loose numbers behind it, and labelled ones.

    A group is one length, or two where `/` stands between them (rim, then bottom). `unit` is the
    one the person typed, for the questions; `own_unit` tells which loose numbers carried one.
    """

    unit: str
    groups: list[list[float]] = field(default_factory=list)
    pairs: tuple[list[float], list[float]] | None = None
    loose: list[float] = field(default_factory=list)
    loose_has_unit: bool = True
    labels: dict[str, float] = field(default_factory=dict)

    def text(self, length_cm: float) -> str:
        """A length as the person would type it, without the unit."""
        return as_text(length_cm / INCH_CM if self.unit == "in" else length_cm, 6)


def sizes(found: Measures, shape: str | None, asking: Asking) -> Sizes | None:
    """Settle units and check signs and size; None while a question is open."""
    lengths = found.lengths()
    if not _are_numbers(found, lengths, asking):
        return None
    unit = _common_unit(lengths, shape, found, asking)
    if unit is None:
        return None
    in_cm = {id(n): _in_cm(n, unit, lengths) for n in lengths}
    if not _are_lengths(in_cm, asking):
        return None
    return _gather(found, in_cm, unit)


def _are_numbers(found: Measures, lengths: list[Number], asking: Asking) -> bool:
    bad = found.unreadable + [as_text(n.value) for n in lengths + found.capacity if not n.value > 0]
    if bad:
        asking.ask(
            "tin-number",
            f"'{bad[0]}' cannot be a size of a tin. Type inside measures above 0, "
            "for example 'round 20 x 5 cm'.",
            "round 20 x 5 cm",
            "sheet 13 x 9 in",
        )
    return not bad


def _common_unit(
    lengths: list[Number], shape: str | None, found: Measures, asking: Asking
) -> str | None:
    """The unit of bare numbers: the typed one, or the only one that makes a usual tin."""
    typed = [n.unit.name for n in lengths if n.unit is not None]
    if typed:
        return typed[-1] if typed[-1] in ("cm", "in") else "cm"
    if not lengths or any(n.german_er for n in lengths):
        return "cm"
    return _likely_unit(lengths, shape, found, asking)


def _likely_unit(
    lengths: list[Number], shape: str | None, found: Measures, asking: Asking
) -> str | None:
    longest = max(n.value for n in lengths)
    if _is_rectangle(shape, found):
        inches, centimetres = value("bare-rectangle-in-most"), value("bare-rectangle-cm-least")
    else:
        inches, centimetres = 0.0, value("bare-round-cm-least")
    if longest >= centimetres or longest <= inches:
        unit = "cm" if longest >= centimetres else "in"
        name = "centimetres" if unit == "cm" else "inches"
        asking.note(
            "tin-unit-assumed",
            f"'{asking.shown()}' has no unit: read in {name}, the only unit in which "
            f"{as_text(longest)} is a usual tin. Type '{unit}' behind it to settle it.",
        )
        return unit
    text = asking.text.strip()
    asking.ask(
        "tin-unit-missing",
        f"Is {as_text(longest)} in inches or in centimetres? Type the unit behind the number.",
        (f"inches: {text} in", f"{text} in"),
        (f"centimetres: {text} cm", f"{text} cm"),
        whole=True,
    )
    return None


def _is_rectangle(shape: str | None, found: Measures) -> bool:
    if shape in _RECTANGLES:
        return True
    values = [n.value for n in found.chains[0].numbers] if found.chains else []
    plain = len(values) > 1 and min(values[:2]) > value("rectangle-least-ratio") * max(values[:2])
    return plain and shape in (None, "square")


def _in_cm(number: Number, unit: str, lengths: list[Number]) -> float:
    """A length in cm; a bare number takes the unit of the next one that has a unit, or the last."""
    own = number.unit
    if own is None and not number.german_er:
        later = [n.unit for n in lengths if n.at > number.at and n.unit is not None]
        earlier = [n.unit for n in lengths if n.at < number.at and n.unit is not None]
        own = later[0] if later else earlier[-1] if earlier else None
    if own is not None and own.size is not None:
        return round(number.value * own.size, 6)
    return round(number.value * (INCH_CM if unit == "in" else 1.0), 6)


def _are_lengths(in_cm: dict[int, float], asking: Asking) -> bool:
    longest, shortest = value("tin-longest"), value("tin-shortest")
    outside = [v for v in in_cm.values() if not shortest <= v <= longest]
    if outside:
        size = "larger than any tin" if outside[0] > longest else "smaller than any tin"
        asking.ask(
            "tin-size-outside",
            f"{as_text(outside[0])} cm is {size} here ({as_text(shortest)} to "
            f"{as_text(longest)} cm). Check the number and its unit.",
            "round 20 x 5 cm",
            "sheet 13 x 9 in",
        )
    return not outside


def _gather(found: Measures, in_cm: dict[int, float], unit: str) -> Sizes:
    out = Sizes(unit)
    if found.chains:
        _take_chain(found.chains[0], in_cm, out)
    loose = [n for chain in found.chains[1:] for n in chain.numbers]
    out.loose = [in_cm[id(n)] for n in loose]
    out.loose_has_unit = all(n.unit is not None for n in loose)
    named = {label: ns[0] for label, ns in found.labelled.items() if label != "cups"}
    out.labels = {label: in_cm[id(number)] for label, number in named.items()}
    return out


def _take_chain(chain: Chain, in_cm: dict[int, float], out: Sizes) -> None:
    lengths = [in_cm[id(n)] for n in chain.numbers]
    if chain.joints[:3] == "x/x":
        out.pairs = (lengths[:2], lengths[2:4])
        out.groups = [[length] for length in lengths[4:]]
        return
    out.groups = [lengths[:1]]
    for joint, length in zip(chain.joints, lengths[1:], strict=True):
        if joint == "/":
            out.groups[-1].append(length)
        else:
            out.groups.append([length])
