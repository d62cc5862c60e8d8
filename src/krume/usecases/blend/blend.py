"""The nearest blend of the flours at hand to a formula's blend, or to what it should hold."""

from collections.abc import Iterable
from dataclasses import replace

from krume.base import Infeasible, Notice
from krume.design import BlendFit, Formula, Premix, PremixPart, premix, solve_blend, varying
from krume.pantry import density_g_ml
from krume.store import book_at, studio_of, write_whole
from krume.usecases.asking.answer import Answer, Asked
from krume.usecases.asking.sources import line_sources, practice_notice, source_keys
from krume.usecases.blend.beside import open_blend, others, swaps
from krume.usecases.blend.clash import clash_problems_of, own_clashes
from krume.usecases.blend.flours import Flour, composition_sources
from krume.usecases.blend.jar import write_blend_card
from krume.usecases.blend.match import Match
from krume.usecases.blend.papers import (
    allergens_of_blend,
    gained_with,
    gluten_grains,
    market_of,
    price_of_blend,
    prices_at_hand,
    records_of,
)
from krume.usecases.blend.request import BlendRequest, BlendWish, read_request
from krume.usecases.blend.result import (
    BlendLine,
    BlendMatch,
    BlendMixStep,
    BlendPremix,
    BlendResult,
)
from krume.usecases.blend.setting import Setting, got, lines, task_of, told
from krume.usecases.blend.text import (
    bare_text,
    child_text,
    count_notices,
    findings_of,
    read_child,
    small_of,
    step_notices,
)
from krume.usecases.sheets.blend_card import blend_lines
from krume.usecases.vary.child import parent_name


def choose_blend(wish: BlendWish, asked: Asked) -> Answer[BlendResult]:
    """The nearest blend within the limits typed, or what is asked, or the limits that clash."""
    found = read_request(wish, asked)
    bare = Answer(_bare(found, wish), found.problems, found.notices, _sources(found))
    if found.setting is None or found.problems:
        return bare
    own = own_clashes(found.setting, found.texts)
    if own:
        return replace(bare, problems=own, is_possible=False)
    fit = solve_blend(task_of(found.setting))
    if isinstance(fit, Infeasible):
        clashes = clash_problems_of(found.setting, found.texts)
        return replace(bare, problems=clashes, is_possible=False)
    return _chosen(bare, found, found.setting, fit, wish, asked)


def _bare(found: BlendRequest, wish: BlendWish) -> BlendResult:
    """What is known before a blend is found."""
    match, setting = found.aim.match, found.setting
    return BlendResult(
        match=None if match is None else _match(match, found),
        parts=(),
        target=dict(found.aim.target),
        got={},
        composition={
            flour.key: {name: flour.holds(name) for name in found.properties}
            for flour in found.flours
        },
        names={flour.key: flour.name for flour in found.flours},
        distance=None,
        proven=False,
        bound=None,
        limits=() if setting is None else told(setting),
        without=() if setting is None else _left_out(setting),
        total_g=None if setting is None else setting.total_g,
        step_g=wish.step_g,
    )


def _left_out(setting: Setting) -> tuple[str, ...]:
    return tuple(setting.flours[at].key for at in sorted(setting.left_out))


def _match(match: Match, found: BlendRequest) -> BlendMatch:
    left_out = frozenset() if found.setting is None else found.setting.left_out
    hand = {flour.key for at, flour in enumerate(found.flours) if at not in left_out}
    parts = tuple(
        BlendLine(p.flour.key, p.flour.name, p.mass_g, 100 * p.mass_g / match.total_g, p.mass_g)
        for p in match.parts
    )
    missing = tuple(p.flour.name for p in match.parts if p.flour.key not in hand)
    return BlendMatch(match.name, match.family, parts, match.total_g, missing)


def _sources(found: BlendRequest) -> tuple[str, ...]:
    match = found.aim.match
    matched = () if match is None else tuple(part.flour for part in match.parts)
    return source_keys(
        () if match is None else line_sources(match.read.formula),
        composition_sources((*found.flours, *matched), found.papers),
    )


