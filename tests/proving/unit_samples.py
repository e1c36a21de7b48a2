"""A small invented lead with readings of it, good and spoilt."""

from itertools import combinations

from planner.files.plans import plan_digest
from planner.proving.expected import expected_sweep
from planner.proving.reading import Meter, Reading, Readings
from planner.proving.units import UnitRecord, Wiggle, expected_of
from planner.wiring.graph import Wiring
from tests import building
from tests.building import lead

AT = "2026-03-14T15:09:26+01:00"
PLAN = lead(
    {"A": building.PHONES, "L": (building.CUP, "L"), "R": (building.CUP, "R")},
    ["RD A.T L.T", "GN A.R R.T", "BK A.S L.S R.S"],
    title="Pit headphone lead",
    order="SP-0420",
)
SWEEP = expected_sweep(PLAN, Wiring(PLAN))


def all_good(ohm=0.35, zero_ohm=0.2):
    """Return every reading of a good unit: each path with a figure, each pair of nets open."""
    joined = [Reading(one=it.one, other=it.other, joined=True, ohm=ohm) for it in SWEEP.paths]
    firsts = [net[0] for net in SWEEP.nets]
    apart = [Reading(one=a, other=b, joined=False) for a, b in combinations(firsts, 2)]
    return Readings(meter=Meter(zero_ohm=zero_ohm), readings=(*joined, *apart))


def unit(number=1, **changes):
    """Return the record of a unit that passed, with changes."""
    fields = {
        "number": number,
        "at": AT,
        "who": "I. Marram",
        "verdict": "passed",
        "plan_digest": plan_digest(PLAN),
        "plan_revision": PLAN.revision,
        "readings": all_good(),
        "expected": expected_of(SWEEP),
        "isolation": "pairs",
        "wiggle": tuple(Wiggle(end=end.id, state="steady", at=AT) for end in PLAN.ends),
    }
    return UnitRecord(**(fields | changes))
