"""`krume.usecases.torte.in_time`: a torte with what becomes of it, only where it is asked."""

import subprocess
import sys

from krume.usecases import Asked, build_in_time, build_torte, torte_in_time
from krume.usecases.torte.build import torte_of
from krume.usecases.torte.in_time import in_time_lines


def test_the_build_itself_is_the_same(demo: Asked) -> None:
    plain, more = build_torte("T1", demo), build_in_time("T1", demo)
    assert more.result.layers == plain.result.layers
    assert (more.problems, more.notices) == (plain.problems, plain.notices)
    assert plain.result.standing is None
    assert more.result.standing is not None and more.result.moisture is None


def test_sources_of_the_water_are_named_where_it_is_asked_for(demo: Asked) -> None:
    more = build_in_time("TART", demo, moves=True)
    assert {"norrish-1966", "rice-starch-2014", "katz-labuza-1981"} <= set(more.sources)


def test_a_page_gets_the_same_water_as_the_command(demo: Asked) -> None:
    page = torte_in_time("T2", demo, moves=True)
    assert page.moisture == build_in_time("T2", demo, moves=True).result.moisture
    assert torte_in_time("T2", demo).moisture is None


def test_how_it_stands_loads_nothing_that_computes(demo: Asked) -> None:
    code = (
        "import sys; from pathlib import Path; from krume.usecases import Asked, build_in_time; "
        f"build_in_time('T1', Asked(book=Path({str(demo.book)!r}))); "
        "print('numpy' in sys.modules)"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert done.stdout.strip() == "False"


def test_paper_gets_how_it_stands_what_follows_and_the_caution(demo: Asked) -> None:
    lines = in_time_lines(torte_of("T1", demo))
    assert lines[0] == "In the cold: firm enough. At 25 °C: borderline."
    assert any("best from then on" in line for line in lines)
    assert lines[-1].startswith("Worked out and never tested")
    assert not any(line.startswith("Orl hazel sponge takes") for line in lines)
