"""Putting it together: torte plans and orders, as people type them."""

from krume.build.order_text import HandOver, Order, OrderLine, read_order
from krume.build.plain import PlainLine
from krume.build.plan_lines import (
    PIECES,
    PLACES,
    Component,
    RingLine,
    TortePlan,
    formula_names,
)
from krume.build.torte_text import read_torte

__all__ = [
    "PIECES",
    "PLACES",
    "Component",
    "HandOver",
    "Order",
    "OrderLine",
    "PlainLine",
    "RingLine",
    "TortePlan",
    "formula_names",
    "read_order",
    "read_torte",
]
