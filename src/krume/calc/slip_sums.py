"""The quick sum of a slip in a blend: how far the rest has to follow."""

import math

from krume.base import InputError
from krume.calc.declaring import Input, Output, Values
from krume.calc.given import Given
from krume.calc.summing import Sum
from krume.properties import within

_MOST_G = 100_000.0


def _slip_factor(given: Given) -> Values:
    planned = _masses(given, "planned", least=1e-6)
    weighed = _masses(given, "weighed", least=0.0)
    if len(weighed) > len(planned):
        raise InputError(
            f"There are {len(weighed)} weighed masses and {len(planned)} planned ones. Give both "
            "in the same order, 0 for what is not weighed yet.",
            field="weighed",
            got=str(len(weighed)),
            want=f"at most {len(planned)}",
        )
    plan_g = math.fsum(planned)
    factor = max([1.0, *(w / p for w, p in zip(weighed, planned, strict=False))])
    given.note("jar", "Take the planned mass for this cake; what is over goes into a labelled jar.")
    return {
        "factor": factor,
        "total_g": round(factor * plan_g, 9),
        "surplus_g": round((factor - 1) * plan_g, 9),
    }


def _masses(given: Given, name: str, *, least: float) -> list[float]:
    masses = given.numbers(name)
    if not masses:
        raise given.missing(name)
    return [within(name, mass, least, _MOST_G, "g") for mass in masses]


SLIP_SUMS = (
    Sum(
        "slip-factor",
        "How many times a blend has to be made so that what is over fits, and what goes to a jar.",
        (
            Input("planned", "planned masses of the blend, in order", "g", kind="numbers"),
            Input("weighed", "masses in the bowl, in the same order, 0 for none", "g", "numbers"),
        ),
        (
            Output("factor", "largest weighed over planned, 1 at least"),
            Output("total_g", "the blend filled up to that factor"),
            Output("surplus_g", "what is over the plan and goes into a jar"),
        ),
        _slip_factor,
        ("mathematics",),
        (("planned", "40,20,30,9,6"), ("weighed", "40,26,0,0,0")),
        "For a dry blend that lies apart; krume slip has the other ways.",
    ),
)
