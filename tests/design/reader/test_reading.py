"""A whole text: what is read, what is kept, and that nothing a person types makes it fail."""

import re
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from krume.base import Interval, Problem, Read
from krume.design import Formula, apply_answers, read
from krume.evidence import packed_text
from tests.design.bad_inputs import ROWS

COVERS = (
    "heads",
    "keylines",
    "steps",
    "tinsaid",
)

DEMO = {
    "F1": ("542.0", "separated"),
    "F2": ("519.0", "separated"),
    "F3": ("398.0", "roulade"),
    "F4": ("522.0", "nut"),
    "F5": ("553.2", "chiffon"),
    "F6": ("643.7", "butter"),
    "F7": ("431.5", "tart"),
    "C1": ("941.5", "custard-lightened"),
    "C2": ("853.0", "set-cream"),
    "C3": ("380.0", "ganache"),
    "C4": ("390.0", "jelly"),
    "C5": ("615.0", "cooked-white-buttercream"),
    "S1": ("220.0", "syrup"),
}
NOTES = """\
lemon roulade, 9 inch round
4 eggs med.   100g sugar  26g rice / 16 millet / 22 potato flour / 6 sweet rice
xantan a pinch, 10g oil
bake 315F (165C) 16 minutes ... or 25-30 if thick
whisk the five whites with 60g sugar + 50g into yolks
13x9 tin, keeps a week, gluten free, suitable for kids
"""
PIECES = st.sampled_from(
    [
        "85 g flour",
        "5 eggs",
        "eggs, medium",
        "1/2 cup ",
        "½",
        "(",
        ")",
        " g ",
        "Tin: ",
        "Oven: 180",
        "Eggs: EU",
        "bake at 170 C",
        "Whites 3 eggs",
        "as much sugar",
        "nut free",
        "keeps a week",
        "\t",
        "|",
        "<b>",
        "&nbsp;",
        "1e9",
        "NaN g",
        "-3",
        "\u202e",
        "🥜",
        "٨٥",
        "\r\n",
        "\n",
        "\n\n",
        "%",
        "8 inch round",
        "use by 31/02/27",
        "a pinch of xanthan",
        "0",
        "1,500",
        "to",
        "or",
        "For the ",
    ]
)


def demo(name: str) -> Read[Formula]:
    return read(packed_text(f"demo/formulas/{name}.txt"))


def same_question(one: Problem, other: Problem) -> bool:
    return (one.code, one.where) == (other.code, other.where)


def asks(found: Read[Formula], problem: Problem) -> int:
    return sum(same_question(problem, other) for other in found.problems)


@pytest.mark.parametrize(("name", "total"), [(n, t) for n, (t, _) in DEMO.items()])
def test_a_demo_formula_is_read_without_a_question(name: str, total: str) -> None:
    found = demo(name)
    assert found.problems == ()
    assert sum(x.mass_g or 0 for x in found.value.lines) == pytest.approx(float(total), abs=0.05)


@pytest.mark.parametrize(("name", "family"), [(n, f) for n, (_, f) in DEMO.items()])
def test_the_family_is_seen_from_lines_and_steps(name: str, family: str) -> None:
    assert demo(name).value.family == family


def test_the_head_of_a_formula_is_read() -> None:
    formula = demo("F1").value
    assert formula.name == "Orl hazel sponge"
    assert formula.tin is not None
    assert (formula.tin.shape, formula.tin.diameter_cm, formula.tin.height_cm) == ("round", 20, 7)
    assert formula.oven is not None
    assert (formula.oven.temp_c, formula.oven.fan) == (170.0, False)
    assert formula.makes == "1 cake, three layers of 14 mm"
    assert formula.baked is not None
    assert (formula.baked.height_mm, formula.baked.mass_g) == (50.0, 482.0)
    assert (formula.eggs_region, formula.core_c) == ("eu", 95.0)
    assert formula.bake_min == Interval(34, 37, 40)
    assert len(formula.steps) == 6


def test_a_chiffon_has_two_egg_lines_and_a_tube() -> None:
    formula = demo("F5").value
    parts = {x.part: x.mass_g for x in formula.lines if x.part in ("yolk", "white")}
    assert parts == {"yolk": pytest.approx(70.0), "white": pytest.approx(167.5)}
    assert formula.tin is not None
    assert (formula.tin.shape, formula.tin.hole_cm) == ("tube", 6)


