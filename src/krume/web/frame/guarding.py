"""The guard at the door: only this machine's own names, no cross-site writing, no huge bodies."""

import re
from collections.abc import MutableMapping
from typing import Any

from starlette.datastructures import Headers, MutableHeaders
from starlette.responses import PlainTextResponse
from starlette.types import ASGIApp, Message, Receive, Scope, Send

BODY_LIMIT = 2 * 1024 * 1024
"""Bytes a form or an upload may have."""

_SAFE = ("GET", "HEAD", "OPTIONS")
_OWN = re.compile(r"(?:127\.0\.0\.1|localhost|\[::1\])(?::\d+)?", re.IGNORECASE | re.ASCII)
_POLICY = (
    "default-src 'none'; style-src 'self'; script-src 'self'; font-src 'self'; img-src 'self'; "
    "connect-src 'self'; manifest-src 'self'; worker-src 'self'; form-action 'self'; "
    "frame-ancestors 'none'; base-uri 'none'"
)
_HEADERS = {
    "Content-Security-Policy": _POLICY,
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Opener-Policy": "same-origin",
    "Cross-Origin-Resource-Policy": "same-origin",
}


class Guard:
    """Refuses what does not come from this machine's own pages, and marks what goes out."""

    def __init__(self, app: ASGIApp) -> None:
        self.app = app

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Let a request through, or answer it here."""
        if scope["type"] != "http":
            await self.app(scope, receive, send)
            return
        refusal = _refusal(scope)
        app = self.app if refusal is None else refusal
        await app(scope, _Counted(receive).receive, _marked(send))


def _refusal(scope: Scope) -> PlainTextResponse | None:
    headers = Headers(scope=scope)
    if not _is_own_name(headers.get("host", "")):
        return PlainTextResponse("This address is not krume's. Open http://127.0.0.1 instead.", 421)
    if scope["method"] not in _SAFE and not _is_own_page(headers):
        return PlainTextResponse("This form comes from another site. Nothing was changed.", 403)
    length = headers.get("content-length", "0")
    if not length.isdecimal() or int(length) > BODY_LIMIT:
        limit = f"{BODY_LIMIT // 1024 // 1024} MB"
        return PlainTextResponse(f"That is more than {limit}. Nothing was changed.", 413)
    return None


def _is_own_name(host: str) -> bool:
    """Whether a Host names this machine: a page elsewhere may have bound its name to us."""
    return _OWN.fullmatch(host) is not None


def _is_own_page(headers: Headers) -> bool:
    site = headers.get("sec-fetch-site")
    if site is not None:
        return site in ("same-origin", "none")
    origin = headers.get("origin")
    return origin is None or origin == f"http://{headers.get('host', '')}"


class _Counted:
    """Counts a body that does not say its length; past the limit it ends."""

    def __init__(self, receive: Receive) -> None:
        self._receive = receive
        self._seen = 0

    async def receive(self) -> Message:
        message = await self._receive()
        self._seen += len(message.get("body", b""))
        return {"type": "http.disconnect"} if self._seen > BODY_LIMIT else message


def _marked(send: Send) -> Send:
    async def sends(message: MutableMapping[str, Any]) -> None:
        if message["type"] == "http.response.start":
            headers = MutableHeaders(scope=message)
            for name, value in _HEADERS.items():
                headers.setdefault(name, value)
            headers.setdefault("Cache-Control", "no-store")
        await send(message)

    return sends
