"""Ends with cores and cups at given places, to be turned; invented figures."""

import math

import numpy as np

from planner.dryfit.seats import Seats
from planner.dryfit.site import site_of
from planner.model.cable import Cable, Core
from planner.model.connector import Contact, Terminal
from planner.model.plan import Conductor, Definitions, End, Landing, Link, Plan, Run, Section
from planner.wiring.graph import Wiring
from tests.dryfit.crowds import wide_connector

COLOURS = ("BK", "BN", "RD", "OG", "YE", "GN", "BU", "VT", "GY", "WH", "PK", "TQ")


def end_plan(exits, cups, *, colour=None, turn_deg=0.0, links=(), spare=(), groups=None, back=()):
    """Return a plan whose end B has core k, at exits[k], landed on contact k, at cups[k].

    Cores have colours of their own unless `colour` is given. `spare` are places of cups that
    nothing is landed on; `groups` names the group of each core. End A has the same plug, with core
    k on the contact that `back` gives. A cup may have a height as well.
    """
    count = len(exits)
    plug = _plug([*cups, *spare])
    landings = [Landing(end="B", conductor=f"w{k}", contact=f"c{k}") for k in range(count)]
    landings += [Landing(end="A", conductor=f"w{k}", contact=f"c{c}") for k, c in enumerate(back)]
    names = groups or [""] * count
    cores = tuple(_core(k, exits[k], colour or COLOURS[k % 12], names[k]) for k in range(count))
    cable = Cable(id="cable", title="Cable", jacket_mm=8, cores=cores)
    return Plan(
        ends=(End(id="A", connector="plug"), End(id="B", connector="plug", turn_deg=turn_deg)),
        sections=(Section(id="s", near="A", far="B", cable="cable", length_mm=900),),
        conductors=tuple(
            Conductor(id=f"w{k}", runs=(Run(section="s", core=f"w{k}"),)) for k in range(count)
        ),
        landings=tuple(sorted(landings, key=lambda it: (it.end, int(it.conductor[1:])))),
        links=tuple(Link(end=end, contacts=contacts) for end, *contacts in links),
        definitions=Definitions(connectors=(plug,), cables=(cable,)),
    )


def _plug(cups):
    contacts = tuple(
        Contact(
            id=f"c{k}",
            terminal=Terminal(kind="cup", x_mm=x, y_mm=y, z_mm=z, bore_mm=0.5, depth_mm=2, takes=2),
        )
        for k, (x, y, z) in enumerate((*cup, 0.0)[:3] for cup in cups)
    )
    return wide_connector("plug", contacts)


def _core(number, place, colour, group):
    x, y = place
    wire = {"strands": 7, "strand_mm": 0.1, "insulation_mm": 0.7}
    return Core(id=f"w{number}", colours=(colour,), x_mm=x, y_mm=y, group=group, **wire)


def crowded(seed, count, *, lay_mm=1.6, reach_mm=4.0):
    """Return exits and cups at random places, no two of a kind too near each other."""
    chance = np.random.default_rng(seed)
    return _apart(chance, count, lay_mm, 0.72), _apart(chance, count, reach_mm, 1.5)


def stepped(seed, count):
    """Return exits and cups at random places and heights: leads pass by metal on their way."""
    exits, cups = crowded(seed, count, lay_mm=2.0, reach_mm=1.2)
    heights = np.random.default_rng(seed).uniform(-8, 0, count).tolist()
    return exits, [(x, y, z) for (x, y), z in zip(cups, heights, strict=True)]


def _apart(chance, count, reach, least):
    reach = max(reach, 0.8 * least * math.sqrt(count))
    found = []
    while len(found) < count:
        point = chance.uniform(-reach, reach, 2)
        if all(math.dist(point, other) >= least for other in found):
            found.append((float(point[0]), float(point[1])))
        elif chance.random() < 0.01:
            reach *= 1.02
    return found


def seats_of(plan):
    """Return the seats of end B."""
    return Seats(site_of(plan, Wiring(plan), "B"))


def turned(points, turn_deg):
    """Return points turned round the axis."""
    cos, sin = math.cos(math.radians(turn_deg)), math.sin(math.radians(turn_deg))
    return [(x * cos - y * sin, x * sin + y * cos) for x, y in points]
