"""The blend card of a chosen blend: three files, with the grams of that blend."""

import json
from dataclasses import replace
from pathlib import Path

from krume.usecases import Asked, BlendWish, choose_blend
from tests.usecases.blends import FLOURS, WITHOUT_TEFF


def test_the_card_of_the_new_blend_is_written_three_times(demo: Asked, tmp_path: Path) -> None:
    result = choose_blend(replace(WITHOUT_TEFF, out=tmp_path / "out"), demo).result
    assert [file.format for file in result.files] == ["pdf", "html", "json"]
    for file in result.files:
        assert Path(file.path).stat().st_size > 500
    said = json.loads(Path(result.files[2].path).read_text(encoding="utf-8"))
    text = json.dumps(said, ensure_ascii=False)
    assert "millet flour" in text
    assert "teff flour" not in text.replace("without teff flour", "")
    assert "L-004" in text


def test_a_blend_for_no_formula_has_a_card_too(demo: Asked, tmp_path: Path) -> None:
    wish = BlendWish(FLOURS, want="protein 6, fat 1.1", limits=("starch 30..50",), out=tmp_path)
    result = choose_blend(wish, demo).result
    assert len(result.files) == 3
    assert all(Path(file.path).name.startswith("blend-of-") for file in result.files)
