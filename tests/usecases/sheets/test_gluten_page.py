"""The gluten page on paper: the verdict and what it does not prove come first."""

from pathlib import Path

from krume.usecases import Asked, GlutenWish, gluten_sheets
from krume.usecases.label.gluten_said import paper_words


def test_it_is_written_as_pdf_and_page_whatever_the_verdict(demo: Asked, tmp_path: Path) -> None:
    answer = gluten_sheets("T1", GlutenWish(), demo, out=tmp_path)
    assert answer.problems == ()
    assert [Path(file.path).name for file in answer.result.files] == [
        "t1-gluten-page.pdf", "t1-gluten-page.html",
    ]  # fmt: skip
    assert (tmp_path / "t1-gluten-page.pdf").read_bytes().startswith(b"%PDF")


def test_the_verdict_and_what_it_does_not_prove_stand_before_the_lots(
    demo: Asked, tmp_path: Path
) -> None:
    gluten_sheets("T1", GlutenWish(), demo, out=tmp_path)
    page = (tmp_path / "t1-gluten-page.html").read_text(encoding="utf-8")
    places = [
        page.index(word)
        for word in ("to eat with coeliac disease", "To read aloud", "What this does not prove",
                     "What a label may say", "L-008", "What such papers prove")
    ]  # fmt: skip
    assert places == sorted(places)
    assert "licensing authority decide" in page


def test_names_with_signs_of_html_come_out_harmless(own_demo: Asked, tmp_path: Path) -> None:
    assert own_demo.book is not None
    path = own_demo.book / "lots.csv"
    row = '"<script>x</script>",ground hazelnuts,may contain,"<b>wheat</b>",,2027-01-01,,invented'
    path.write_text(path.read_text(encoding="utf-8") + f"{row}\n", encoding="utf-8")
    gluten_sheets("T1", GlutenWish(), own_demo, out=tmp_path)
    page = (tmp_path / "t1-gluten-page.html").read_text(encoding="utf-8")
    assert "<script>x" not in page
    assert "&lt;script&gt;x" in page
    assert "<b>wheat" not in page


def test_a_paper_says_its_kind_once() -> None:
    assert paper_words("lab test", "lab test of the lot, <5 mg/kg", "") == (
        "lab test of the lot, <5 mg/kg"
    )
    assert paper_words("certificate", "≤20 mg/kg", "R5 ELISA") == (
        "certificate: ≤20 mg/kg; by R5 ELISA"
    )
