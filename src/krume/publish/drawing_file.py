"""A drawing as a file of its own: the page's classes with their light colours written in."""

_FAMILY = "Krume Next, Atkinson Hyperlegible Next, DejaVu Sans, sans-serif"
INKS = {
    "paper": "#f3f4ee", "ink": "#1e1830", "ink-2": "#514b61", "edge": "#757080", "grain": "#2a2138",
}  # fmt: skip
"""The tokens of the page that a drawing uses, as they are by day."""

_STYLE = (
    f"svg{{font-family:{_FAMILY}}}"
    f".d-line{{stroke:{INKS['ink']};fill:none}}"
    f".d-hair{{stroke:{INKS['edge']};fill:none}}"
    f".d-ink,.d-text{{fill:{INKS['ink']}}}"
    f".d-text-2{{fill:{INKS['ink-2']}}}"
    f".g-line{{stroke:{INKS['grain']};fill:none}}"
    f".g-solid{{fill:{INKS['grain']}}}"
    f".d-mark{{fill:#fff;stroke:{INKS['ink']}}}"
    ".d-semi{font-weight:600}.d-bold{font-weight:800}"
    ".d-halo{fill:none;stroke:#fff;stroke-width:4;stroke-linejoin:round;font-weight:800}"
)


def drawing_file(svg: str) -> str:
    """A drawing of a page that can be opened, printed and sent by itself; the ground is white."""
    start = svg.index(">") + 1
    wide, high = svg[: svg.index(">")].split('viewBox="0 0 ')[1].split('"')[0].split()
    ground = f'<rect width="{wide}" height="{high}" fill="#fff"/>'
    opening = svg[:start].replace(" viewBox=", f' width="{wide}" height="{high}" viewBox=')
    # Title and description stay the first children: readers look for them there.
    head = svg.rindex("</desc>") + len("</desc>") if "</desc>" in svg else start
    return f"{opening}{svg[start:head]}<style>{_STYLE}</style>{ground}{svg[head:]}\n"
