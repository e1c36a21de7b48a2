"""What a drop would do, in marked sentences: the same words in the table and beside the canvas."""

from planner.app.panels.words import carried, contact_words, wire_at
from planner.app.workbench import Ghost, Workbench
from planner.drawing.marks import MarkKind
from planner.model.cable import Core
from planner.model.connector import Contact
from planner.model.place import Place
from planner.model.signals import signals_text
from planner.units import number

DropLines = tuple[tuple[MarkKind, str], ...]


def drop_verdict(workbench: Workbench, place: Place, contact: str, ghost: Ghost) -> DropLines:
    """Say what landing a conductor (`place`) on a contact would do: signal, fit, findings."""
    if not ghost.allowed:
        return (("stop", f"Not possible: {ghost.reason}"),)
    fresh = [finding for finding in ghost.new if not finding.unfinished]
    lines: list[tuple[MarkKind, str]] = list(_signal(workbench, place, contact))
    lines += _fit(workbench, place, contact)
    lines += [(found.weight, f"would make: {found.title or found.what}") for found in fresh]
    lines += [
        ("tick", f"would mend: {found.title or found.what}")
        for found in ghost.gone
        if not found.unfinished
    ]
    if not fresh:
        lines.append(("tick", "no new finding"))
    return tuple(lines)


def _signal(workbench: Workbench, place: Place, contact: str) -> DropLines:
    wanted = signals_text(workbench.wiring.signals_at(place.end, contact))
    brought = carried(workbench.plan, workbench.wiring, place.conductor)
    words = contact_words(workbench.plan, place.end, contact)
    if not wanted:
        return (("note", f"{words} carries nothing by its pinout"),)
    if not brought or brought == wanted:
        return (("tick", f"{wanted} is its signal" if brought else f"brings {wanted} here"),)
    return (("caution", f"would put {brought} on {wanted}"),)


def _fit(workbench: Workbench, place: Place, contact: str) -> DropLines:
    plan = workbench.plan
    conductor, connector = plan.conductor_by_id.get(place.conductor), plan.connector_of(place.end)
    wire = wire_at(plan, conductor, place.end) if conductor else None
    known = connector.by_id.get(contact) if connector else None
    if not isinstance(wire, Core) or known is None:
        return ()
    return (_room(wire, known),)


def _room(core: Core, contact: Contact) -> tuple[MarkKind, str]:
    terminal = contact.terminal
    word = "bore" if terminal.kind == "cup" else "wide"
    across = f"{number(terminal.across_mm)} mm {word}"
    fits = core.conductor_mm <= terminal.across_mm
    kind: MarkKind = "tick" if fits else "caution"
    return (kind, f"{number(core.conductor_mm)} mm strands, {across}")
