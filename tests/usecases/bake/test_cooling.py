"""After the oven, as the page, the card and the command have it."""

from functools import cache
from pathlib import Path

import pytest

from krume.bake import Batter, Oven, cooling_figures
from krume.base import Interval, OutOfRangeError
from krume.design import Formula, read
from krume.evidence import source
from krume.size import Tin, read_tin
from krume.usecases import Asked, BakeWish, CoolingResult, cooling_after, cooling_of, plain
from krume.usecases.bake.cooling import Cooled
from krume.usecases.bake.cooling_page import cooling_line_of
from krume.usecases.bake.cooling_sources import cooling_sources
from krume.usecases.bake.cooling_words import span_min

COVERS = ("cooling_page", "cooling_sources", "cooling_words")


def _of(name: str, demo: Asked, **changes: object) -> CoolingResult:
    answer = cooling_of(name, BakeWish(), demo, **changes)  # type: ignore[arg-type]
    assert answer.result is not None
    return answer.result


def test_a_sponge_is_turned_out_after_ten_minutes_and_cut_later(demo: Asked) -> None:
    found = _of("F1", demo)
    assert found.turned_min == 10
    assert (found.height_mm, found.height_from) == (50, "the formula's own plan")
    assert found.lines[0] == "Turn it out after 10 min."
    assert "Cut it into layers, or wrap it, after" in found.lines[1]
    assert found.line.startswith("Turn out after 10 min; cut into layers after ")


def test_a_roulade_has_a_window_in_whole_minutes_and_is_not_cut(demo: Asked) -> None:
    found = _of("F3", demo)
    assert found.roll_window is not None
    assert found.roll_window.first_min < found.roll_window.last_min
    assert found.split_min is None
    assert (
        f"Roll it {found.roll_window.first_min} to {found.roll_window.last_min} min"
        in (found.lines[0])
    )
    assert "Hotter it sticks, colder it cracks." in found.lines[0]


def test_a_chiffon_hangs_in_its_tin(demo: Asked) -> None:
    found = _of("F5", demo)
    assert found.way == "hung"
    assert found.turned_min is None
    assert found.lines[0].startswith("Hang it upside down")


def test_a_tart_has_no_cooling_because_it_has_no_bake(demo: Asked) -> None:
    answer = cooling_of("F7", BakeWish(), demo)
    assert answer.result is None
    assert answer.problems[0].code == "not-a-batter"


def test_a_cake_that_is_never_done_never_cools(demo: Asked) -> None:
    answer = cooling_of("F1", BakeWish(oven="100 C"), demo)
    if answer.result is None:
        assert answer.notices[0].code == "no-cooling"
    else:
        assert answer.result.split_min is not None
    cold = cooling_of("F1", BakeWish(oven="60 C"), demo)
    assert cold.result is None
    assert "never done" in cold.notices[0].text


def test_a_room_too_warm_for_cream_says_so_and_names_no_minutes(demo: Asked) -> None:
    answer = cooling_of("F1", BakeWish(), demo, room_c=27.0)
    assert answer.result is not None
    assert answer.result.fill_min is None
    assert all("cream" not in line for line in answer.result.lines)
    assert "never-in-this-room" in [notice.code for notice in answer.notices]


def test_a_room_that_cannot_be_is_refused(demo: Asked) -> None:
    with pytest.raises(OutOfRangeError, match="55 °C"):
        cooling_of("F1", BakeWish(), demo, room_c=55.0)


def test_every_source_of_cooling_has_its_row_and_is_named(demo: Asked) -> None:
    assert set(cooling_sources()) == {figure.source for figure in cooling_figures().values()}
    assert all(source(key).title for key in cooling_sources())
    assert cooling_of("F1", BakeWish(), demo).sources == cooling_sources()


def test_the_answer_is_plain_json_with_intervals(demo: Asked) -> None:
    found = plain(_of("F4", demo))
    assert isinstance(found, dict)
    split = found["split_min"]
    assert isinstance(split, dict)
    assert set(split) == {"low", "best", "high"}


def test_the_card_has_one_line_where_tin_oven_and_density_are_known() -> None:
    head = "Cake\nFamily: separated\nTin: round 20 x 7 cm\nOven: 170 C\nEggs: EU sizes\n\n"
    lines = "104 g white rice flour\n135 g caster sugar\n5 eggs, medium\n"
    assert cooling_line_of(read(head + lines).value).startswith("Turn out after 10 min; cut")
    assert cooling_line_of(read(head.replace("Tin: round 20 x 7 cm\n", "") + lines).value) == ""
    assert cooling_line_of(read(head.replace("Oven: 170 C\n", "") + lines).value) == ""
    absurd = head.replace("20 x 7 cm", "4 x 60 cm")
    assert cooling_line_of(read(absurd + lines).value) == ""


def test_a_typed_minute_of_turning_out_counts() -> None:
    early, late = _direct(turned_min=0.0), _direct(turned_min=60.0)
    assert early.result is not None
    assert late.result is not None
    assert early.result.split_min is not None
    assert late.result.split_min is not None
    assert early.result.split_min.best < late.result.split_min.best


def test_a_sheet_too_thick_to_roll_says_so_beside_the_bake() -> None:
    found = _direct(family="roulade", baked_mm=60)
    assert found.result is None
    assert found.notices[0].code == "no-cooling"
    assert "A sheet to be rolled" in found.notices[0].text


def test_a_formula_of_no_known_family_has_no_way_of_cooling() -> None:
    found = _direct(family="")
    assert found.result is None
    assert "not known" in found.notices[0].text


@cache
def _ground() -> tuple[Batter, Tin, Oven]:
    tin = read_tin("round 20 x 7 cm").value
    assert tin is not None
    batter = Batter(540, 0.48, 0.395, 0.084, 0.094, 0.399, 0.017, 0.011, 0.257, core_c=95)
    return batter, tin, Oven(170)


def _formula(family: str, baked_mm: float) -> Formula:
    kind = f"Family: {family}\n" if family else ""
    text = f"Cake\n{kind}Baked: {baked_mm:g} mm high, 482 g (plan)\n\n100 g water\n3 g salt\n"
    return read(text).value


def _direct(
    *, family: str = "separated", baked_mm: float = 50, turned_min: float | None = None
) -> Cooled:
    batter, tin, oven = _ground()
    formula = _formula(family, baked_mm)
    return cooling_after(formula, batter, tin, oven, turned_min=turned_min, count=16)


def test_minutes_beyond_an_hour_are_told_in_steps_of_five() -> None:
    assert span_min(Interval(61, 70, 81)) == "60–85 min"
    assert span_min(Interval(3, 4, 6)) == "3–6 min"


@pytest.mark.pin
@pytest.mark.parametrize("name", ["F1", "F3", "F4", "F5", "F6"])
def test_the_page_of_cooling_has_the_minutes_that_a_person_reads(name: str, demo: Asked) -> None:
    page = Path(__file__).parents[3] / "docs" / "models" / "cooling.md"
    rows = [line.split("|") for line in page.read_text("utf-8").splitlines()]
    cut, fill, roll = next(
        [cell.strip() for cell in row[2:5]]
        for row in rows
        if len(row) > 4 and row[1].startswith(f" {name} ")
    )
    found = _of(name, demo)
    assert found.fill_min is not None
    window = found.roll_window
    assert cut == ("" if found.split_min is None else span_min(found.split_min)[: -len(" min")])
    assert fill.removesuffix(", unrolled") == span_min(found.fill_min)[: -len(" min")]
    assert roll == ("" if window is None else f"{window.first_min} to {window.last_min}")
