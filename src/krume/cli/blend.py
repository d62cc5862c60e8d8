"""`krume blend`: the nearest blend of the flours at hand, and what goes with it."""

from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

import click

from krume.cli.figures import fixed, number
from krume.cli.folders import Folder
from krume.cli.options import common
from krume.cli.output import typed_text
from krume.cli.page import Page
from krume.cli.ranges import Whole, Within
from krume.cli.tell import tell
from krume.usecases import Asked

if TYPE_CHECKING:
    from collections.abc import Sequence

    from krume.usecases import BlendLine, BlendOther, BlendPremix, BlendResult

_STATES = {
    "expired": "its record ran out",
    "missing": "no record",
    "conflict": "it speaks against it",
    "not-yet-valid": "its record is not in force yet",
}
_SHOWN_SWAPS = 4
_MORE_THAN_NOTHING = Within(min=0, min_open=True, max=100_000)


@click.command("blend")
@click.option(
    "--from",
    "flours",
    metavar="LIST",
    help="Flours at hand, with commas between [default: those the book has lots of, and the "
    "formula's own].",
)
@click.option("--match", metavar="FILE", help="The formula whose blend is matched: a text, or F2.")
@click.option(
    "--want", metavar="LIST", help='What 100 g should hold: "protein 6, fat 1.1, fibre 2.6".'
)
@click.option(
    "--total",
    "total_g",
    metavar="G",
    type=_MORE_THAN_NOTHING,
    help="Grams of the blend [default: the formula's own, else 100].",
)
@click.option("--without", metavar="NAME", multiple=True, help="A flour to leave out. Repeatable.")
@click.option(
    "--limit",
    "limits",
    metavar="LIMIT",
    multiple=True,
    help='"starch 30..50" in percent, "rice >= 25 g", "sweet rice 9 g", "no tapioca", '
    '"at most 4 flours". Repeatable.',
)
@click.option(
    "--also",
    metavar="NAME",
    multiple=True,
    help="Match by more than protein, fat and fibre: starch, water, sugars, ash, binder.",
)
@click.option(
    "--scale",
    "--step",
    "step_g",
    metavar="G",
    type=Within(min=0, min_open=True, max=100),
    default=1.0,
    show_default=True,
    help="Smallest step your scale shows, in g.",
)
@click.option(
    "--least",
    "least_g",
    metavar="G",
    type=Within(min=0, max=100_000),
    default=0.0,
    help="Least grams of each flour that goes in.",
)
@click.option("--most-flours", metavar="N", type=Whole(min=1), help="Most flours that go in.")
@click.option(
    "--most-price",
    "most_price_per_kg",
    metavar="MONEY",
    type=Within(min=0, max=100_000),
    help="Most that a kilogram may cost, by the book's prices.",
)
@click.option(
    "--stock", "by_stock", is_flag=True, help="No more of a flour than packs.csv says is there."
)
@click.option(
    "--cakes",
    metavar="N",
    type=Whole(min=1, max=1000),
    help="A premix for so many cakes: grams, mixing order, portion.",
)
@click.option(
    "--write",
    metavar="NEW",
    type=click.Path(path_type=Path),
    help="Write the formula's text with the new blend in it; needs --match.",
)
@click.option("--replace", is_flag=True, help="Let --write replace a file that is there.")
@click.option("--out", metavar="DIR", type=Folder(), help="Folder for the blend card of it.")
@common
def command(asked: Asked, **wished: object) -> int:
    """The nearest blend of the flours at hand, within the limits you type.

    No other limit is held. --match F2 comes near the blend of a formula, --want near what 100 g
    should hold. Nearest is by protein, fat and fibre: it says nothing of taste, colour or thirst.
    Each --limit is on one flour, or on a class of them: starch, flour, sweet rice.
    """
    from krume.usecases import BlendWish, choose_blend

    if wished["write"] is not None and wished["match"] is None:
        message = "--write puts the blend into a formula's text: name it with --match."
        raise click.UsageError(message)
    if wished["match"] == "-":
        asked = replace(asked, typed=typed_text("-"))
    wish = BlendWish(**wished)  # type: ignore[arg-type]
    return tell("blend", choose_blend(wish, asked), _show)


