"""Samples for the rules of the dry fit and of threading. All figures are invented."""

import math

from planner.model.connector import Contact, Terminal
from planner.model.part import Part
from planner.model.plan import PartUse
from tests.building import PHONES, PHONES_IN, Fitting, fitting, lead, plug, record
from tests.checks.samples import bad, good

ENDS = {"A": PHONES, "B": PHONES_IN}
WIRES = ("RD A.T B.T", "GN A.R B.R", "WH A.S B.S")
LINE = "1 shield, 2 +, 3 -"
EIGHT = ("RD", "GN", "BU", "WH", "BK", "YE", "OG", "VT", "GY", "PK", "TQ", "BN", "WHRD")


def line():
    """Return a three-core lead in which everything fits."""
    return lead(ENDS, WIRES)


def with_cable(plan, **changes):
    """Return the plan with its cable changed."""
    cable = plan.definitions.cables[0].evolve(**changes)
    return plan.evolve(definitions=plan.definitions.evolve(cables=(cable,)))


def with_cores(plan, **changes):
    """Return the plan with every core of its cable changed."""
    cores = plan.definitions.cables[0].cores
    return with_cable(plan, cores=tuple(core.evolve(**changes) for core in cores))


def with_plug(plan, **changes):
    """Return the plan with its first connector changed."""
    first, *others = plan.definitions.connectors
    connectors = (first.evolve(**changes), *others)
    return plan.evolve(definitions=plan.definitions.evolve(connectors=connectors))


def with_part(plan, *, after_joint=False, **figures):
    """Return the plan with a boot, or another part, that comes on from A."""
    part = Part(id="part", title="Bench boot", length_mm=20, **{"kind": "boot", **figures})
    use = PartUse(id="boot-a", part="part", at="A", comes_from="A", after_joint=after_joint)
    definitions = plan.definitions.evolve(parts=(part,))
    return plan.evolve(parts=(use,), definitions=definitions)


@bad("strands-too-thick")
def thick_strands():
    """Strands of 3.3 mm in cups of 3 mm."""
    return with_cores(line(), strand_mm=1.1, insulation_mm=4)


@good("strands-too-thick")
@good("bundle-too-thick")
@good("jacket-outside-clamp")
@good("leads-cross")
def all_fits():
    """Thin cores, wide cups, a jacket within the clamp's range; no two leads cross."""
    return line()


@bad("bundle-too-thick")
def narrow_barrel():
    """Three cores of 0.8 mm do not go into a barrel with a bore of 1.5 mm."""
    plan = line()
    barrel = plan.definitions.connectors[0].barrel
    return with_plug(plan, barrel=barrel.evolve(bore_mm=1.5))


@bad("jacket-outside-clamp")
def thin_jacket():
    """A jacket of 6 mm in a clamp that begins at 7 mm."""
    plan = line()
    return with_plug(plan, clamp=plan.definitions.connectors[0].clamp.evolve(min_mm=7))


@bad("leads-cross")
def cores_in_another_order():
    """The cores lie in the cut end in another order than the contacts."""
    return lead(ENDS, (WIRES[1], WIRES[0], WIRES[2]))


def posts(width_mm):
    """Return a three-post inlet with a pitch of 3 mm."""
    jack = plug("post-jack", "T R S")
    terminals = (
        Terminal(kind="post", x_mm=3 * index, y_mm=0, width_mm=width_mm, depth_mm=2)
        for index in range(3)
    )
    contacts = zip(jack.contacts, terminals, strict=True)
    jack = jack.evolve(contacts=tuple(c.evolve(terminal=terminal) for c, terminal in contacts))
    return Fitting(jack, record("post-inlet", "post-jack", "T L+, R R+, S L- R-"))


@bad("gap-small")
def wide_strands_on_near_posts():
    """Strands of 2.4 mm on posts with a pitch of 3 mm."""
    plan = lead({"A": PHONES, "B": posts(0.5)}, WIRES)
    return with_cores(plan, strand_mm=0.8, insulation_mm=2.5)


@good("gap-small")
def thin_strands_on_near_posts():
    """Strands of 0.3 mm on the same posts."""
    return lead({"A": PHONES, "B": posts(0.5)}, WIRES)


