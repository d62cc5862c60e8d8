"""The quick sums: each declared once, with typed inputs, its function and its sources."""

from krume.calc.declaring import Input, Json, Output, Values
from krume.calc.registry import SUMS
from krume.calc.running import SumAnswer, answer, describe, parse_inputs, run, sum_named
from krume.calc.summing import Sum

__all__ = [
    "SUMS",
    "Input",
    "Json",
    "Output",
    "Sum",
    "SumAnswer",
    "Values",
    "answer",
    "describe",
    "parse_inputs",
    "run",
    "sum_named",
]
