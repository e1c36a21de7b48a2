"""Keep plans and the collection in step: what is newer there, and what that means for a lead."""

from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass

from planner.checks.finding import Finding
from planner.edits.definitions_of import carried, lost, update_definitions
from planner.library.collection import Library
from planner.library.comparing import Difference, differences
from planner.model.definition import Definition, kind_name
from planner.model.plan import Plan
from planner.model.signals import signals_text
from planner.services.checking import check_plan
from planner.wiring.graph import Wiring


@dataclass(frozen=True, slots=True)
class Newer:
    """A definition that the plan carries and the library has in a newer form, and what differs.

    In `changes` the first value is the plan's, the second the library's. `revised` is False where
    both call themselves the same revision, so that nobody can say which is the later one.
    """

    carried: Definition
    known: Definition
    changes: tuple[Difference, ...]

    @property
    def revised(self) -> bool:
        """Tell whether the library's revision is the higher one."""
        return self.known.revision > self.carried.revision


@dataclass(frozen=True, slots=True)
class Meaning:
    """What taking newer definitions would do to a lead.

    `lost` says what is dropped, `moved` which landings would be on another signal, `appeared` and
    `cured` are the findings that come and go. `plan` is the lead after it.
    """

    plan: Plan
    lost: tuple[str, ...]
    moved: tuple[str, ...]
    appeared: tuple[Finding, ...]
    cured: tuple[Finding, ...]

    @property
    def harmless(self) -> bool:
        """Tell whether no landing is touched and no finding comes up."""
        return not (self.lost or self.moved or self.appeared)


def newer(plan: Plan, library: Library) -> tuple[Newer, ...]:
    """Return what the library has newer than the plan's copies; cheap, nothing is checked."""
    return tuple(_newer(plan, library))


def _newer(plan: Plan, library: Library) -> Iterator[Newer]:
    held = plan.definitions
    copies: tuple[Definition, ...] = (*held.connectors, *held.pinouts, *held.cables, *held.parts)
    for copy in copies:
        known = library.of_kind(kind_name(copy), copy.id)
        if known is None or known.revision < copy.revision:
            continue
        changes = differences(copy, known)
        if changes or known.revision > copy.revision:
            yield Newer(copy, known, changes)


def meaning(plan: Plan, records: Iterable[Definition], library: Library) -> Meaning:
    """Say what it would mean for the lead to take these definitions; both leads are checked."""
    wanted = tuple(records)
    after = update_definitions(plan, records=wanted)
    pinouts = library.pinouts()
    was, is_now = check_plan(plan, pinouts), check_plan(after, pinouts)
    return Meaning(
        plan=after,
        lost=lost(plan, after),
        moved=tuple(_moved(plan, after)),
        appeared=_only_in(is_now, was),
        cured=_only_in(was, is_now),
    )


def up_to_date(plan: Plan, found: Iterable[Newer]) -> Plan:
    """Take newer definitions into the plan: one edit, so one undo step."""
    records = [it.known for it in found if carried(plan, it.known) is not None]
    return update_definitions(plan, records=records)


def _moved(before: Plan, after: Plan) -> Iterator[str]:
    """Say of each landing that stays where it is which other signal would be there."""
    was, is_now = Wiring(before), Wiring(after)
    for it in after.landings:
        old, new = was.signals_at(it.end, it.contact), is_now.signals_at(it.end, it.contact)
        stays = before.landing_at.get((it.end, it.conductor))
        if old != new and stays is not None and stays.contact == it.contact:
            carries = signals_text(new) or "nothing"
            connector = after.connector_of(it.end)
            spoken = connector.by_id[it.contact].spoken if connector else it.contact
            yield (
                f"{it.end}: {it.conductor} lands on {spoken}, which carries {carries} "
                f"instead of {signals_text(old) or 'nothing'}"
            )


def _only_in(some: Iterable[Finding], others: Iterable[Finding]) -> tuple[Finding, ...]:
    left = Counter((it.code, it.what, it.where) for it in others)
    found = []
    for it in some:
        key = (it.code, it.what, it.where)
        if left[key]:
            left[key] -= 1
        else:
            found.append(it)
    return tuple(found)
