"""Our leads can be built from what ships: jacket in the clamp, strands in the cup."""

import pytest

LEADS = [  # invented, of our scenario: cable and the connectors that its jacket is clamped in
    ("hp4-braid", "jack-4.4-five-pole"),
    ("hp4-stripes", "jack-4.4-five-pole"),
    ("hp4-silver", "jack-2.5-four-pole"),
    ("five-braid", "jack-4.4-five-pole"),
    ("pair-plain", "jack-3.5-two-pole-slim"),
    ("triple-spiral", "jack-3.5-three-pole"),
    ("hp4-braid", "jack-3.5-three-pole"),
    ("hp4-braid", "jack-3.5-four-pole"),
    ("twin-spiral", "jack-3.5-three-pole"),
    ("pair-braid-thin", "jack-3.5-three-pole"),
    ("coax-single", "jack-6.35-two-pole"),
    ("coax-single", "phono-male"),
    ("pair-spiral", "xlr-3-male"),
    ("pair-spiral", "xlr-3-female"),
    ("pair-foil", "xlr-3-female"),
    ("star-quad", "xlr-3-male"),
    ("six-plain", "xlr-5-female"),
    ("hp4-braid", "mini-xlr-4-female"),
    ("pair-foil", "din-5-180-male"),
    ("loom-eight-pair", "dsub-25-male"),
    ("loom-eight-pair", "dsub-25-female"),
]


@pytest.mark.parametrize(("cable_id", "connector_id"), LEADS)
def test_jacket_is_within_the_clamp(shipped, cable_id, connector_id):
    clamp = shipped.connector(connector_id).clamp
    assert clamp.min_mm <= shipped.cable(cable_id).jacket_mm <= clamp.max_mm


@pytest.mark.parametrize(("cable_id", "connector_id"), LEADS)
def test_strands_go_into_the_cups(shipped, cable_id, connector_id):
    thickest = max(core.conductor_mm for core in shipped.cable(cable_id).cores)
    terminals = [contact.terminal for contact in shipped.connector(connector_id).contacts]
    assert all(terminal.bore_mm > thickest for terminal in terminals if terminal.kind == "cup")


def test_the_loom_is_too_thick_for_an_xlr(shipped):
    assert shipped.cable("loom-eight-pair").jacket_mm > shipped.connector("xlr-3-male").clamp.max_mm
