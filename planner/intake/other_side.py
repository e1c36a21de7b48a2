"""Which contact of a connector stands where another one does, seen from the other side."""

from planner.geometry.placing import mirror_partners
from planner.model.connector import Connector


def mirrored_contacts(connector: Connector) -> dict[str, str] | None:
    """Return for each contact the one at its mirror image; None where there is none for some.

    Nor are there any of a plug with rings on one axis: it looks the same from both sides.
    """
    if connector.mating == "concentric":
        return None
    return mirror_partners(
        {it.id: (it.terminal.x_mm, it.terminal.y_mm) for it in connector.contacts}
    )
