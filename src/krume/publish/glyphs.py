"""The signs of a sheet, one drawing for paper and page."""

GLYPHS = {
    "bowl": '<path d="M2.5 8h19a9.5 11 0 0 1-19 0z"/>',
    "shut": '<path d="M4 2v20M20 2v20M4 8.5h16M4 15.5h16"/>',
    "unbaked": (
        '<path stroke-dasharray="4 3" d="M3 8h18v11H3z"/>'
        '<path d="M8 5c0-2 2-2 2-4M14 5c0-2 2-2 2-4"/>'
    ),
    "twice": '<path d="M3 20.5h18M8.5 4v12M15.5 4v12"/>',
    "outside": '<path d="M6 3H2.5v18H6M11 3h3.5v18H11"/><circle cx="20.5" cy="12" r="2"/>',
}


def svg(name: str) -> str:
    """A sign as a drawing of its own, black lines on nothing."""
    return (
        '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 24 24" fill="none" stroke="#000"'
        f' stroke-width="2.5">{GLYPHS[name]}</svg>'
    )
