"""What is said of a sleeve: its size, why it does not do, and what may be done about that."""

from collections.abc import Callable, Sequence
from dataclasses import replace

from planner.dryfit.bodies import Lead, stack_mm, top_mm
from planner.dryfit.shrinking import STEP_MM
from planner.dryfit.sleeve_sizes import SleeveUse, joint_sleeve
from planner.model.connector import Connector
from planner.model.workmanship import Workmanship
from planner.units import number


def size_words(use: SleeveUse) -> str:
    """Say how large a sleeve is and where it waits: `8.5 mm, bore 1.6 mm; parks on 11.8 mm`."""
    bore = f"bore {number(use.bore_mm)} mm" if use.goes_over else "no bore in stock goes over"
    room = f"{number(use.park_has_mm)} mm"
    parks = f"parks on {room}" if use.parks else f"{room} to park on, too short"
    return f"{number(use.length_mm)} mm, {bore}; {parks}"


def put_words(use: SleeveUse, named: Callable[[str], str] = str) -> str:
    """Say where to put a sleeve: over a joint, or on a tail; `named` says a contact."""
    joint = f"over the joint on {named(use.contact)}"
    place = joint if use.covers == "joint" else f"on {use.conductor}"
    return f"Put a sleeve of {number(use.length_mm)} mm, bore {number(use.bore_mm)} mm, {place}."


def why_not(use: SleeveUse) -> str:
    """Say with both figures why a sleeve does not do, or nothing if it does."""
    if not use.goes_over:
        return (
            f"no sleeve in stock passes {number(use.passes_mm)} mm and grips "
            f"{number(use.grips_mm)} mm on {use.conductor}"
        )
    if not use.parks:
        return (
            f"a sleeve of {number(use.park_needs_mm)} mm has {number(use.park_has_mm)} mm to park "
            f"on {use.conductor}"
        )
    return ""


def other_ways(
    connector: Connector, leads: Sequence[Lead], use: SleeveUse, rules: Workmanship
) -> tuple[str, ...]:
    """Return what makes a sleeve over the joint of `leads` do, each as an imperative clause."""
    if not use.goes_over:
        return ("take heat-shrink of 3:1",) if use.passes_mm < 3 * use.grips_mm else ()
    ways = []
    further = further_strip_mm(connector, leads, rules)
    if further is not None:
        ways.append(f"strip the jacket back {number(further)} mm further")
    shorter = rules.evolve(sleeve_overlap="five-mm")
    if rules.sleeve_overlap != "five-mm" and joint_sleeve(leads, shorter).parks:
        ways.append("work to the rule of 5 mm overlap")
    return tuple(ways)


def further_strip_mm(
    connector: Connector, leads: Sequence[Lead], rules: Workmanship
) -> float | None:
    """Return how much longer the cores must be for the sleeve to park, in steps of 0.5 mm.

    None where the barrel is too short for that.
    """
    room_mm = leads[0].exit[2] - top_mm(connector)
    spare = connector.barrel.length_mm - stack_mm(connector) - room_mm
    for step in range(1, int(spare / STEP_MM) + 1):
        longer = [_longer(lead, step * STEP_MM) for lead in leads]
        if joint_sleeve(longer, rules).parks:
            return step * STEP_MM
    return None


def _longer(lead: Lead, more_mm: float) -> Lead:
    x, y, z = lead.exit
    return replace(lead, exit=(x, y, z + more_mm))
