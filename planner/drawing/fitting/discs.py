"""Order discs: solid, with the number of the joint; an open octagon where it is withheld."""

from planner.drawing.looks import Look
from planner.drawing.marks import mark
from planner.drawing.metrics import text_width
from planner.drawing.primitives import Circle, DrawList, Point, Style, Text, centred_baseline, owned


def order_disc(
    at: Point, number: int, radius: float, look: Look, owner: str = "", *, withheld: bool = False
) -> DrawList:
    """Draw the place of a joint in the order of soldering; nothing else is round and numbered."""
    if withheld:
        return owned(mark("octagon", at, radius * 1.05, look), owner)
    figure = str(number)
    size = radius * 1.5
    room = radius * 1.78
    width = text_width(figure, size, bold=True)
    size *= min(1.0, room / width)
    return (
        Circle(at, radius, Style(fill=look.ink), owner),
        Text(
            (at[0], centred_baseline(at[1], size)),
            figure,
            size,
            look.paper,
            bold=True,
            anchor="middle",
            owner=owner,
        ),
    )
