"""What is a value: errors, answers, quantities, units, numbers as people write them."""

from krume.base.doors import on_first_use
from krume.base.errors import (
    ConflictError,
    DataError,
    InputError,
    KrumeError,
    NotFoundError,
    OutOfRangeError,
    StoreError,
)
from krume.base.heat import HEAT_UNITS, fahrenheit, heat, heat_text
from krume.base.money import Money, currency_named, exact, money_text, read_money, to_cent
from krume.base.numbers import ReadNumber, as_text, plain_digits, read_number
from krume.base.outcome import Clash, Infeasible, Notice, Option, Problem, Read
from krume.base.quantity import STATUSES, Figure, Interval
from krume.base.turning import unturned
from krume.base.units import INCH_CM, POUND_G, UNITS, Unit, unit_named

__all__ = [
    "HEAT_UNITS",
    "INCH_CM",
    "POUND_G",
    "STATUSES",
    "UNITS",
    "Clash",
    "ConflictError",
    "DataError",
    "Figure",
    "Infeasible",
    "InputError",
    "Interval",
    "KrumeError",
    "Money",
    "NotFoundError",
    "Notice",
    "Option",
    "OutOfRangeError",
    "Problem",
    "Read",
    "ReadNumber",
    "StoreError",
    "Unit",
    "as_text",
    "currency_named",
    "exact",
    "fahrenheit",
    "heat",
    "heat_text",
    "money_text",
    "on_first_use",
    "plain_digits",
    "read_money",
    "read_number",
    "to_cent",
    "unit_named",
    "unturned",
]
