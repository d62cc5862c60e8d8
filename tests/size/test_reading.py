"""Reading tins: the forms people write, what is asked, and the way back to the same tin."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.size import MATERIALS, Tin, read_tin, tin_text


def reads_as(text: str) -> str:
    read = read_tin(text)
    assert read.value is not None, read.problems
    return tin_text(read.value)


@pytest.mark.parametrize(
    ("typed", "canonical"),
    [
        ("round 20 x 5 cm", "round 20 x 5 cm"),
        ("dark sheet 13x9x1 in", "dark sheet 33.02 x 22.86 x 2.54 cm"),
        ("glass loaf 21.5x11.5x7 cm", "glass loaf 21.5 x 11.5 x 7 cm"),
        ("ring 22 x 6 cm", "ring 22 x 6 cm"),
        ("tart ring 24 x 2.5 cm", "ring 24 x 2.5 cm"),
        ("tube 25/23 x 9 hole 6 cm", "tube 25/23 x 9 cm, hole 6 cm"),
        ("tube 20 x 10 cm, hole 6 cm, not greased", "tube 20 x 10 cm, hole 6 cm, not greased"),
        ("ring-mould 24 hole 10 cm", "ring-mould 24 cm, hole 10 cm"),
        ("ring mold 24 hole 10 cm", "ring-mould 24 cm, hole 10 cm"),
        ("square 20 x 5 cm", "square 20 x 5 cm"),
        ("square 8x8x2 in", "square 20.32 x 5.08 cm"),
        ("springform 24 x 7 cm", "springform 24 x 7 cm"),
        ("tray 12 x 7/5 x 3 cm", "tray 12 x 7/5 x 3 cm"),
        ("12-cup muffin tin, 7 x 3 cm", "tray 12 x 7 x 3 cm"),
        ("sheet 13x9 in, 1 in high", "sheet 33.02 x 22.86 x 2.54 cm"),
        ("round 8in x 3in", "round 20.32 x 7.62 cm"),
        ("round 20 cm, 2186 g water", "round 20 cm, 2189.9 ml water"),
        ("loaf 23x13/20x10 x 7 cm", "loaf 23 x 13 / 20 x 10 x 7 cm"),
        ("8-inch round cake pan", "round 20.32 cm"),
        ("26er Springform", "springform 26 cm"),
        ("Blech 40 x 30 cm", "sheet 40 x 30 cm"),
        ("Kastenform 30 x 11 x 8 cm, dunkel", "dark loaf 30 x 11 x 8 cm"),
        ('9" x 13"', "sheet 33.02 x 22.86 cm"),
        ("8½ x 4½ x 2½ inch loaf pan", "loaf 21.59 x 11.43 x 6.35 cm"),
        ("two 9 x 1 1/2-inch round pans", "2 x round 22.86 x 3.81 cm"),
        ("25 cm at the rim, 23 at the bottom, 9 cm high, hole 6 cm tube",
         "tube 25/23 x 9 cm, hole 6 cm"),
        ("round tin, 20 cm diameter, 5 cm height", "round 20 x 5 cm"),
        ("ø 20 cm, 6 cm hoch", "round 20 x 6 cm"),
        ("20 cm round, 5 cm", "round 20 x 5 cm"),
        ("loaf 30 cm long, 11 cm wide, 8 cm deep", "loaf 30 x 11 x 8 cm"),
        ("10-cup bundt pan", "tube, 2365.9 ml water"),
        ("20cm/8in round x 5 cm", "round 20 x 5 cm"),
        ("20 cm (8 in) round, 5 cm deep", "round 20 x 5 cm"),
        ("round 6 cm, 20 cm high", "round 6 cm, 20 cm high"),
        ("sheet 9x13x2 in", "sheet 33.02 x 22.86 x 5.08 cm"),
        ("23 x 13 x 7 cm", "loaf 23 x 13 x 7 cm"),
        ("tray 40 x 30 x 2 cm", "sheet 40 x 30 x 2 cm"),
        ("tray 12 x 20 x 3 in", "sheet 50.8 x 30.48 x 7.62 cm"),
        ("round 21,5 x 5 cm", "round 21.5 x 5 cm"),
        ("round ٢٠ x ٥ cm", "round 20 x 5 cm"),
    ],
)  # fmt: skip
def test_a_tin_is_read_as_people_write_it(typed: str, canonical: str) -> None:
    assert reads_as(typed) == canonical


ASKED = [
    ("8in pan", "tin-shape-missing", ["round 8 in", "square 8 in"]),
    ("20 cm ring 6", "tin-order", ["ring 20 x 6 cm", "ring-mould 20 cm, hole 6 cm"]),
    ("6 x 20", "tin-shape-missing", ["round 20 x 6 cm", "ring 20 x 6 cm", "square 20 x 6 cm",
                                     "loaf 20 x 6 cm"]),
    ("ring 6 x 20 cm", "tin-order", ["ring 20 x 6 cm", "ring 6 cm, 20 cm high",
                                    "6 x ring 20 cm"]),
    ("round 8", "tin-unit-missing", ["round 8 in", "round 8 cm"]),
    ("Kastenform 30 cm", "tin-side-missing", ["loaf 30 x 11 x 8 cm", "loaf 30 x 15 x 8 cm"]),
    ("tube 20 x 10 cm", "tin-hole-missing", ["tube 20 x 10 cm, hole 5 cm",
                                             "tube 20 x 10 cm, hole 6 cm"]),
    ("tube 20 x 10 hole 24 cm", "tin-hole-wide", ["tube 24 x 10 cm, hole 20 cm"]),
    ("tube 20 x 10 hole 20 cm", "tin-hole-wide", ["tube 20 x 10 cm, hole 6 cm",
                                                  "tube 25/23 x 9 cm, hole 6 cm"]),
    ("round 24/26 x 5 cm", "tin-rim-narrow", ["round 26/24 x 5 cm", "round 26 x 5 cm"]),
    ("loaf 20 x 10 / 23 x 13 x 7 cm", "tin-rim-narrow", ["loaf 23 x 13 / 20 x 10 x 7 cm",
                                                         "loaf 23 x 13 x 7 cm"]),
    ("round 20 x 5 cm hole 3 cm", "tin-hole-shape", ["tube 20 x 5 cm, hole 3 cm",
                                                     "ring-mould 20 cm, hole 3 cm"]),
    ("ring-mould 24 x 6 hole 10 cm", "tin-half-torus", ["ring-mould 24 cm, hole 10 cm",
                                                        "tube 24 x 6 cm, hole 10 cm"]),
    ("square 9x13 in", "tin-order", ["sheet 13 x 9 in", "square 9 in, 13 in high"]),
    ("loaf 7 x 6 x 20 cm", "tin-order", ["loaf 20 x 7 x 6 cm", "loaf 7 x 6 cm, 20 cm high"]),
    ("20 cm (9 in) round", "tin-two-sizes", ["round 20 cm", "round 9 in"]),
    ("round 0 cm", "tin-number", ["round 20 x 5 cm", "sheet 13 x 9 in"]),
    ("round -20 cm", "tin-number", ["round 20 x 5 cm", "sheet 13 x 9 in"]),
    ("sheet 1e9 cm", "tin-number", ["round 20 x 5 cm", "sheet 13 x 9 in"]),
    ("round NaN cm", "tin-number", ["round 20 x 5 cm", "sheet 13 x 9 in"]),
    ("round 300 cm", "tin-size-outside", ["round 20 x 5 cm", "sheet 13 x 9 in"]),
    ("round", "tin-size-missing", ["round 20 x 5 cm", "round 8 x 2 in"]),
    ("banana", "tin-not-read", ["round 20 x 5 cm", "sheet 13 x 9 x 1 in"]),
    ("", "tin-not-read", ["round 20 x 5 cm", "sheet 13 x 9 x 1 in"]),
    ("round 20 cm " * 50, "tin-not-read", ["round 20 x 5 cm", "sheet 13 x 9 x 1 in"]),
    ("2 lb loaf tin", "tin-mass", ["loaf 23 x 13 x 7 cm", "loaf 19 x 9 x 6 cm"]),
]  # fmt: skip


@pytest.mark.parametrize(("typed", "code", "lines"), ASKED)
def test_what_is_not_clear_is_asked_with_lines_to_type(
    typed: str, code: str, lines: list[str]
) -> None:
    read = read_tin(typed)
    assert read.value is None
    assert read.problems[0].code == code
    assert [option.line for option in read.problems[0].options] == lines


@pytest.mark.parametrize("typed", [row[0] for row in ASKED])
def test_every_option_reads_as_a_tin(typed: str) -> None:
    for problem in read_tin(typed).problems:
        assert problem.options
        for option in problem.options:
            assert read_tin(option.line).value is not None, option.line


def test_round_or_square_names_both_areas() -> None:
    problem = read_tin("8in pan", where="line 2", prefix="Tin: ").problems[0]
    assert "324 cm2" in problem.ask and "413 cm2" in problem.ask
    assert problem.where == "line 2"
    assert problem.options[0].line == "Tin: round 8 in"


def test_a_missing_depth_is_noted_and_the_area_stays_exact() -> None:
    read = read_tin("8 in round")
    assert read.value is not None and read.value.height_cm is None
    assert [n.code for n in read.notices] == ["tin-depth-assumed"]
    assert "5.08 cm (2 in)" in read.notices[0].text


@pytest.mark.parametrize(
    ("typed", "code"),
    [
        ("13x9 tin", "tin-unit-assumed"),
        ("round 20", "tin-unit-assumed"),
        ("a 9x13 in pan", "tin-shape-assumed"),
        ("round 20 cm, 2186 g water", "tin-water"),
        ("10-cup bundt pan", "tin-water"),
        ("Gugelhupf 22 x 10 cm, hole 5 cm", "tin-fluted"),
        ("my blue tin 20 cm round x 7 cm", "tin-words"),
        ("20 cm (8 in) round x 5 cm", "tin-two-sizes"),
    ],
)
def test_what_is_assumed_is_noted(typed: str, code: str) -> None:
    read = read_tin(typed)
    assert read.value is not None
    assert code in [notice.code for notice in read.notices]


def test_a_wide_cup_is_asked() -> None:
    assert read_tin("muffin tray 20 cm").problems[0].code == "tin-shape-missing"


def test_bare_sides_up_to_13_are_inches_and_bare_widths_from_14_centimetres() -> None:
    assert reads_as("13x9 tin") == "sheet 33.02 x 22.86 cm"
    assert reads_as("round 20") == "round 20 cm"
    assert read_tin("sheet 15x10").problems[0].code == "tin-unit-missing"


SIDES = st.integers(50, 1200).map(lambda mm: mm / 10)
ROUNDS = st.builds(
    Tin, st.just(""), st.sampled_from(["round", "springform", "ring"]),
    st.sampled_from(MATERIALS), diameter_cm=SIDES, height_cm=st.none() | SIDES,
    count=st.integers(1, 5),
)  # fmt: skip
FLAT = st.builds(
    lambda shape, material, sides, height: Tin(
        "", shape, material, length_cm=max(sides), width_cm=min(sides), height_cm=height
    ),
    st.sampled_from(["sheet", "loaf"]),
    st.sampled_from(MATERIALS),
    st.tuples(SIDES, SIDES),
    st.none() | SIDES,
)
TUBES = st.builds(
    lambda across, flare, hole, height, greased: Tin(
        "", "tube", diameter_cm=across, top_cm=across + flare if flare else None,
        hole_cm=round(across * hole / 10, 1), height_cm=height, greased=greased
    ),
    SIDES, st.integers(0, 9), st.integers(1, 9), SIDES, st.none() | st.booleans(),
)  # fmt: skip


@given(tin=ROUNDS | FLAT | TUBES)
def test_a_tin_reads_back_from_its_own_text(tin: Tin) -> None:
    read = read_tin(tin_text(tin))
    assert read.problems == ()
    assert replace(read.value or tin, read="") == tin


@given(
    text=st.text(max_size=40)
    | st.lists(
        st.sampled_from(
            [
                "round",
                "sheet",
                "tube",
                "tray",
                "x",
                "/",
                "20",
                "9",
                "1/2",
                "in",
                "cm",
                "g",
                "water",
                "hole",
                "rim",
                "high",
                "(",
                ")",
                ",",
                "-3",
                "muffin",
                '"',
                "two",
            ]
        ),
        max_size=9,
    ).map(" ".join)
)
def test_no_text_breaks_the_reader(text: str) -> None:
    read = read_tin(text)
    assert (read.value is None) == bool(read.problems)
