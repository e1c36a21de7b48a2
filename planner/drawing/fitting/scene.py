"""What every part of a fitted face is drawn with: the end, its place on the page, sizes of type."""

from dataclasses import dataclass
from functools import cached_property

from planner.drawing.looks import Look
from planner.drawing.primitives import Point
from planner.dryfit.bodies import Lead
from planner.dryfit.fit import EndFit
from planner.geometry.views import turned_point
from planner.model.connector import Connector, Terminal


@dataclass(frozen=True, slots=True)
class Letters:
    """Sizes of type and of order discs, in target units; never scaled with the drawing."""

    name: float
    word: float
    disc: float
    figure: float


SCREEN_LETTERS = Letters(name=15, word=12, disc=10, figure=12)
PRINT_LETTERS = Letters(name=481, word=344, disc=300, figure=481)


def letters_of(look: Look) -> Letters:
    """Return the sizes for a look: px on the screen, 0.01 mm on paper."""
    return SCREEN_LETTERS if look.hatched_cores else PRINT_LETTERS


@dataclass(frozen=True)
class Scene:
    """A connector with its dry fit, at a place and a scale.

    `view_deg` turns the whole picture counter-clockwise, plug and cable together.
    """

    connector: Connector
    fit: EndFit
    centre: Point
    scale: float
    look: Look
    view_deg: float = 0.0

    @property
    def letters(self) -> Letters:
        """Sizes of type for this look."""
        return letters_of(self.look)

    @property
    def face_deg(self) -> float:
        """How far the face is turned as drawn."""
        return self.fit.turn_deg + self.view_deg

    def at(self, point: tuple[float, ...]) -> Point:
        """Return a place of the dry fit (mm, x right, y up; z is left out) in target units."""
        x, y = turned_point(point[0], point[1], self.view_deg)
        return (self.centre[0] + x * self.scale, self.centre[1] - y * self.scale)

    def terminal(self, contact: str) -> Terminal:
        """Return the terminal of a contact."""
        return self.connector.by_id[contact].terminal

    def joint(self, contact: str) -> Point:
        """Return where a contact is soldered, in target units."""
        terminal = self.terminal(contact)
        x, y = turned_point(terminal.x_mm, terminal.y_mm, self.face_deg)
        return (self.centre[0] + x * self.scale, self.centre[1] - y * self.scale)

    @cached_property
    def lead_of(self) -> dict[str, Lead]:
        """Leads by their conductor."""
        return {lead.landing.conductor: lead for lead in self.fit.leads}

    @cached_property
    def place_in_order(self) -> dict[str, int]:
        """The number of each joint in the order of soldering, from 1."""
        return {contact: place for place, contact in enumerate(self.fit.order, start=1)}
