"""Blend cards, cold log and gluten page of a request, as files, and what is open about them."""

from collections.abc import Mapping
from dataclasses import replace

from krume.base import Notice
from krume.publish import Hold, Imprint, Leaf, blend_leaf, cold_log_leaf, missing_leaf_signs
from krume.usecases.asking.answer import Asked
from krume.usecases.asking.kind import Made
from krume.usecases.label.gluten import GlutenWish, gluten_of
from krume.usecases.sheets.blend_card import blends_of
from krume.usecases.sheets.cold_log import cold_log_of
from krume.usecases.sheets.gluten_page import gluten_leaf
from krume.usecases.sheets.order_files import leaf_files
from krume.usecases.sheets.order_leaf import one_hold
from krume.usecases.sheets.result import Files, SheetCheck
from krume.usecases.sold.order import OrderJudgement
from krume.usecases.sold.product import sold_of

Leaves = dict[str, tuple[tuple[str, str], str, Leaf]]
"""Leaves on their way to paper: kind and what each is of, its paper, and itself, by stem."""


def leaf_sheets(
    made: Made,
    name: str,
    asked: Asked,
    imprint: Imprint,
    judged: OrderJudgement | None,
    *,
    paper: str,
    slugs: Mapping[str, str],
) -> tuple[Files, tuple[SheetCheck, ...], tuple[Notice, ...]]:
    """Files of blend cards, cold log and gluten page; `slugs` are the cards' own, by formula."""
    hold = None if judged is None else one_hold(judged.holds)
    leaves, checks = _blend_cards(made, name, asked, imprint, hold, paper=paper, slugs=slugs)
    leaves |= _cold_log(name, asked, imprint, judged, hold, paper)
    leaves |= _gluten_page(name, asked, imprint, judged, hold, paper)
    files: Files = {}
    for stem, (kind, size, leaf) in leaves.items():
        files |= leaf_files(leaf, stem, kind, size)
    notices = (n for _, _, leaf in leaves.values() for n in missing_leaf_signs(leaf))
    return files, checks, tuple(dict.fromkeys(notices))


def _blend_cards(
    made: Made,
    name: str,
    asked: Asked,
    imprint: Imprint,
    hold: Hold | None,
    *,
    paper: str,
    slugs: Mapping[str, str],
) -> tuple[Leaves, tuple[SheetCheck, ...]]:
    found = blends_of(made, name, asked, imprint.market)
    leaves = {
        f"{slugs[of]}-blend-card": (("blend-card", of), paper, blend_leaf(blend, imprint, hold))
        for of, blend in found.blends.items()
    }
    return leaves, found.checks


def _gluten_page(
    name: str,
    asked: Asked,
    imprint: Imprint,
    judged: OrderJudgement | None,
    hold: Hold | None,
    paper: str,
) -> Leaves:
    """The page for the guest who must not eat gluten, where an order names one."""
    if judged is None or not any(diet.kind == "gluten" for diet in judged.diets):
        return {}
    found = gluten_of(name, GlutenWish(), asked).result
    size = "letter" if paper == "letter" else "a4"
    leaf = replace(gluten_leaf(found, imprint), hold=hold)
    return {"gluten-page": (("gluten-page", found.name), size, leaf)}


def _cold_log(
    name: str,
    asked: Asked,
    imprint: Imprint,
    judged: OrderJudgement | None,
    hold: Hold | None,
    paper: str,
) -> Leaves:
    read = sold_of(name, asked)
    log = cold_log_of(read, judged, asked)
    if log is None:
        return {}
    size = "letter" if paper == "letter" else "a4"
    return {"cold-log": (("cold-log", read.title), size, cold_log_leaf(log, imprint, hold))}
