"""Turn a connector's positions to the other side: used on reading and on writing."""

from planner.geometry.views import mirrored_angle_deg, mirrored_point
from planner.model.connector import Connector, Contact
from planner.units import rounded

FIGURE_DIGITS = 9


def mirrored(connector: Connector) -> Connector:
    """Return the record with x and opening angles as seen from the other side.

    z stays: it points towards the cable whichever side a file is drawn from.
    """
    return connector.evolve(contacts=tuple(map(_mirrored_contact, connector.contacts)))


def _mirrored_contact(contact: Contact) -> Contact:
    terminal = contact.terminal
    x_mm, y_mm = mirrored_point(terminal.x_mm, terminal.y_mm)
    opening_deg = rounded(mirrored_angle_deg(terminal.opening_deg), FIGURE_DIGITS)
    return contact.evolve(terminal=terminal.evolve(x_mm=x_mm, y_mm=y_mm, opening_deg=opening_deg))
