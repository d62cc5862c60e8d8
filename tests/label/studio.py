"""Products of the demo studio, read from its packed texts, and its lots."""

from dataclasses import replace
from datetime import date
from functools import cache

from krume.base import Infeasible
from krume.build import ComponentFormula, build_torte, formula_names, read_torte
from krume.design import Formula, read
from krume.label import Product, product_of_formula, product_of_torte
from krume.pantry import CleaningRecord, Lot, read_lots
from krume.usecases.book.book import demo_files
from krume.usecases.torte.build import component

DAY = date(2027, 6, 10)
CLEAN = (CleaningRecord(DAY, is_cleaned=True),)


@cache
def formula(name: str) -> Formula:
    """A formula of the demo studio."""
    found = read(demo_files()[f"formulas/{name}.txt"].decode("utf-8"))
    assert found.problems == (), name
    return found.value


@cache
def lots() -> tuple[Lot, ...]:
    """Lots of the demo studio."""
    return read_lots(demo_files()["lots.csv"].decode("utf-8")).value


@cache
def product(name: str) -> Product:
    """A formula or a torte of the demo studio as a product."""
    if f"tortes/{name}.txt" not in demo_files():
        return product_of_formula(name, formula(name))
    plan = read_torte(demo_files()[f"tortes/{name}.txt"].decode("utf-8")).value
    formulas = {what: formula(what) for what in formula_names(plan)}
    parts: dict[str, ComponentFormula] = {w: component(w, f) for w, f in formulas.items()}
    built = build_torte(plan, parts)
    assert not isinstance(built, Infeasible)
    return product_of_torte(built.value, formulas, status="assumed")


def of(text: str) -> Product:
    """Product of a formula typed here, whatever is asked about it."""
    return product_of_formula("X", read(text).value)


def good(lot: Lot) -> Lot:
    """The same lot with a valid test."""
    tested = read_lots(
        "lot,ingredient,evidence,text,result_mg_kg,from,valid_to\n"
        f'{lot.key},"{lot.ingredient}",lab test,,<5,2027-01-01,2028-01-01\n'
    ).value[0]
    return replace(tested, ingredients=lot.ingredients)
