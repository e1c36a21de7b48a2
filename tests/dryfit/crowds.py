"""Crowded ends with invented figures: terminals at random places and heights, a core on each."""

import math
from random import Random

from planner.dryfit.site import site_of
from planner.model.cable import Cable, Core, Shield
from planner.model.connector import Barrel, Clamp, Connector, Contact, Shell, Terminal
from planner.model.plan import Conductor, Definitions, End, Landing, Plan, Run, Section
from planner.model.workmanship import Workmanship
from planner.wiring.graph import Wiring


def crowd(seed, count, *, shields=0, unlanded=0, workmanship=None):
    """Return a plan whose end B has `count` joints close to each other; the last are shields."""
    rng = Random(seed)
    contacts = tuple(_contact(rng, number, count + unlanded) for number in range(count + unlanded))
    cores = tuple(_core(rng, number) for number in range(count - shields))
    tails = tuple(Shield(id=f"s{n}", kind="braid", tail_mm=0.5) for n in range(shields))
    cable = Cable(id="cable", title="Cable", jacket_mm=8, cores=cores, shields=tails)
    names = [*(core.id for core in cores), *(tail.id for tail in tails)]
    return Plan(
        ends=(End(id="A"), End(id="B", connector="crowd")),
        sections=(Section(id="s", near="A", far="B", cable="cable", length_mm=900),),
        conductors=tuple(
            Conductor(
                id=name,
                kind="shield" if name[0] == "s" else "core",
                runs=(Run(section="s", core=name),),
            )
            for name in names
        ),
        landings=tuple(
            Landing(end="B", conductor=name, contact=contact.id)
            for name, contact in zip(names, contacts, strict=False)
        ),
        workmanship=workmanship or Workmanship(),
        definitions=Definitions(connectors=(wide_connector("crowd", contacts),), cables=(cable,)),
    )


def _contact(rng, number, count):
    """Put a cup at random on a disc that leaves about 1.5 mm from one to the next."""
    reach, angle = 0.75 * math.sqrt(count * rng.random()), rng.uniform(0, 2 * math.pi)
    x_mm, y_mm = reach * math.cos(angle), reach * math.sin(angle)
    cup = Terminal(
        kind="cup", x_mm=x_mm, y_mm=y_mm, z_mm=rng.uniform(-3, 0), bore_mm=0.3, depth_mm=2
    )
    return Contact(id=f"c{number}", terminal=cup)


def _core(rng, number):
    x_mm, y_mm = rng.uniform(-2, 2), rng.uniform(-2, 2)
    return Core(
        id=f"w{number}",
        colours=("WH",),
        strands=7,
        strand_mm=0.08,
        insulation_mm=0.5,
        x_mm=x_mm,
        y_mm=y_mm,
    )


def wide_connector(name, contacts):
    """Return a connector whose shell, clamp and barrel are in nobody's way."""
    return Connector(
        id=name,
        title=name.capitalize(),
        family="test",
        gender="male",
        drawn_from="solder",
        shell=Shell(bore_mm=60),
        clamp=Clamp(min_mm=3, max_mm=20),
        barrel=Barrel(outside_mm=70, bore_mm=60, length_mm=120),
        contacts=contacts,
    )


def site(plan):
    """Return the site of end B."""
    return site_of(plan, Wiring(plan), "B")


def moved(plan, place):
    """Return the plan with every terminal and core at `place(x, y)`, all else as it was."""
    connector, cable = plan.definitions.connectors[0], plan.definitions.cables[0]
    contacts = tuple(
        it.evolve(terminal=it.terminal.evolve(**_at(place, it.terminal)))
        for it in connector.contacts
    )
    cores = tuple(core.evolve(**_at(place, core)) for core in cable.cores)
    definitions = Definitions(
        connectors=(connector.evolve(contacts=contacts),), cables=(cable.evolve(cores=cores),)
    )
    return plan.evolve(definitions=definitions)


def _at(place, record):
    x_mm, y_mm = place(record.x_mm, record.y_mm)
    return {"x_mm": x_mm, "y_mm": y_mm}