def _chosen(
    bare: Answer[BlendResult],
    found: BlendRequest,
    setting: Setting,
    fit: BlendFit,
    wish: BlendWish,
    asked: Asked,
) -> Answer[BlendResult]:
    """The answer with its blend and all that stands beside it."""
    parts = lines(setting, fit.masses_g)
    by_key = {flour.key: flour for flour in setting.flours}
    market, match = market_of(asked), found.aim.match
    studio = studio_of(book_at(asked.book))
    text = bare_text(parts, by_key) if match is None else child_text(match, parts, by_key)
    child = read_child(text, studio.eggs_region)
    if match is not None:
        text = _with_parent(text, match, child)
    used = frozenset(part.ingredient for part in parts)
    records = records_of(found.flours, used, found.papers, market)
    grains = gluten_grains(setting.in_play, used, found.papers)

    def gained(flours: Iterable[Flour]) -> tuple[str, ...]:
        return gained_with(flours, match, found.papers, market)

    result = replace(
        bare.result,
        parts=parts,
        got=got(setting, fit.masses_g),
        distance=fit.distance,
        proven=fit.proven,
        bound=fit.bound,
        gluten_grains=grains,
        one_for_one=swaps(setting, match, gained),
        alternatives=others(setting, fit, gained),
        open_blend=open_blend(setting, fit, records, frozenset(g.ingredient for g in grains)),
        allergens=allergens_of_blend(
            [(by_key[p.ingredient], p.mass_g) for p in parts], match, found.papers, market
        ),
        evidence=records,
        price=price_of_blend(parts, match, prices_at_hand(asked), studio),
        findings=() if match is None else findings_of(child),
        small=None if match is None else small_of(child),
        premix=_premix(wish, parts, by_key, child, setting),
        text=text,
    )
    notices = (*bare.notices, *_told(result, match, parts, child))
    return _made(replace(bare, result=result, notices=notices), text, wish, asked, match)


def _with_parent(text: str, match: Match, child: Formula) -> str:
    """The text with the lines that name its parent, so that it can follow it."""
    name, parent = parent_name(match.read), match.read.formula
    return varying.with_head(text, varying.blend_lineage(name, parent, child))


def _told(
    result: BlendResult, match: Match | None, parts: tuple[BlendLine, ...], child: Formula
) -> tuple[Notice, ...]:
    text = (
        "Nearest by composition alone. Taste, colour and how much water it takes up are not "
        "known: bake one small one first."
    )
    notices = [Notice("composition-only", text)]
    if match is not None:
        notices += step_notices(match, parts, child)
        notices += count_notices(child, parts)
        notices += practice_notice(finding.status for finding in result.findings)
    return tuple(notices)


def _plan_notice(match: Match) -> tuple[Notice, ...]:
    if match.read.formula.baked is None:
        return ()
    text = f"Its line Baked: is still the plan for the blend of {match.name}, until one is baked."
    return (Notice("baked-of-other-blend", text),)


def _premix(
    wish: BlendWish,
    parts: tuple[BlendLine, ...],
    by_key: dict[str, Flour],
    child: Formula,
    setting: Setting,
) -> BlendPremix | None:
    """The premix for so many cakes; what is sifted with the blend of a formula goes in too."""
    if wish.cakes is None:
        return None
    sifted = [
        (line.ingredient or "", line.name, line.mass_g)
        for line, _ in blend_lines(child, scale_g=setting.step_g)
        if line.ingredient not in by_key and line.mass_g
    ]
    whole = [*((p.ingredient, p.name, p.mass_g) for p in parts), *sifted]
    made = premix(
        [PremixPart(name, mass, _density_g_ml(key)) for key, name, mass in whole],
        wish.cakes,
        step_g=wish.step_g,
    )
    return _premix_told(made, [(key, name) for key, name, _ in whole])


def _premix_told(made: Premix, named: list[tuple[str, str]]) -> BlendPremix:
    return BlendPremix(
        cakes=made.cakes,
        lines=tuple(
            BlendLine(key, name, mass, 100 * mass / made.total_g)
            for (key, name), mass in zip(named, made.masses_g, strict=True)
        ),
        too_fine=tuple(n for (_, n), fine in zip(named, made.too_fine, strict=True) if fine),
        total_g=made.total_g,
        portion_g=made.portion_g,
        dust_pct=made.dust_pct,
        sieve_passes=made.sieve_passes,
        bowl_ml=made.bowl_ml,
        order=tuple(BlendMixStep(step.name, step.add_g, step.in_bowl_g) for step in made.order),
    )


def _density_g_ml(key: str) -> float | None:
    found = density_g_ml(key) if key else None
    return None if found is None else found.best


def _made(
    answer: Answer[BlendResult], text: str, wish: BlendWish, asked: Asked, match: Match | None
) -> Answer[BlendResult]:
    """The answer with what was written: the formula's new text, the card of the jar."""
    result = answer.result
    if wish.write is not None and match is not None:
        if match.read.problems:
            return replace(answer, problems=match.read.problems)
        write_whole(wish.write, text.encode("utf-8"), replace=wish.replace)
        result = replace(result, written=str(wish.write.resolve()))
        answer = replace(answer, notices=(*answer.notices, *_plan_notice(match)))
    if wish.out is not None:
        is_of_book = match is not None and match.read.source.kind is not None
        files = write_blend_card(text, asked, wish.out, is_of_book=is_of_book)
        result = replace(result, files=files)
    return replace(answer, result=result)
