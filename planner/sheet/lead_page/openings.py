"""Where jackets are opened for a split: how much stays, how much comes off."""

from planner.drawing.primitives import DrawList, Poly, Rect, Style
from planner.dryfit.cut_lengths import Opening
from planner.sheet.badge import badge
from planner.sheet.lead_page.dimensions import dimension
from planner.sheet.leaf import Making
from planner.sheet.lettering import INK, PEN, TITLE_HEIGHT, panel_title
from planner.sheet.stack import Part, joined

_HEIGHT, _JACKET, _BADGE = 1550.0, 0.62, 560.0


def openings_panel(making: Making, width: float) -> Part:
    """Draw each opening under the panel's title; nothing, without height, where there is none."""
    openings = making.cuts.openings
    if not openings:
        return (), 0.0
    title = making.words("lead.openings")
    head = panel_title(0, width, 0, title, making.words("lead.mm"))
    drawn = [
        _opening(making, opening, width, TITLE_HEIGHT + 250 + _HEIGHT * place)
        for place, opening in enumerate(openings)
    ]
    return (*head, *joined(drawn)), TITLE_HEIGHT + 250 + _HEIGHT * len(openings)


def _opening(making: Making, opening: Opening, width: float, top: float) -> DrawList:
    """Draw the jacket to the edge where it ends, the cores beyond, both lengths under them."""
    mark, used = badge(opening.start, (0, top), _BADGE)
    left, edge, middle = used, used + (width - used) * _JACKET, top + _BADGE / 2
    jacket = Rect(
        (left, middle - 230), edge - left, 460, Style(fill="#ececec", stroke=INK, width=PEN)
    )
    cable = making.plan.cable_of(opening.section)
    cores = min(len(cable.cores), 6) if cable else 2
    pitch = 400 / max(cores, 1)
    levels = (middle - 200 + pitch * (place + 0.5) for place in range(cores))
    pen = Style(stroke=INK, width=PEN)
    lines = tuple(Poly(((edge, y), (width, y)), pen) for y in levels)
    base = top + _BADGE + 420
    return (
        *mark,
        *lines,
        jacket,
        *dimension((left, edge), base, making.words.number(opening.keep_mm), (middle + 300,) * 2),
        *dimension((edge, width), base, making.words.number(opening.off_mm), (middle + 300,) * 2),
    )
