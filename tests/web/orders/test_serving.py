"""A sheet goes out with a policy that lets only its own style through."""

import pytest

from krume.usecases import SheetBytes
from krume.web.orders.serving import sheet_headers

_META = (
    b'<meta http-equiv="Content-Security-Policy" content="default-src &#39;none&#39;; '
    b'style-src &#39;sha256-abc=&#39;">'
)
_HTML = "text/html; charset=utf-8"


def _policy(data: bytes, media: str = _HTML, *, is_as_written: bool = True) -> str:
    return sheet_headers(SheetBytes(data, media, is_as_written))["Content-Security-Policy"]


def test_a_page_keeps_the_policy_it_states_and_is_framed_by_nobody() -> None:
    stated = "default-src 'none'; style-src 'sha256-abc='; frame-ancestors 'none'"
    assert _policy(_META) == stated


@pytest.mark.parametrize("data", [b"<style>x</style>", b"x" * 5000 + _META])
def test_a_page_that_states_none_gets_no_style(data: bytes) -> None:
    assert "style-src" not in _policy(data)


def test_a_page_that_was_changed_by_hand_gets_no_style() -> None:
    assert "style-src" not in _policy(_META, is_as_written=False)


def test_a_pdf_may_show_itself_and_nothing_else() -> None:
    policy = _policy(b"%PDF", "application/pdf")
    assert "object-src 'self'" in policy
    assert "script" not in policy
