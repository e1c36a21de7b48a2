"""Write the demo plans anew from the collection: `python -m tests.demo.make_plans`.

The leads, orders, makers and the faults are invented, for the bench of an invented theatre.
"""

import os
from collections.abc import Callable
from tempfile import TemporaryDirectory
from unittest.mock import patch

from planner.data import data_dir
from planner.dryfit.parts import proposals
from planner.edits.by_signal import land_by_signal
from planner.edits.cables import choose_cable
from planner.edits.ends import choose_connector, choose_pinout, rename_end, turn_end
from planner.edits.landings import cap, exchange, land, lift, link, sleeve
from planner.edits.parts import add_part, take_parts
from planner.edits.routes_of_parts import set_route
from planner.edits.shapes import one_to_many, one_to_one, one_to_two
from planner.edits.texts import accept, set_remarks, set_revision, set_title
from planner.files.plans import write_plan
from planner.library.collection import Library
from planner.library.loading import load_library
from planner.model.connector import Connector
from planner.model.plan import Plan
from planner.services.checking import check_plan

BY = "Saltmarsh Playhouse bench"


def plug(plan: Plan, library: Library, end: str, connector: str, pinout: str) -> Plan:
    """Put a connector and its pinout from the collection on an end."""
    hardware, record = library.connector(connector), library.pinout(pinout)
    assert isinstance(hardware, Connector)
    return choose_connector(plan, end=end, connector=hardware, pinout=record)


def spooled(plan: Plan, library: Library, cable: str) -> Plan:
    """Take a cable from the collection and land all that is certain."""
    record = library.cable(cable)
    assert record is not None
    return land_by_signal(choose_cable(plan, section="trunk", cable=record))[0]


def threaded(plan: Plan, library: Library, part: str, at: str, comes_from: str) -> Plan:
    """Thread a part from the collection."""
    record = library.part(part)
    assert record is not None
    return add_part(plan, part=record, at=at, comes_from=comes_from)


def completed(plan: Plan, library: Library) -> Plan:
    """Thread what the lead still wants from stock: clamps, boots, shrink, labels, covers."""
    return take_parts(plan, proposals=proposals(plan, library.parts()))


def accepted(plan: Plan, library: Library, code: str, end: str, reason: str) -> Plan:
    """Accept the caution of that code at that end."""
    for found in check_plan(plan, library.pinouts()):
        if found.code == code and found.where[0].end == end:
            places = found.place_keys
            return accept(plan, finding_code=code, places=places, reason=reason, by=BY)
    raise LookupError(code)


def cue_desk(library: Library) -> Plan:
    """Five-pole balanced plug to two slim cups, shield at the source end."""
    plan = one_to_two(title="Cue desk headphone lead", order="SP-0417")
    plan = plug(plan, library, "A", "jack-4.4-five-pole", "ferrow-pell-4.4")
    for end, name in (("L", "left cup"), ("R", "right cup")):
        plan = rename_end(plan, end=end, name=name)
        plan = plug(plan, library, end, "jack-3.5-two-pole-slim", "odalisk-cup")
    plan = spooled(set_revision(plan, revision=3), library, "hp4-braid")
    plan = threaded(plan, library, "boot-4.4", "A", "A")
    plan = threaded(plan, library, "splitter-cover", "split", "A")
    plan = threaded(plan, library, "barrel-slim-3.5", "L", "L")
    plan = threaded(plan, library, "barrel-slim-3.5", "R", "R")
    return completed(turn_end(plan, end="A", turn_deg=20), library)


def balanced_line(library: Library) -> Plan:
    """A balanced line, shield at both ends."""
    plan = one_to_one(
        title="Stage left balanced line", order="SP-0409", length_mm=6000, policy="both-ends"
    )
    plan = plug(plan, library, "A", "xlr-3-female", "xlr-3-line")
    plan = plug(plan, library, "B", "xlr-3-male", "xlr-3-line")
    return completed(spooled(plan, library, "pair-foil"), library)