def pigtail_past_a_joint(*, sleeved):
    """Return a line whose shield lands on a low post behind the taller post of a signal."""
    wide = fitting(plug("wide-line", "1 2 3"), "wide-line-out", LINE, drive="line")
    posts = plug("post-line", "1 2 3")
    places = ((6.0, 0.0, 0.0), (3.8, 0.0, 5.0), (-5.0, 0.0, 0.0))
    contacts = tuple(
        contact.evolve(
            terminal=Terminal(kind="post", x_mm=x, y_mm=y, z_mm=z, width_mm=0.5, depth_mm=2)
        )
        for contact, (x, y, z) in zip(posts.contacts, places, strict=True)
    )
    posts = fitting(posts.evolve(contacts=contacts), "post-line-in", LINE, drive="line")
    wires = ("RD A.2 B.2", "GN A.3 B.3", "SH A.1 B.1")
    plan = lead({"A": wide, "B": posts}, wires, policy="both-ends")
    landings = tuple(
        each.evolve(sleeved=sleeved and each.conductor == "SH") for each in plan.landings
    )
    return plan.evolve(landings=landings)


@bad("drain-unsleeved")
def bare_pigtail():
    """The bare pigtail of the shield passes a signal's joint on its way to a post behind it."""
    return pigtail_past_a_joint(sleeved=False)


@good("drain-unsleeved")
def sleeved_pigtail():
    """The same pigtail under an insulating sleeve."""
    return pigtail_past_a_joint(sleeved=True)


def ring_of_posts(last):
    """Return a plug with a post in the middle of twelve; `last` is the contact soldered last."""
    contacts = tuple(_post(index) for index in range(13))
    names = [contact.id for contact in contacts]
    ring = plug("ring", " ".join(names)).evolve(contacts=contacts)
    legs = [f"{channel}{leg}" for channel in range(1, 8) for leg in "+-"][:13]
    signals = ", ".join(f"{name} {leg}" for name, leg in zip(names, legs, strict=True))
    far = fitting(plug("wide", " ".join(names)), "wide-inlet", signals, drive="line")
    near = Fitting(ring, record("ring-inlet", "ring", signals, drive="line"))
    wires = [f"{core} A.{name} B.{name}" for core, name in zip(EIGHT, names, strict=True)]
    plan = with_cores(lead({"A": near, "B": far}, wires), strand_mm=0.03, insulation_mm=0.3)
    order = (*(name for name in names if name != last), last)
    return plan.evolve(ends=(plan.ends[0].evolve(solder_order=order), plan.ends[1]))


def _post(index):
    angle, reach_mm = 2 * math.pi * index / 12, 2 if index else 0
    x_mm, y_mm = reach_mm * math.cos(angle), reach_mm * math.sin(angle)
    terminal = Terminal(kind="post", x_mm=x_mm, y_mm=y_mm, width_mm=0.3, depth_mm=2)
    return Contact(id=f"P{index}", terminal=terminal)


@bad("joint-hidden")
def middle_joint_last():
    """The joint in the middle is soldered when the twelve round it stand already."""
    return ring_of_posts(last="P0")


@good("joint-hidden")
def middle_joint_first():
    """The joint in the middle comes first."""
    return ring_of_posts(last="P12")


@bad("cannot-pass")
def narrow_boot():
    """A boot with a bore of 5 mm and a jacket of 6 mm."""
    return with_part(line(), bore_mm=5, outside_mm=12)


@good("cannot-pass")
@good("threaded-too-late")
def wide_boot_in_time():
    """A boot that passes over the jacket and comes on before the joint."""
    return with_part(line(), bore_mm=8, outside_mm=12)


@bad("threaded-too-late")
def boot_after_the_joint():
    """The same boot, planned to come on when the plug is soldered already."""
    return with_part(line(), bore_mm=8, outside_mm=12, after_joint=True)


@bad("shrink-misfit")
def shrink_that_stays_loose():
    """Heat-shrink that recovers to 6.35 mm over a jacket of 6 mm."""
    return with_part(line(), kind="heat-shrink", bore_mm=12.7, recovered_mm=6.35, outside_mm=13.5)


@good("shrink-misfit")
def shrink_that_grips():
    """Heat-shrink that recovers to 4.75 mm over the same jacket."""
    return with_part(line(), kind="heat-shrink", bore_mm=9.5, recovered_mm=4.75, outside_mm=10.3)
