"""The ladder of trust, drawn: four rungs, filled as far as a record has come."""

from functools import partial
from typing import TYPE_CHECKING

from planner.app.panels.widgets.drawn import Drawn
from planner.drawing.primitives import Circle, DrawList, Poly, Primitive, Style, Text
from planner.model.source import TRUST_LADDER, Trust

if TYPE_CHECKING:
    from planner.drawing.looks import Look

RUNGS: dict[Trust, str] = {
    "hearsay": "hearsay",
    "documented": "documented",
    "confirmed": "confirmed on the part",
    "confirmed-by-two": "confirmed by two",
}
_STEP, _TOP, _LEFT, _RADIUS = 26, 14, 12, 7
SIZE = (230, _TOP * 2 + _STEP * (len(TRUST_LADDER) - 1))


def ladder(trust: Trust, look: "Look") -> DrawList:
    """Draw the rungs, the lowest at the foot; the highest reached is bold and says `here`."""
    reached = TRUST_LADDER.index(trust)
    foot = _TOP + _STEP * (len(TRUST_LADDER) - 1)
    pole = Poly(((_LEFT, _TOP), (_LEFT, foot)), Style(stroke=look.edge, width=1.5))
    items: list[Primitive] = [pole]
    for rung, name in enumerate(TRUST_LADDER):
        y, full, here = foot - _STEP * rung, rung <= reached, rung == reached
        rim = Style(fill=look.ink if full else look.paper, stroke=look.ink, width=1.5)
        words = RUNGS[name] + (": here" if here else "")
        ink = look.ink if full else look.ink2
        items.append(Circle((_LEFT, y), _RADIUS, rim))
        items.append(Text((_LEFT + 16, y + 4.7), words, 13, ink, bold=here))
    return tuple(items)


class Ladder(Drawn):
    """Show how far a record may be trusted."""

    def __init__(self, look: "Look") -> None:
        super().__init__(SIZE, look)

    def show_trust(self, trust: Trust) -> None:
        """Show another rung."""
        self.setAccessibleName(f"Trust: {RUNGS[trust]}")
        self.show_drawing(partial(ladder, trust))