def _show(page: Page, blend: "BlendResult") -> None:
    if not blend.parts:
        return
    _show_title(page, blend)
    for grain in blend.gluten_grains:
        page.line(f"{grain.text[:1].upper()}{grain.text[1:]}", style="bold")
    page.line()
    page.rows(_before_and_now(blend), right=(1, 2), indent=2)
    page.line()
    page.rows(_held(blend), right=(1, 2), indent=2)
    page.line()
    page.line(_nearness(blend))
    first = "bake one small one first." if blend.small is None else blend.small.text
    page.line(f"Next: {first}", style="bold")
    for finding in blend.findings:
        page.line(f'{finding.text} To keep it inside: --limit "{finding.limit}"')
    _show_gluten(page, blend)
    _show_about(page, blend)
    if blend.premix is not None:
        _show_premix(page, blend.premix)
    _show_beside(page, blend)
    _show_files(page, blend)


def _show_title(page: Page, blend: "BlendResult") -> None:
    match = blend.match
    if match is None:
        page.title(f"{number(blend.total_g)} g of blend")
        return
    gone = f", without {_listed(match.missing)}" if match.missing else ""
    page.title(f"The blend of {match.name}{gone}")


def _before_and_now(blend: "BlendResult") -> list[tuple[str, ...]]:
    """Each flour of the formula and of the new blend: grams before and now."""
    if blend.match is None:
        alone: list[tuple[str, ...]] = [
            (p.name, _g(p.mass_g), f"{fixed(p.share_pct)} %") for p in blend.parts
        ]
        return [*alone, ("in all", _g(blend.total_g), "")]
    now = {part.ingredient: part for part in blend.parts}
    before = {part.ingredient: part for part in blend.match.parts}
    keys = dict.fromkeys((*before, *now))
    rows: list[tuple[str, ...]] = [("flour", "was g", "now g")]
    for key in keys:
        name = (now.get(key) or before[key]).name
        was, is_now = before.get(key), now.get(key)
        rows.append((name, _grams(was), _grams(is_now)))
    return [*rows, ("in all", _g(blend.match.total_g), _g(blend.total_g))]


def _grams(part: "BlendLine | None") -> str:
    return "\N{EN DASH}" if part is None else _g(part.mass_g)


def _g(value: float | None) -> str:
    return number(value, 2)


def _held(blend: "BlendResult") -> list[tuple[str, ...]]:
    rows: list[tuple[str, ...]] = [("in 100 g", "wanted", "got")]
    for name, wanted in blend.target.items():
        rows.append((name, fixed(wanted, 2), fixed(blend.got.get(name), 2)))
    return rows


def _nearness(blend: "BlendResult") -> str:
    sure = "no blend within these limits is nearer" if blend.proven else _not_proven(blend)
    words = f"Distance {fixed(blend.distance, 3)}: {sure}."
    if blend.one_for_one:
        swap = blend.one_for_one[0]
        broken = f"; it breaks {_listed(swap.breaks)}" if swap.breaks else ""
        broken += f"; it brings {_listed(swap.gained)}" if swap.gained else ""
        words += f" One for one, {swap.name} comes to {fixed(swap.distance, 3)}{broken}."
    return words


def _not_proven(blend: "BlendResult") -> str:
    return f"the search was stopped; none is nearer than {fixed(blend.bound, 3)}"


