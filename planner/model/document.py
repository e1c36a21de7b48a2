"""The Document: the only mutable thing. It holds the plan and says what was changed."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

from planner.model.plan import Plan

_LISTS = (
    "ends",
    "splits",
    "sections",
    "conductors",
    "landings",
    "caps",
    "links",
    "parts",
    "acceptances",
)
_FIELDS = (
    "title",
    "order",
    "revision",
    "remarks",
    "step_order",
    "workmanship",
    "assumed",
    "definitions",
)


@dataclass(frozen=True, slots=True)
class Change:
    """One record `added`, `replaced` or `removed`, named by its list and key; `reset` for all."""

    kind: Literal["added", "replaced", "removed", "reset"]
    what: str = ""
    key: str = ""


Listener = Callable[[tuple[Change, ...]], None]


def _key(what: str, record: object) -> str:
    if what in {"landings", "caps"}:
        return f"{getattr(record, 'end')}/{getattr(record, 'conductor')}"  # noqa: B009
    return str(getattr(record, "id", record))


def changes_between(old: Plan, new: Plan) -> tuple[Change, ...]:
    """List what differs between two plans, record by record."""
    found = [
        Change("replaced", name)
        for name in _FIELDS
        if getattr(old, name) is not getattr(new, name) and getattr(old, name) != getattr(new, name)
    ]
    for what in _LISTS:
        if getattr(old, what) is getattr(new, what):
            continue
        before = {_key(what, record): record for record in getattr(old, what)}
        after = {_key(what, record): record for record in getattr(new, what)}
        found += [Change("removed", what, key) for key in before.keys() - after.keys()]
        found += [Change("added", what, key) for key in after.keys() - before.keys()]
        found += [
            Change("replaced", what, key)
            for key in before.keys() & after.keys()
            if before[key] is not after[key] and before[key] != after[key]
        ]
    return tuple(sorted(found, key=lambda change: (change.what, change.key, change.kind)))


class Document:
    """Hold one plan; every change goes through `replace` or `reset` and is told to listeners."""

    def __init__(self, plan: Plan | None = None) -> None:
        self._plan = plan or Plan()
        self._edition = 0
        self._listeners: list[Listener] = []

    @property
    def plan(self) -> Plan:
        """The plan as it is now."""
        return self._plan

    @property
    def edition(self) -> int:
        """A number that grows with each change, to tell stale results."""
        return self._edition

    def subscribe(self, listener: Listener) -> Callable[[], None]:
        """Call `listener` after each change; return what ends the subscription."""
        self._listeners.append(listener)
        return lambda: self._listeners.remove(listener)

    def replace(self, plan: Plan) -> None:
        """Put `plan` in place and tell what differs; nothing is told when nothing does."""
        changes = changes_between(self._plan, plan)
        self._plan = plan
        if changes:
            self._tell(changes)

    def reset(self, plan: Plan) -> None:
        """Begin anew with another plan."""
        self._plan = plan
        self._tell((Change("reset"),))

    def _tell(self, changes: tuple[Change, ...]) -> None:
        self._edition += 1
        for listener in tuple(self._listeners):
            listener(changes)
