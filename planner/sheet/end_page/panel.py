"""What an end page is put together from: panels with their height, and words drawn in them."""

from dataclasses import dataclass

from planner.drawing.primitives import DrawList
from planner.sheet.block import moved
from planner.sheet.lettering import TITLE_HEIGHT, panel_title
from planner.sheet.paper import LIVE_WIDTH

LEFT_WIDTH = 11800.0
RIGHT_LEFT = 12200.0
RIGHT_WIDTH = LIVE_WIDTH - RIGHT_LEFT
PANEL_TOP = TITLE_HEIGHT + 150


@dataclass(frozen=True, slots=True)
class Panel:
    """Items drawn from a corner at 0, 0, and how high they are."""

    items: DrawList
    height: float

    def at(self, x: float, y: float) -> DrawList:
        """Return the items with the panel's corner moved."""
        return moved(self.items, (x, y))


def titled(title: str, width: float, body: Panel, note: str = "") -> Panel:
    """Put a title over a panel's body."""
    head = panel_title(0, width, 0, title, note)
    return Panel((*head, *body.at(0, PANEL_TOP)), PANEL_TOP + body.height)