def _show_gluten(page: Page, blend: "BlendResult") -> None:
    shut = [r for r in blend.evidence if r.is_used and r.state not in ("good", "not-needed")]
    is_grain = any(grain.is_used for grain in blend.gluten_grains)
    if not blend.evidence or (not shut and is_grain):
        return
    if not shut:
        page.line(
            "Gluten: each flour in it has a record in force. Whether a cake may be called "
            "gluten-free takes the room's cleaning record too: krume label."
        )
        return
    page.line()
    for record in shut:
        state = _STATES.get(record.state, record.state)
        lot = record.lot or "no lot in the house"
        page.line(f"Gluten: {record.name}, {lot}: {state} ({record.text}).")
    if blend.open_blend is not None:
        page.line(
            "With a record in force for every flour, the nearest is at "
            f"{fixed(blend.open_blend.distance, 3)}: {_short(blend.open_blend.parts)}"
        )
        page.whole(blend.open_blend.line, indent=2)


def _show_about(page: Page, blend: "BlendResult") -> None:
    allergens, price = blend.allergens, blend.price
    if allergens is not None and (allergens.gained or allergens.lost):
        gained = f"gained {', '.join(allergens.gained)}" if allergens.gained else ""
        lost = f"lost {', '.join(allergens.lost)}" if allergens.lost else ""
        page.line(f"Allergens: {', '.join(part for part in (gained, lost) if part)}.")
    if price is not None and price.per_kg is not None:
        was = "" if price.was_per_kg is None else f", was {price.was_per_kg}"
        page.line(f"Price: {price.per_kg} {price.currency} a kg{was}.".replace("  ", " "))


def _show_premix(page: Page, made: "BlendPremix") -> None:
    page.head(f"Premix for {made.cakes} cakes, {number(made.dust_pct)} % for dust counted in")
    rows = [(_g(line.mass_g), f"g {line.name}") for line in made.lines]
    page.rows([*rows, (_g(made.total_g), "g in all")], right=(0,), indent=2)
    page.line(
        f"A cake takes {_g(made.portion_g)} g. Bowl: {number(made.bowl_ml / 1000)} l or more. "
        f"Sift {made.sieve_passes} times."
    )
    for name in made.too_fine:
        page.line(f"{name} is too little for this scale: weigh it on a finer one.")
    page.line("Mix in this order, rubbing each in before the next:")
    steps = [
        (f"{at}.", f"{_g(step.add_g)} g", f"{step.name}, {_g(step.in_bowl_g)} g in the bowl")
        for at, step in enumerate(made.order, start=1)
    ]
    page.rows(steps, right=(0, 1), indent=2)


def _show_beside(page: Page, blend: "BlendResult") -> None:
    if len(blend.one_for_one) > 1:
        page.head("One for one in place of what is missing")
        for swap in blend.one_for_one[:_SHOWN_SWAPS]:
            broken = f", breaks {_listed(swap.breaks)}" if swap.breaks else ""
            broken += f", brings {_listed(swap.gained)}" if swap.gained else ""
            page.line(f"{fixed(swap.distance, 3)}  {swap.name}{broken}", indent=2)
    if blend.alternatives:
        page.head("Other flours, nearest first")
        for other in blend.alternatives:
            page.line(f"{fixed(other.distance, 3)}  {_differs(other)}", indent=2)
            page.line(_short(other.parts), indent=9)
            if other.gained:
                page.line(f"brings {_listed(other.gained)}", indent=9)


def _differs(other: "BlendOther") -> str:
    without = f"without {_listed(other.without)}" if other.without else ""
    also = f"with {_listed(other.also)}" if other.also else ""
    return ", ".join(part for part in (without, also) if part) or "other grams"


def _listed(words: "Sequence[str]") -> str:
    *first, last = words
    return f"{', '.join(first)} and {last}" if first else last


def _short(parts: "Sequence[BlendLine]") -> str:
    return " · ".join(f"{part.name} {_g(part.mass_g)}" for part in parts)


def _show_files(page: Page, blend: "BlendResult") -> None:
    if blend.written:
        page.line()
        page.line("Written with the new blend:")
        page.whole(blend.written)
    if blend.files:
        page.line()
        for file in blend.files:
            page.whole(file.path)
