"""The quick sum on rounding a list of masses to what a scale shows."""

from krume.base import as_text
from krume.calc.declaring import Input, Output, Values
from krume.calc.given import Given
from krume.calc.summing import Sum
from krume.size import round_masses, worst_line_error


def _round(given: Given) -> Values:
    exact, step = given.numbers("masses"), given.number("step")
    found = round_masses(exact, step_g=step)
    finer = [as_text(m) for m, fine in zip(found.masses_g, found.too_fine, strict=True) if fine]
    if finer:
        given.note(
            "finer-than-scale",
            f"{' g, '.join(finer)} g: a step of {as_text(step)} g would move this by more than a "
            "tenth. Weigh it on a finer scale, or make a pre-mix.",
        )
    return {
        "masses_g": list(found.masses_g),
        "total_g": round(sum(found.masses_g), 9),
        "worst_ratio_error_pct": worst_line_error(exact, found.masses_g) * 100,
        "too_fine": list(found.too_fine),
    }


ROUNDING_SUMS = (
    Sum(
        "round-to-scale",
        "Masses in whole steps of a scale: the sum kept, the ratios as close as they can be.",
        (
            Input("masses", "masses of the lines, by comma", "g", kind="numbers"),
            Input("step", "what the scale shows", "g"),
        ),
        (
            Output("masses_g", "the masses rounded, in the same order"),
            Output("total_g", "their sum"),
            Output("worst_ratio_error_pct", "how far the worst line is off its exact mass"),
            Output("too_fine", "true where a line stays finer than the scale"),
        ),
        _round,
        ("mathematics",),
        (("masses", "32.4,16.2,24.3,7.29,4.86"), ("step", "1")),
    ),
)
