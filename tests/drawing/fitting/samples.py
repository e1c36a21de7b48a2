"""Dry fits of whole ends for the pictures' tests, from shipped connectors and an invented cable."""

import math
from functools import cache

from planner.data import data_dir
from planner.dryfit.fit import fit_end
from planner.files.plans import read_plan
from planner.library.loading import load_library
from planner.model.cable import Cable, Core, Shield
from planner.model.plan import Conductor, Definitions, End, Landing, Plan, Run, Section
from planner.model.workmanship import Workmanship
from planner.wiring.graph import Wiring

CODES = (("RD",), ("BU",), ("WH", "BK"), ("GN",), ("YE",), ("BK",), ("OG",), ("GNYE",))


@cache
def connectors():
    return load_library().connectors()


def connector_named(name):
    return next(one for one in connectors() if one.id == name)


def cable(count, insulation_mm=0.8):
    """Cores on a ring, and a braid."""
    ring = max(0.6, count * insulation_mm / 5.5)
    cores = tuple(
        Core(
            id=f"k{place}",
            colours=CODES[place % len(CODES)],
            strands=7,
            strand_mm=0.12,
            insulation_mm=insulation_mm,
            x_mm=ring * math.cos(math.tau * place / count),
            y_mm=ring * math.sin(math.tau * place / count),
        )
        for place in range(count)
    )
    braid = Shield(id="SH", kind="braid", tail_mm=0.6)
    jacket = 2 * ring + 2 * insulation_mm
    return Cable(id="made", title="Made up", jacket_mm=jacket, cores=cores, shields=(braid,))


def plan_for(connector, *, turn_deg=0.0, sleeved=(), dabbed=(), skip=1, rules=None):
    """Land core k on contact k (every `skip`-th on), the shield on the last contact."""
    stock = cable(max(connector.poles - 1, 1))
    contacts = [contact.id for contact in connector.contacts]
    names = [*(core.id for core in stock.cores), "SH"]
    targets = [contacts[(place * skip) % len(contacts)] for place in range(len(names))]
    ends = tuple(End(id=end, connector=connector.id, turn_deg=turn_deg) for end in "AB")
    return Plan(
        title="Sample",
        ends=ends,
        sections=(Section(id="line", near="A", far="B", cable="made", length_mm=900),),
        conductors=tuple(
            Conductor(
                id=name,
                kind="shield" if name == "SH" else "core",
                runs=(Run(section="line", core=name),),
            )
            for name in names
        ),
        landings=tuple(
            Landing(
                end="A",
                conductor=name,
                contact=contact,
                sleeved=name in sleeved,
                dabbed=name in dabbed,
            )
            for name, contact in zip(names, targets, strict=True)
        ),
        definitions=Definitions(connectors=(connector,), cables=(stock,)),
        workmanship=rules or Workmanship(),
    )


def fit_of(connector, **changes):
    plan = plan_for(connector, **changes)
    return fit_end(plan, Wiring(plan), "A")


def crowded(connector, **changes):
    """A dry fit whose limits are so wide that there are gaps of all classes to tell."""
    rules = Workmanship(tolerance_mm=0.4, sleeve_share=0.9, watch_share=2.0)
    return fit_of(connector, rules=rules, **changes)


def demo_fit(name, end):
    plan = read_plan(data_dir("resources") / "demo" / f"{name}.json")
    return plan.connector_of(end), fit_end(plan, Wiring(plan), end)
