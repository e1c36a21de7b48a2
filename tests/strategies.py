"""Random plans for property tests: whole, half-made, and wrong in every way a record allows."""

from hypothesis import strategies as st

from planner.model.plan import (
    Acceptance,
    Cap,
    Conductor,
    Definitions,
    End,
    Landing,
    Link,
    Plan,
    Run,
    Section,
    Split,
)
from tests import building

FITTINGS = (
    building.PHONES,
    building.PHONES_IN,
    building.BALANCED,
    building.BALANCED_IN,
    building.CUP,
    building.LINE_OUT,
    building.LINE_IN,
    building.PHONO_OUT,
    building.PHONO_IN,
    building.HEADSET,
)
CORES = ("RD", "GN", "BU", "WH", "BK", "SH", "SH1")
CABLE = building.cable(CORES)
DEFINITIONS = Definitions(
    connectors=tuple({each.connector.id: each.connector for each in FITTINGS}.values()),
    pinouts=tuple(each.pinout for each in FITTINGS),
    cables=(CABLE,),
)
CONNECTORS = {each.id: each for each in DEFINITIONS.connectors}
NAMES = ("A", "B", "C", "D")
POLICIES = st.sampled_from([None, "both-ends", "source-end", "load-end", "isolated"])


@st.composite
def _end(draw, name):
    each = draw(st.sampled_from(FITTINGS))
    other = draw(st.sampled_from(FITTINGS))
    connector = draw(st.sampled_from([each.connector.id] * 6 + ["", other.connector.id]))
    return End(
        id=name,
        connector=connector,
        pinout=draw(st.sampled_from([each.pinout.id] * 6 + [""])),
        channel=draw(st.sampled_from(["", "L", "R", "1", "mic"])),
        role=draw(st.sampled_from(["auto"] * 4 + ["source", "load"])),
    )


@st.composite
def _sections(draw, names):
    if len(names) < 2:
        return ()
    cable = draw(st.sampled_from(["cable"] * 8 + [""]))
    far = names[1] if len(names) == 2 else "Y"
    trunk = Section(
        id="trunk",
        near=names[0],
        far=far,
        cable=cable,
        length_mm=900,
        shield_policy=draw(POLICIES),
    )
    legs = names[1:] if far == "Y" else ()
    fan = {"fan_of": "trunk"} if draw(st.booleans()) else {"cable": "cable"}
    return (
        trunk,
        *(Section(id=f"leg-{name}", near="Y", far=name, length_mm=300, **fan) for name in legs),
    )


@st.composite
def _conductors(draw, sections):
    legs = [section.id for section in sections[1:]]
    found = []
    for core in draw(st.lists(st.sampled_from(CORES), unique=True)) if sections else ():
        taken = draw(st.lists(st.sampled_from(legs), unique=True)) if legs else []
        runs = tuple(Run(section=each, core=core) for each in ("trunk", *taken))
        found.append(
            Conductor(id=core, kind="shield" if core.startswith("SH") else "core", runs=runs)
        )
    return tuple(found)


def _contacts(end):
    connector = CONNECTORS.get(end.connector)
    return [contact.id for contact in connector.contacts] if connector else ["X"]


@st.composite
def _joints(draw, ends, conductors):
    """Draw landings, caps and links; a conductor may even land where it does not come out."""
    landings, caps, links = [], [], []
    for end in ends:
        for conductor in conductors:
            fate = draw(st.sampled_from(["land"] * 5 + ["loose", "cap"]))
            if fate == "land":
                contact = draw(st.sampled_from(_contacts(end)))
                landings.append(Landing(end=end.id, conductor=conductor.id, contact=contact))
            elif fate == "cap":
                caps.append(Cap(end=end.id, conductor=conductor.id))
        if len(_contacts(end)) > 1 and draw(st.integers(0, 5)) == 0:
            two = draw(st.permutations(_contacts(end)))[:2]
            links.append(Link(end=end.id, contacts=tuple(two)))
    return tuple(landings), tuple(caps), tuple(links)


@st.composite
def plans(draw):
    """Draw a plan with up to four ends; all its names hang together, its wiring need not."""
    names = NAMES[: draw(st.integers(0, len(NAMES)))]
    ends = tuple(draw(_end(name)) for name in names)
    sections = draw(_sections(names))
    conductors = draw(_conductors(sections))
    landings, caps, links = draw(_joints(ends, conductors))
    return Plan(
        title=draw(st.sampled_from(["", "cue desk lead", "<b>&"])),
        ends=ends,
        splits=(Split(id="Y"),) if len(names) > 2 else (),
        sections=sections,
        conductors=conductors,
        landings=landings,
        caps=caps,
        links=links,
        acceptances=draw(st.sampled_from([(), (Acceptance(code="open", reason="known"),)])),
        definitions=DEFINITIONS,
    )
