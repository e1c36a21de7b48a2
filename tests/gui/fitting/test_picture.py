"""Room for the labels beside the face."""

from types import SimpleNamespace

from planner.app.fitting.picture import _more_beside
from planner.drawing.cores import plate_width
from planner.library.loading import load_library


def test_two_shields_on_a_contact_have_room_for_their_plates_as_they_are_drawn():
    cable = load_library(()).cable("twin-spiral")
    leads = [
        SimpleNamespace(part=part, landing=SimpleNamespace(contact="S")) for part in cable.shields
    ]
    drawn = sum(plate_width(code) + 4 for code in ("SH WHs", "SH RDs"))
    state = SimpleNamespace(fit=SimpleNamespace(leads=leads))
    assert _more_beside(state) == drawn - plate_width("WHBK")
