"""What a hurried person gets wrong: asked kindly, with the right code, and nothing written."""

import json
import shutil
from pathlib import Path
from typing import Any

import jsonschema
import pytest

from tests.contract.conftest import Many, Said
from tests.contract.shape import misfits, only_object

COMMANDS = ("read", "check", "build", "keep", "plan", "label", "cost")
HEAD = "Order 8\nCustomer: D. Invented\nDate: {date}\nHand-over: {hour}\nFor: 12 people\n\n{what}\n"
TEXTS = {
    "empty.txt": "",
    "title.txt": "Only a title\n",
    "unknown.txt": HEAD.format(date="2027-06-12", hour="14:00", what="1 T99"),
    "yesterday.txt": HEAD.format(date="2027-06-09", hour="14:00", what="1 T1"),
    "soon.txt": HEAD.format(date="2027-06-10", hour="09:00", what="1 T1"),
    "weekday.txt": HEAD.format(date="Friday 2027-06-12", hour="14:00", what="1 T1"),
    "nodate.txt": "Order 8\nCustomer: D. Invented\nHand-over: 14:00\n\n1 T1\n",
    "noday.txt": HEAD.format(date="2027-02-31", hour="14:00", what="1 T1"),
    "twodays.txt": HEAD.format(date="03/04/28", hour="14:00", what="1 T1"),
    "none.txt": HEAD.format(date="2027-06-12", hour="14:00", what="0 T1"),
    "minus.txt": HEAD.format(date="2027-06-12", hour="14:00", what="-2 T1"),
    "low.txt": "Low ring\nRing: 22 x 4 cm\n\n2 layers of F4, 12 mm, trimmed to 21 cm\n"
               "2 x 14 mm C2, one on each layer\n",
    "wide.txt": "Wide disc\nRing: 18 x 6 cm\n\n2 layers of F4, 12 mm, trimmed to 21 cm\n",
    "tall.txt": "Tall\n\n4 layers of F1, 14 mm\n10 mm C1 between the layers\n",
    "lost.txt": "Lost\n\n2 layers of F99, 14 mm\n",
    "minus-layer.txt": "Minus\n\n2 layers of F1, -14 mm\n",
    "minus-gram.txt": "Minus\n\n100 g white rice flour\n-30 g caster sugar\n",
    "heavy.txt": "Heavy\n\n99999999999999999999999999 g caster sugar\n",
}  # fmt: skip
ASKED: dict[str, tuple[list[str], int]] = {
    "unknown torte, plan": (["plan", "unknown.txt"], 3),
    "unknown torte, sheet": (["sheet", "unknown.txt", "--out", "o1"], 3),
    "unknown torte, cost": (["cost", "unknown.txt"], 3),
    "unknown torte, label": (["label", "unknown.txt"], 3),
    "unknown torte, keep": (["keep", "unknown.txt"], 3),
    "yesterday": (["plan", "yesterday.txt"], 3),
    "too soon": (["plan", "soon.txt"], 4),
    "weekday": (["sheet", "weekday.txt", "--out", "o2"], 3),
    "no date": (["sheet", "nodate.txt", "--out", "o3"], 3),
    "no such day": (["plan", "noday.txt"], 3),
    "two days": (["plan", "twodays.txt"], 3),
    "none ordered": (["plan", "none.txt"], 3),
    "minus two": (["cost", "minus.txt"], 3),
    "low ring": (["build", "low.txt"], 4),
    "wide disc": (["build", "wide.txt"], 4),
    "tall stack": (["build", "tall.txt"], 4),
    "lost formula": (["build", "lost.txt"], 3),
    "minus layer": (["build", "minus-layer.txt"], 3),
    "minus gram": (["read", "minus-gram.txt"], 3),
    "heavy": (["read", "heavy.txt"], 3),
    "tin of nothing": (["size", "F2", "--tin", "round 20 x 0 cm"], 3),
    "minus tin": (["size", "F2", "--tin", "round -20 x 5 cm"], 3),
    "no tin": (["size", "F2", "--tin", ""], 3),
    "wide hole": (["size", "F2", "--tin", "tube 20 x 10 hole 25 cm"], 3),
    "deep": (["size", "F2", "--tin", "round 20 x 7 cm", "--depth", "30"], 4),
    "no temperature": (["bake", "F1", "--oven", ""], 3),
    "not a number": (["bake", "F1", "--oven", "nan C"], 3),
    "above the sky": (["bake", "F1", "--altitude", "9000"], 3),
    "minus price": (["cost", "T1", "--price", "-5"], 3),
    "whole margin": (["cost", "T1", "--margin", "100"], 3),
    "no slices": (["cost", "T1", "--slices", "0"], 3),
    "torte as formula": (["check", "T1"], 3),
    "formula as torte": (["build", "F1"], 3),
    "formula as order": (["plan", "F1"], 3),
    "no such name": (["label", "no-such-name"], 3),
    "up and away": (["read", "../../../../etc/no-such-file"], 3),
}
USAGE = (
    ["label", "T1", "--market", "moon"],
    ["size", "F2", "--tin", "round 20 x 5 cm", "--depth", "nan"],
    ["check", "F2", "--answer", "nonsense"],
    ["check", "F2", "--on", "2027-13-01"],
    ["size", "F2", "--tin", "round 20 x 5 cm", "--eggs", "half"],
    ["plan"],
    ["cost", "T1", "T2"],
    ["no-such-command"],
)


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The folder with the texts of this page."""
    folder = tmp_path_factory.mktemp("bad")
    for name, text in TEXTS.items():
        (folder / name).write_text(text, encoding="utf-8")
    (folder / "binary.txt").write_bytes(bytes(range(256)) * 20)
    (folder / "taken").write_text("mine", encoding="utf-8")
    return folder


@pytest.fixture(scope="module")
def said(many: Many, book: Path, folder: Path) -> dict[str, Said]:
    """Every bad call, in one process."""
    calls = {name: words for name, (words, _) in ASKED.items()}
    for command in COMMANDS:
        for text in ("empty", "binary"):
            calls[f"{command} {text}"] = [command, f"{text}.txt"]
    words = [[*call, "--json", "--book", str(book)] for call in calls.values()]
    return dict(zip(calls, many(words, cwd=folder), strict=True))


@pytest.fixture(scope="module")
def schemas(many: Many) -> dict[str, Any]:
    """The schemas of the commands asked here."""
    names = (*COMMANDS, "size", "bake", "sheet")
    printed = many([["schema", name] for name in names])
    return {name: json.loads(one.stdout) for name, one in zip(names, printed, strict=True)}


def _is_kind(answer: dict[str, Any]) -> None:
    assert answer["ok"] is False
    assert answer["problems"]
    for problem in answer["problems"]:
        assert problem.keys() >= {"code", "where", "read", "ask", "options"}
        assert len(problem["ask"].split()) > 2
        assert "!" not in problem["ask"]
        assert "oops" not in problem["ask"].casefold()
        assert all(option["label"] and option["line"] for option in problem["options"])


@pytest.mark.parametrize("name", ASKED)
def test_a_bad_input_is_asked_with_its_code(
    said: dict[str, Said], schemas: dict[str, Any], name: str
) -> None:
    words, code = ASKED[name]
    one = said[name]
    assert one.code == code, one.stdout + one.stderr
    answer = only_object(one.stdout)
    _is_kind(answer)
    jsonschema.validate(answer, schemas[words[0]])
    assert misfits(answer["result"]) == []
    assert "Traceback" not in one.stderr


@pytest.mark.parametrize("text", ["empty", "binary"])
@pytest.mark.parametrize("command", COMMANDS)
def test_a_text_of_nothing_or_of_bytes_is_asked(
    said: dict[str, Said], schemas: dict[str, Any], command: str, text: str
) -> None:
    one = said[f"{command} {text}"]
    assert one.code == 3, one.stdout + one.stderr
    answer = only_object(one.stdout)
    _is_kind(answer)
    jsonschema.validate(answer, schemas[command])


def test_a_question_leaves_no_folder_behind(said: dict[str, Said], folder: Path) -> None:
    assert said
    assert not [path for path in folder.iterdir() if path.is_dir()]


def test_a_wrong_date_offers_the_days_it_could_be(said: dict[str, Said]) -> None:
    (problem,) = said["two days"].answer["problems"]
    lines = " ".join(option["line"] for option in problem["options"])
    assert "2028-04-03" in lines
    assert "2028-03-04" in lines
    (problem,) = said["weekday"].answer["problems"]
    assert "2027-06-12" in problem["options"][0]["line"]


def test_a_ring_that_cannot_hold_names_both_heights(said: dict[str, Said]) -> None:
    (problem,) = said["low ring"].answer["problems"]
    assert "40 mm" in problem["ask"]
    assert "52 mm" in problem["ask"]
    assert said["low ring"].answer["result"]["mass_g"] is None


def test_wrong_usage_is_exit_2_without_a_traceback(many: Many, book: Path) -> None:
    for words in USAGE:
        (one,) = many([[*words]])
        assert one.code == 2, words
        assert "Traceback" not in one.stderr
        assert one.stderr.strip() or one.stdout.strip()
    assert book.is_dir()


def test_a_file_in_the_place_of_the_folder_is_refused_and_kept(
    many: Many, book: Path, folder: Path
) -> None:
    calls = [
        ["sheet", "F1", "--out", "taken", "--json", "--book", str(book)],
        ["book", "demo", "--book", "taken", "--json"],
    ]
    for one in many(calls, cwd=folder):
        assert one.code == 5, one.stdout + one.stderr
        assert only_object(one.stdout)["problems"]
    assert (folder / "taken").read_text(encoding="utf-8") == "mine"


def test_other_files_of_the_folder_stay(many: Many, book: Path, folder: Path) -> None:
    out = folder / "kept"
    out.mkdir()
    (out / "notes.txt").write_text("mine", encoding="utf-8")
    words = ["sheet", "F1", "--out", str(out), "--json", "--book", str(book)]
    first, second = many([words, words], cwd=folder)
    assert (first.code, second.code) == (0, 0)
    assert (out / "notes.txt").read_text(encoding="utf-8") == "mine"
    names = {Path(f["path"]).name for f in first.answer["result"]["files"]}
    assert {path.name for path in out.iterdir()} == {*names, "notes.txt"}
    assert names == {Path(f["path"]).name for f in second.answer["result"]["files"]}
    shutil.rmtree(out)


def test_hostile_names_of_a_text_stay_inside_the_folder(
    many: Many, book: Path, folder: Path
) -> None:
    names = ["../../etc/passwd", "C:\\windows\\system32", "CON", "a\u202eb", "=HYPERLINK(1)", "..."]
    calls = []
    for number, name in enumerate(names):
        text = folder / f"hostile-{number}.txt"
        text.write_text(f"{name}\n\n100 g white rice flour\n100 g caster sugar\n", encoding="utf-8")
        out = str(folder / "inside" / str(number))
        calls.append(["sheet", text.name, "--out", out, "--json", "--book", str(book)])
    for number, one in enumerate(many(calls, cwd=folder)):
        assert one.code == 0, one.stdout + one.stderr
        for file in one.answer["result"]["files"]:
            path = Path(file["path"])
            assert path.resolve().parent == (folder / "inside" / str(number)).resolve()
            assert path.name.isprintable()
    shutil.rmtree(folder / "inside")


def _changed(book: Path, folder: Path, name: str, file: str, text: str | None) -> Path:
    path = folder / name
    shutil.copytree(book, path)
    if text is None:
        (path / file).unlink()
    else:
        (path / file).write_text(text, encoding="utf-8")
    return path


def test_a_missing_price_makes_the_cost_unknown_not_nothing(
    many: Many, plain: Path, tmp_path: Path
) -> None:
    prices = (plain / "prices.csv").read_text(encoding="utf-8").splitlines()
    left = "\n".join(line for line in prices if not line.startswith("ground hazelnuts")) + "\n"
    without = _changed(plain, tmp_path, "without", "prices.csv", left)
    (one,) = many([["cost", "T1", "--price", "96", "--json", "--book", str(without)]])
    result = one.answer["result"]
    assert one.code == 3
    assert result["labour"] == pytest.approx(52.80)
    unknown = ("material", "direct", "full", "price_for_margin", "margin_pct", "break_even")
    assert [result[key] for key in unknown] == [None] * len(unknown)
    assert "hazelnut" in json.dumps(one.answer["problems"])


def test_no_lots_close_every_gate(many: Many, plain: Path, tmp_path: Path) -> None:
    without = _changed(plain, tmp_path, "without", "lots.csv", None)
    (without / "cleaning.csv").write_text("date,cleaned\n2027-06-10,yes\n", encoding="utf-8")
    (one,) = many([["label", "T3", "--json", "--book", str(without)]])
    gluten = one.answer["result"]["gluten"]
    assert gluten["claim_allowed"] is False
    assert len(gluten["missing"]) >= 4


def test_a_damaged_studio_is_refused_with_its_place(
    many: Many, plain: Path, tmp_path: Path
) -> None:
    damaged = _changed(plain, tmp_path, "damaged", "studio.toml", 'name = "x\n[[')
    calls = [
        [*words, "--json", "--book", str(damaged)]
        for words in (["build", "T1"], ["cost", "T1"], ["plan", "101"], ["label", "T1"])
    ]
    for one in many(calls):
        assert one.code == 5
        assert "studio.toml" in one.stdout
        assert "line 1" in one.stdout
