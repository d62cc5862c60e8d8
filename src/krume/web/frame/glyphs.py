"""Signs of state: each has a shape, and a word always stands beside it."""

GLYPHS = {
    "in": '<path class="solid" d="M2 2h20v20H2z"/><path class="cut" d="M6.5 12.5l4 4 7-9"/>',
    "bowl": '<path d="M2.5 8h19a9.5 11 0 0 1-19 0z"/>',
    "ask": '<path d="M12 2.8a9.2 9.2 0 1 1-6.5 2.7"/><circle class="solid" cx="12" cy="12" r="3"/>',
    "shut": '<path d="M4 2v20M20 2v20M4 8.5h16M4 15.5h16"/>',
    "open": '<path d="M4 2v20M20 2v20M4 8.5l7-5M4 15.5l7-5"/>',
    "inside": '<path d="M7 3H3v18h4M17 3h4v18h-4"/><circle class="solid" cx="12" cy="12" r="3.2"/>',
    "outside": (
        '<path d="M6 3H2.5v18H6M11 3h3.5v18H11"/><circle class="solid" cx="20.5" cy="12" r="3.2"/>'
    ),
    "clash": '<path class="solid" d="M1 3l10 9-10 9zM23 3l-10 9 10 9z"/>',
    "unbaked": (
        '<path stroke-dasharray="4 3" d="M3 8h18v11H3z"/>'
        '<path d="M8 5c0-2 2-2 2-4M14 5c0-2 2-2 2-4"/>'
    ),
    "back": '<path d="M9 4L3 10l6 6M3 10h11a6 6 0 0 1 0 12h-4"/>',
    "twice": '<path d="M3 20.5h18M8.5 4v12M15.5 4v12"/>',
}
