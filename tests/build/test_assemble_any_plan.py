"""Whatever a plan says, it is built, asked about or refused; nothing is raised, nothing is 0."""

import math

from hypothesis import given, settings
from hypothesis import strategies as st

from krume.base import Infeasible
from krume.build import PLACES, build_torte, cross_section, read_torte
from tests.build.studio import PARTS, tree, without_density

NAMES = st.sampled_from([*PARTS, "X9", "Lemon syrup"])
AMOUNTS = st.sampled_from(
    ["0.15 g/cm2", "9 mm", "10 mm", "200 g", "5000 g", "0.1 mm", "900 mm", "1 g", "2 x 7 mm",
     "3 x 90 g"]
)  # fmt: skip
PIECES = st.sampled_from(
    ["1 layer of {}, 10 mm", "2 layers of {}, 12 mm, trimmed to 18 cm", "3 discs of {}, 5 mm",
     "1 sheet of {}, 12 mm, rolled from the long side", "2 sheets of {}, 9 mm", "1 shell of {}",
     "1 sheet of {}, 12 mm, rolled from the short side", "layers of {}", "1 layer of {}, 0.2 mm",
     "1 layer of {}, 10 mm, trimmed to 0.5 cm"]
)  # fmt: skip
CLAUSES = st.sampled_from(
    ["", "", "", ", 2 cm left free at the far edge", ", filled out to the ring", ", odd words"]
)
KEYS = st.lists(
    st.sampled_from(["Ring: 22 x 6 cm", "Ring: 18 x 30 cm", "Ring: 20 cm", "Slices: 1, or 400"]),
    max_size=2,
)


@st.composite
def plans(draw: st.DrawFn) -> str:
    lines = draw(st.lists(st.builds(str.format, PIECES, NAMES), min_size=0, max_size=3))
    for _ in range(draw(st.integers(0, 4))):
        words = f"{draw(AMOUNTS)} {draw(NAMES)} {draw(st.sampled_from(PLACES))}{draw(CLAUSES)}"
        lines.insert(draw(st.integers(0, len(lines))), words)
    return "\n".join(["Any", *draw(KEYS), "", *lines])


@settings(max_examples=400, deadline=None)
@given(plans(), st.booleans())
def test_any_plan_is_built_asked_or_refused(text: str, is_unweighed: bool) -> None:
    parts = {**PARTS, "C2": without_density(PARTS["C2"])} if is_unweighed else PARTS
    read = read_torte(text)
    answer = build_torte(read.value, parts)
    if isinstance(answer, Infeasible):
        assert answer.clashes
        return
    torte = answer.value
    if torte.mass_g is None:
        assert answer.problems or read.problems
    else:
        assert math.isfinite(torte.mass_g) and torte.mass_g > 0
        assert all(layer.mass_g is None or layer.mass_g >= 0 for layer in torte.layers)
    if torte.can_be_drawn:
        tree(cross_section(torte))
