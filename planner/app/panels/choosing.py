"""Choosing a definition for an end or a section: which edit does it, and what it is called."""

from dataclasses import dataclass
from functools import partial

from planner.app.workbench import Edit, Workbench
from planner.edits import cables, ends
from planner.library.collection import Library
from planner.model.cable import Cable
from planner.model.connector import Connector
from planner.model.definition import Definition
from planner.model.pinout import PinoutRecord
from planner.model.plan import Plan


@dataclass(frozen=True, slots=True)
class Target:
    """Where a definition may go: an end or a section, and what it is called."""

    key: str
    words: str


def targets(plan: Plan, record: Definition) -> tuple[Target, ...]:
    """Return every end (for a cable, every section with a cable of its own) it may be put on."""
    if isinstance(record, Cable):
        return tuple(
            Target(section.id, f"the cable from {section.near} to {section.far}")
            for section in plan.sections
            if not section.fan_of
        )
    return tuple(Target(end.id, f"{end.id}  {end.name}".strip()) for end in plan.ends)


def target_now(workbench: Workbench, record: Definition) -> Target | None:
    """Return where Enter would put a definition: what is selected, else the only place."""
    plan = workbench.plan
    open_to = {target.key: target for target in targets(plan, record)}
    for_cable = isinstance(record, Cable)
    key = _section_now(workbench) if for_cable else workbench.selection.end
    if key in open_to:
        return open_to[key]
    return next(iter(open_to.values())) if len(open_to) == 1 else None


def _section_now(workbench: Workbench) -> str:
    plan, key = workbench.plan, workbench.selected_section
    if not key and workbench.selection.end in plan.section_at:
        key = plan.section_at[workbench.selection.end].id
    section = plan.section_by_id.get(key)
    return section.fan_of or section.id if section else ""


def why_not(plan: Plan, record: Definition, target: Target) -> str:
    """Say why a definition can't be put there, or nothing."""
    if not isinstance(record, PinoutRecord):
        return ""
    connector = plan.connector_of(target.key)
    if connector is None:
        return "" if len(record.fits) == 1 else f"choose the connector of {target.key} first"
    return "" if connector.id in record.fits else f"is not for {connector.title}"


def choosing(plan: Plan, library: Library, record: Definition, target: Target) -> Edit:
    """Return the edit that puts a definition there."""
    if isinstance(record, Connector):
        pinout = _only_pinout(plan, library, record, target.key)
        return partial(ends.choose_connector, end=target.key, connector=record, pinout=pinout)
    if isinstance(record, Cable):
        return partial(cables.choose_cable, section=target.key, cable=record)
    assert isinstance(record, PinoutRecord)
    connector = library.connector(record.fits[0])
    if plan.connector_of(target.key) is None and connector is not None:
        return partial(ends.choose_connector, end=target.key, connector=connector, pinout=record)
    return partial(ends.choose_pinout, end=target.key, pinout=record)


def _only_pinout(
    plan: Plan, library: Library, connector: Connector, end: str
) -> PinoutRecord | None:
    """Take the one record that fits, where the end has none that stays."""
    kept = plan.pinout_of(end)
    if kept is not None and connector.id in kept.fits:
        return None
    fitting = library.pinouts_for(connector.id)
    return fitting[0] if len(fitting) == 1 else None