def test_the_steps_take_their_amounts_of_the_lines() -> None:
    formula = demo("F3").value
    taken = {
        (use.step, formula.lines[use.line].name): use.mass_g
        for use in formula.uses
        if use.mass_g is not None
    }
    assert taken == {
        (1, "caster sugar"): 40.0,
        (1, "lemon juice"): 6.0,
        (2, "lemon juice"): 4.0,
        (2, "caster sugar"): 60.0,
    }


def test_without_a_region_medium_eggs_are_asked_about() -> None:
    text = packed_text("demo/formulas/F1.txt").replace("Eggs: EU sizes\n", "")
    (problem,) = read(text).problems
    assert problem.code == "egg-size-region"
    assert [option.label for option in problem.options] == ["EU M", "US Medium"]
    assert read(text, eggs_region="eu").problems == ()
    assert read(text, eggs_region="us").value.lines[5].mass_g == pytest.approx(220.0)


def test_the_strangers_notes_come_back_as_ten_questions() -> None:
    codes = {problem.code for problem in read(NOTES).problems}
    assert codes == {
        "tin-conflict",
        "egg-count-conflict",
        "oven-temp-conflict",
        "split-sum",
        "which-ingredient",
        "trade-measure",
        "claim-gluten",
        "egg-size-region",
        "claim-keeping",
        "minutes-conflict",
    }


def test_the_answers_of_the_notes_leave_nothing_open() -> None:
    answered = NOTES
    for choice in (0, 0, 0, 0, 0, 0, 0, 1, 0, 0):
        problem = read(answered).problems[0]
        line = problem.options[choice if problem.code == "tin-conflict" else 0].line
        answered = apply_answers(answered, [f"{problem.where}={line}"])
    assert read(answered).problems == ()


@pytest.mark.parametrize("text", [NOTES, *(bad.text for bad in ROWS)])
def test_typing_any_option_settles_its_question(text: str) -> None:
    found = read(text)
    for problem in found.problems:
        for option in problem.options:
            edited = apply_answers(text, [f"{problem.where}={option.line}"])
            assert asks(read(edited), problem) < asks(found, problem), option.line


@given(st.lists(PIECES, max_size=25).map(" ".join) | st.text(max_size=200))
def test_no_text_makes_the_reader_fail_or_lose_a_line(text: str) -> None:
    found = read(text)
    kept = [line.text for line in found.value.source_lines]
    assert kept == re.split(r"\r\n|\n|\r", text.removeprefix("\ufeff"))
    assert all(line.read == kept[line.number - 1] for line in found.value.lines)
    assert all(problem.code and problem.where and problem.ask for problem in found.problems)


@given(st.lists(PIECES, max_size=12).map(" ".join))
def test_an_option_of_any_text_is_an_edit_of_its_line(text: str) -> None:
    for problem in read(text).problems:
        for option in problem.options:
            edited = apply_answers(text, [f"{problem.where}={option.line}"])
            assert len(re.split(r"\r\n|\n|\r", edited)) == len(re.split(r"\r\n|\n|\r", text))


def test_the_lines_of_the_corpus_ask_nothing_twice_in_the_same_words() -> None:
    texts = sorted((Path(__file__).parents[1] / "corpus" / "texts").glob("*.txt"))
    assert texts
    for path in texts:
        problems = read(path.read_bytes().decode("utf-8")).problems
        told = [(p.code, p.where, p.read, p.ask) for p in problems]
        assert len(told) == len(set(told)), path.name


def test_headings_make_parts_and_the_method_ends_the_list() -> None:
    text = "Torte\n\nSponge:\n85 g butter\nFor the filling\n40 g sugar\n\nMethod\nBake.\n"
    formula = read(text).value
    assert [(x.name, x.section) for x in formula.lines] == [
        ("butter", "Sponge"),
        ("sugar", "filling"),
    ]
    assert formula.steps == ("Bake.",)


def test_a_text_that_begins_with_an_ingredient_has_no_name() -> None:
    found = read("85 g butter\n40 g sugar")
    assert found.value.name is None
    assert "name-missing" in {notice.code for notice in found.notices}


def test_a_title_with_a_number_is_no_ingredient() -> None:
    assert read("3-egg sponge\n\n150 g egg").value.name == "3-egg sponge"


def test_a_mark_at_the_start_of_a_file_is_not_part_of_its_first_line() -> None:
    assert read("\ufeffSponge\n\n85 g butter").value.name == "Sponge"


def test_reading_twice_gives_the_same() -> None:
    assert read(NOTES) == read(NOTES)