def stereo_to_mono(library: Library) -> Plan:
    """A stereo plug to two mono plugs: a thin pair, spliced to two coaxial legs at the split."""
    plan = one_to_two(
        title="Stereo to two mono", order="SP-0412", length_mm=1500, leg_mm=300, policy="both-ends"
    )
    plan = plug(plan, library, "A", "jack-3.5-three-pole", "trs-stereo-output")
    leg = library.cable("coax-thin")
    assert leg is not None
    for end in ("L", "R"):
        plan = plug(plan, library, end, "jack-6.35-two-pole", "ts-unbalanced-input")
        plan = choose_cable(plan, section=f"leg-{end}", cable=leg)
    return completed(spooled(plan, library, "pair-braid-thin"), library)


def rack_loom(library: Library) -> Plan:
    """Eight circuits after AES59 to eight line plugs, each pair in its own foil."""
    plan = one_to_many(8, title="Recording rack loom", order="SP-0398", length_mm=3000, leg_mm=500)
    plan = plug(plan, library, "A", "dsub-25-male", "aes59-analogue")
    for number in range(1, 9):
        plan = plug(plan, library, f"B{number}", "xlr-3-male", "xlr-3-line")
        plan = rename_end(plan, end=f"B{number}", name=f"circuit {number}")
    plan = spooled(plan, library, "loom-eight-pair")
    for number in range(1, 9):
        plan = sleeve(plan, end="A", conductor=f"{number}s", sleeved=True)
    plan = completed(plan, library)
    reason = "Pairs are dressed row by row and every drain is sleeved."
    return accepted(plan, library, "leads-cross", "A", reason)


def intercom(library: Library) -> Plan:
    """A lead for a headset whose order nobody has confirmed."""
    plan = one_to_one(title="Intercom headset", order="SP-0391", length_mm=1800)
    plan = plug(plan, library, "A", "xlr-4-female", "xlr-4-intercom-pack")
    plan = plug(plan, library, "B", "xlr-4-male", "tarn-wicket-xlr-4")
    plan = spooled(plan, library, "hp4-braid")
    plan = land(plan, end="A", conductor="SH", contact="1")
    plan = turn_end(turn_end(plan, end="A", turn_deg=80), end="B", turn_deg=-30)
    plan = completed(plan, library)
    plan = set_remarks(plan, remarks="One ear: L stands for the one earphone.")
    reason = "The pack on the bench was measured against this order."
    return accepted(plan, library, "pinout-unconfirmed", "A", reason)


def spoiled(library: Library) -> Plan:
    """The cue-desk lead, with cups that were measured, and five faults planted."""
    plan = set_title(cue_desk(library), title="Cue desk headphone lead, spoiled")
    measured = library.pinout("pit-earphone-slim")
    assert measured is not None
    for end in ("L", "R"):
        plan = choose_pinout(plan, end=end, pinout=measured)
    plan = exchange(plan, end="R", conductor="GN", contact="T")
    plan = cap(lift(plan, end="L", conductor="BU"), end="L", conductor="BU")
    plan = link(plan, end="A", contacts=("R1", "R3"))
    plan = lift(plan, end="A", conductor="SH")
    (barrel,) = (it for it in plan.parts if it.id == "barrel-slim-3.5")
    return set_route(
        plan, use=barrel.id, comes_from=barrel.comes_from, after_joint=True, section=barrel.section
    )


PLANS: dict[str, Callable[[Library], Plan]] = {
    "cue-desk-headphone-lead": cue_desk,
    "stage-left-balanced-line": balanced_line,
    "stereo-to-two-mono": stereo_to_mono,
    "recording-rack-loom": rack_loom,
    "intercom-headset": intercom,
    "spoiled-cue-desk": spoiled,
}


def shipped_library() -> Library:
    """Load what ships, without the user's own definitions."""
    with TemporaryDirectory() as empty, patch.dict(os.environ, CUPWRIGHT_DATA=empty):
        return load_library()


def main() -> None:
    """Write every demo plan."""
    library = shipped_library()
    for name, make in PLANS.items():
        write_plan(data_dir("resources") / "demo" / f"{name}.json", make(library))


if __name__ == "__main__":
    main()
