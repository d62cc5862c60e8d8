"""What a torte comes to beside its layers, in sentences that screen, page and paper share."""

from collections.abc import Iterable
from dataclasses import dataclass

from krume.base import as_text
from krume.build.gelling import GelUse
from krume.build.torte import Cover, Cut, Torte

_NARROW = "\u202f"


@dataclass(frozen=True, slots=True)
class Said:
    """Sentences about a torte: its cakes, covers, small pieces, gels, waste and surface."""

    cakes: tuple[str, ...]
    covers: tuple[str, ...]
    cuts: tuple[str, ...]
    gels: tuple[str, ...]
    waste: tuple[str, ...]
    surface: str
    plate: str


def said_of(torte: Torte, gels: Iterable[GelUse] = ()) -> Said:
    """All of it; what is not known is left out or named."""
    return Said(
        cakes=tuple(_cakes(torte)),
        covers=tuple(_cover(each) for each in torte.covers),
        cuts=tuple(_cut(each) for each in torte.cuts),
        gels=tuple(line for each in gels for line in each.lines),
        waste=tuple(_wastes(torte)),
        surface=_surface(torte),
        plate=_plate(torte),
    )


def _g(grams: float | None) -> str:
    return "not known" if grams is None else f"{grams:,.1f}".replace(",", _NARROW) + " g"


def _cakes(torte: Torte) -> Iterable[str]:
    several = {cake.of for cake in torte.cakes if cake.number > 1}
    for cake in torte.cakes:
        name = f"{cake.of}, cake {cake.number}" if cake.of in several else cake.of
        cut = " + ".join(as_text(high, 2) for high in cake.layers_mm)
        more = ""
        if cake.most > len(cake.layers_mm):
            more = f"; {cake.most} layers of {as_text(cake.layers_mm[0], 2)} mm would come from it"
        yield (
            f"{name}: {cut} mm of {as_text(cake.high_mm, 2)} mm, {as_text(cake.left_mm, 2)} mm for "
            f"hump, crust and crumbs{more}"
        )


def _cover(cover: Cover) -> str:
    size = f"{as_text(cover.across_cm, 1)} cm across"
    if cover.second_cm is not None:
        size = f"{as_text(cover.across_cm, 1)} × {as_text(cover.second_cm, 1)} cm"
    return (
        f"{cover.name}: roll out {size}, {as_text(cover.thick_mm, 1)} mm thick, "
        f"{_g(cover.rolled_g)}; {_g(cover.cut_away_g)} cut away at the foot ({cover.status})"
    )


def _cut(cut: Cut) -> str:
    size = f"{as_text(cut.wide_cm, 1)} × {as_text(cut.deep_cm, 1)} cm"
    return f"{cut.count} {cut.words} of {size}, {_g(cut.mass_g)} each ({cut.status})"


def _wastes(torte: Torte) -> Iterable[str]:
    for batch in torte.batches:
        if batch.waste_g > 0.05:
            yield f"{batch.title}: {_g(batch.waste_g)} stay in bag, bowl and on the board"


def _surface(torte: Torte) -> str:
    skin = torte.skin
    if skin is None:
        return ""
    top, side = as_text(skin.top_cm2, 0), as_text(skin.side_cm2, 0)
    if torte.kind == "roll":
        return f"Surface: round {side} cm², both ends {top} cm²"
    whole = as_text(skin.whole_cm2, 0)
    return f"Surface: top {top} cm², side {side} cm², together {whole} cm²"


def _plate(torte: Torte) -> str:
    if torte.height_mm is None or not torte.decorations or not torte.over_mm:
        return ""
    return f"With what stands on it {as_text(torte.plate_mm or 0.0, 1)} mm high"