def test_a_mass_that_is_unknown_says_why() -> None:
    found = read("x\n\n85 g butter\nsalt\n1 can peaches")
    unknown = [x.number for x in found.value.lines if x.mass_g is None]
    assert unknown == [4, 5]
    said = {n.where for n in found.notices if n.code in ("amount-missing", "mass-unknown")}
    assert said == {"line 4", "line 5"}


def test_a_line_in_brackets_is_left_out() -> None:
    assert [x.name for x in read("x\n\n85 g butter\n(2 g salt, left out)").value.lines] == [
        "butter"
    ]


LARGE = "Sponge\n{key}\n3 large eggs\n90 g sugar\n{line}\nWhisk. Bake at {oven}.\n"


def _egg_codes(text: str, region: str | None) -> tuple[list[str], list[str]]:
    found = read(text, eggs_region=region)
    return (
        [problem.code for problem in found.problems],
        [notice.code for notice in found.notices if notice.code.startswith("egg")],
    )


def test_a_size_word_that_only_the_book_settles_is_said() -> None:
    text = LARGE.format(key="", line="80 g white rice flour", oven="170 C")
    (notice,) = read(text, eggs_region="eu").notices
    assert (notice.code, notice.where) == ("egg-region-taken", "line 3")
    assert notice.text == (
        "'large' is read as EU L, 60 g shelled, by your book's region; US Large is 50 g"
    )
    assert _egg_codes(text, "us") == ([], ["egg-region-taken"])
    assert _egg_codes(text, None) == (["egg-size-region"], [])


@pytest.mark.parametrize(
    ("line", "oven"), [("1 cup milk", "170 C"), ("80 g white rice flour", "350 F")]
)
def test_a_european_book_asks_for_the_eggs_of_an_american_text(line: str, oven: str) -> None:
    text = LARGE.format(key="", line=line, oven=oven)
    assert _egg_codes(text, "eu") == (["egg-size-region"], [])
    assert _egg_codes(text, "us") == ([], ["egg-region-taken"])


@pytest.mark.parametrize("oven", ["170 C", "350 F"])
def test_eggs_the_text_itself_settles_are_neither_asked_nor_noted(oven: str) -> None:
    said = LARGE.format(key="Eggs: EU sizes\n", line="80 g white rice flour", oven=oven)
    assert _egg_codes(said, "us") == ([], [])
    named = LARGE.format(key="", line="80 g white rice flour", oven=oven)
    assert _egg_codes(named.replace("large", "EU L"), "eu") == ([], [])


def test_an_egg_and_a_part_of_another_is_asked_and_its_answer_is_two_lines_in_one() -> None:
    text = "Sponge\nEggs: EU M\n\n1 egg and the yolk of another\n90 g sugar\n"
    (problem,) = read(text).problems
    assert problem.code == "egg-parts"
    answered = read(text.replace("1 egg and the yolk of another", problem.options[0].line))
    assert answered.problems == ()
    assert [line.mass_g for line in answered.value.lines] == [51.0, 17.5, 90.0]


@pytest.mark.parametrize(("count", "asked"), [(40, []), (60, ["line-too-long"])])
def test_ingredients_behind_the_limit_of_a_line_are_not_lost_silently(
    count: int, asked: list[str]
) -> None:
    found = read("Sponge\n\n" + ", ".join(["1 g sugar"] * count) + "\n")
    assert [problem.code for problem in found.problems] == asked
    assert (len(found.value.lines) == count) is not bool(asked)


@pytest.mark.parametrize(
    ("line", "name"), [("85 g¹ buckwheat flour", "buckwheat flour"), ("3 x EU M eggs", "eggs")]
)
def test_a_footnote_and_the_sign_of_times_are_no_part_of_a_name(line: str, name: str) -> None:
    assert read(f"Sponge\n\n{line}\n90 g sugar\n").value.lines[0].name == name


@pytest.mark.parametrize(
    ("line", "said"),
    [
        ("1 heaping teaspoon baking powder", ["'heaping' is weighed as level: weigh yours once"]),
        ("1 level teaspoon baking powder", []),
        (
            "1 cup less 1 tablespoon sugar",
            ["'less 1 tablespoon' is not taken off: weigh it, or type the grams"],
        ),
    ],
)
def test_what_a_measure_is_heaped_by_or_falls_short_by_is_said(line: str, said: list[str]) -> None:
    notices = read(f"Sponge\n\n{line}\n90 g white rice flour\n").notices
    assert [notice.text for notice in notices if notice.code == "measure-level"] == said


def test_a_name_holds_no_sign_that_turns_its_letters_round() -> None:
    assert read("Nut \u202etorte\u2066\n\n100 g sugar").value.name == "Nut torte"
