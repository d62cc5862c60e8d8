"""The same jobs as pages: rendered here, on this machine, for one person."""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from krume.web.frame.application import application
    from krume.web.frame.serving import serve

__all__ = ["application", "serve"]


def __getattr__(name: str) -> object:
    """A name of the frame, imported when it is first asked for."""
    if name == "application":
        from krume.web.frame.application import application

        return application
    if name == "serve":
        from krume.web.frame.serving import serve

        return serve
    raise AttributeError(name)
