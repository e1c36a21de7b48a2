"""The facts that a tooltip on the canvas tells."""

from planner.app.panels.words import carried, contact_words, wire_at, wire_code, wire_words
from planner.app.workbench import Workbench
from planner.drawing.bench.joining import metres
from planner.model.cable import Core
from planner.model.place import Place
from planner.model.signals import signals_text
from planner.units import number


def tip_words(workbench: Workbench, place: Place | None, section: str = "") -> str:
    """Return the lines for a contact, a conductor at an end, or a section of cable."""
    if place is not None and place.contact:
        return "\n".join(_contact(workbench, place))
    if place is not None and place.conductor:
        return "\n".join(_conductor(workbench, place))
    return "\n".join(_section(workbench, section)) if section else ""


def _contact(workbench: Workbench, place: Place) -> list[str]:
    plan = workbench.plan
    connector = plan.connector_of(place.end)
    if connector is None or place.contact not in connector.by_id:
        return []
    contact = connector.by_id[place.contact]
    signals = signals_text(workbench.wiring.signals_at(place.end, place.contact))
    name = contact_words(plan, place.end, place.contact)
    there = [
        wire_code(plan, plan.conductor_by_id[conductor], place.end)
        for conductor in workbench.wiring.landed_on(place.end, place.contact)
    ]
    terminal = contact.terminal
    return [
        f"{place.end}, {name}: {signals or 'no signal by its pinout'}",
        f"Landed: {', '.join(there)}" if there else "Nothing landed",
        f"{terminal.kind}, {number(terminal.across_mm)} mm, takes {terminal.takes}",
    ]


def _conductor(workbench: Workbench, place: Place) -> list[str]:
    plan = workbench.plan
    conductor = plan.conductor_by_id.get(place.conductor)
    if conductor is None:
        return []
    wire, brought = (
        wire_at(plan, conductor, place.end),
        carried(plan, workbench.wiring, conductor.id),
    )
    code = wire_code(plan, conductor, place.end)
    lines = [f"{code}, {wire_words(plan, conductor, place.end)}"]
    lines.append(f"Carries {brought}" if brought else "Carries nothing yet")
    landing = plan.landing_at.get((place.end, place.conductor))
    where = contact_words(plan, place.end, landing.contact) if landing else ""
    lines.append(f"On {where} of {place.end}" if landing else f"Loose at {place.end}")
    if isinstance(wire, Core):
        strands = f"{wire.strands} × {number(wire.strand_mm)} mm"
        lines.append(f"{strands}, insulation {number(wire.insulation_mm)} mm")
    return lines


def _section(workbench: Workbench, section: str) -> list[str]:
    plan = workbench.plan
    record = plan.section_by_id.get(section)
    if record is None:
        return []
    cable = plan.cable_of(section)
    title = cable.title if cable else "No cable chosen yet"
    fanned = " (cores of the trunk, out of their jacket)" if record.fan_of else ""
    return [f"{title}{fanned}", f"{record.near} to {record.far}, {metres(record.length_mm)}"]
