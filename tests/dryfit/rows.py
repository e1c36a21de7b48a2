"""Ends with cups in rows, as in flat shells, and a core on each; invented figures."""

import math

import numpy as np

from planner.dryfit.gaps import pair_gaps_mm
from planner.dryfit.site import site_of
from planner.model.cable import Cable, Core, Shield
from planner.model.connector import Barrel, Clamp, Connector, Contact, Shell, Terminal
from planner.model.plan import Conductor, Definitions, End, Landing, Plan, Run, Section
from planner.wiring.graph import Wiring

PITCH_MM, BETWEEN_ROWS_MM = 2.77, 2.84


def places(count):
    """Return the middles of cups in rows: two up to 50, then four times as wide as high."""
    rows = 1 if count == 1 else 2 if count <= 50 else round(math.sqrt(count) / 2)
    across = math.ceil(count / rows)
    return [
        (
            (k % across - (across - 1) / 2 + (k // across % 2) / 2) * PITCH_MM,
            ((rows - 1) / 2 - k // across) * BETWEEN_ROWS_MM,
        )
        for k in range(count)
    ]


def sunflower(count):
    """Return places of cores of 0.9 mm in a round cable, no two in one."""
    return [(0.55 * math.sqrt(k) * math.cos(2.4 * k), 0.55 * math.sqrt(k) * math.sin(2.4 * k))
            for k in range(count)]  # fmt: skip


def rows_plan(count, *, tails=0, moved=(), **more):
    """Return a plan whose end B has a core on each cup; the last cups have bare tails.

    `moved` names a core and the cup that it goes to instead of its own.
    """
    names = [f"w{k}" for k in range(count - tails)] + [f"s{k}" for k in range(tails)]
    on = dict(zip(names, (f"c{k}" for k in range(count)), strict=True))
    if moved:
        on[moved[0]] = moved[1]
    plug, cable = _plug(count), _cable(count - tails, tails)
    return Plan(
        ends=(End(id="A"), End(id="B", connector="rows")),
        sections=(Section(id="s", near="A", far="B", cable="cable", length_mm=900),),
        conductors=tuple(
            Conductor(
                id=name,
                kind="shield" if name.startswith("s") else "core",
                runs=(Run(section="s", core=name),),
            )
            for name in names
        ),
        landings=tuple(Landing(end="B", conductor=name, contact=on[name]) for name in names),
        definitions=Definitions(connectors=(plug,), cables=(cable,)),
        **more,
    )


def _plug(count):
    contacts = tuple(
        Contact(
            id=f"c{k}",
            terminal=Terminal(kind="cup", x_mm=x, y_mm=y, bore_mm=1.1, depth_mm=3, takes=2),
        )
        for k, (x, y) in enumerate(places(count))
    )
    return Connector(
        id="rows",
        title="Rows",
        family="test",
        gender="male",
        drawn_from="solder",
        shell=Shell(shape="d", width_mm=190, height_mm=30),
        clamp=Clamp(min_mm=3, max_mm=40),
        barrel=Barrel(outside_mm=200, bore_mm=30, length_mm=60),
        contacts=contacts,
    )


def _cable(count, tails):
    cores = tuple(
        Core(
            id=f"w{k}",
            colours=("WH",),
            strands=7,
            strand_mm=0.16,
            insulation_mm=0.9,
            x_mm=x,
            y_mm=y,
        )
        for k, (x, y) in enumerate(sunflower(max(count, 1)))
    )
    shields = tuple(Shield(id=f"s{k}", kind="braid", tail_mm=0.6) for k in range(tails))
    jacket_mm = 2 * (0.55 * math.sqrt(count + 1) + 1)
    return Cable(id="cable", title="Cable", jacket_mm=jacket_mm, cores=cores, shields=shields)


def site_at_b(plan):
    """Return the site of end B."""
    return site_of(plan, Wiring(plan), "B")


def every_gap(bodies, net_of):
    """Return {pair of numbers: gap in mm} of all pairs that matter, by trying every pair.

    Written anew from what matters: other nets, not two terminals as made, and both bare, or one
    of them metal that the iron heats.
    """
    first, second = np.triu_indices(len(bodies), 1)
    net = np.array([net_of[body.contact] for body in bodies])
    bare = np.array([body.bare for body in bodies])
    hot = np.array([body.bare and body.kind != "tail" for body in bodies])
    made = np.array([body.kind == "terminal" for body in bodies])
    counts = (net[first] != net[second]) & ~(made[first] & made[second])
    counts &= (bare[first] & bare[second]) | hot[first] | hot[second]
    first, second = first[counts], second[counts]
    gaps = pair_gaps_mm(bodies, first, second)
    return dict(zip(zip(first.tolist(), second.tolist(), strict=True), gaps.tolist(), strict=True))


def nets_of(site):
    """Return the number of the net of each contact by its id."""
    ids = [contact.id for contact in site.connector.contacts]
    return dict(zip(ids, site.nets, strict=True))
