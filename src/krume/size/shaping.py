"""From settled lengths to a tin of one shape, or a question about the order of the numbers."""

from krume.size.asking import Asking
from krume.size.rectangle_tin import rectangle_tin
from krume.size.round_tin import round_tin
from krume.size.sizes import Sizes
from krume.size.tin import ROUND_FLOOR, Tin


def build_tin(shape: str, found: Sizes, asking: Asking, tin: Tin) -> Tin | None:
    """Fill the tin's lengths from the numbers in their usual order; None where that is unclear."""
    if found.loose and not _take_loose(shape, found, asking):
        return None
    if shape in ROUND_FLOOR:
        return round_tin(shape, found, asking, tin)
    return rectangle_tin(shape, found, asking, tin)


def _take_loose(shape: str, found: Sizes, asking: Asking) -> bool:
    """`20 cm round, 5 cm`: one more length with its own unit is the depth; a bare one is asked."""
    width = found.groups[0][0] if found.groups else 0.0
    only = found.loose[0]
    clear = len(found.loose) == 1 and found.loose_has_unit and only < width
    if clear and "height" not in found.labels and len(found.groups) == 1:
        found.labels["height"] = only
        found.loose = []
        return True
    across, extra = found.text(max(width, only)), found.text(min(width, only))
    asking.ask(
        "tin-order",
        f"What does the number {extra} measure? Join the inside width and the depth by 'x', "
        "or name the hole.",
        f"{shape} {across} x {extra} {found.unit}",
        f"ring-mould {across} {found.unit}, hole {extra} {found.unit}",
    )
    return False
