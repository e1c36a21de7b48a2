"""How an end is closed: clamp, liner, shell, shrink, boot, in the order that leaves a way in."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from planner.dryfit.threading import Route
from planner.dryfit.work.facts import WorkFacts
from planner.dryfit.work.metering import shield_meter, shield_meters
from planner.dryfit.work.queues import row_tag
from planner.dryfit.work.starting import wants_own_shell
from planner.dryfit.work.step import Step, span
from planner.model.connector import Connector
from planner.model.part import Part

# From the joints outwards. Common practice, no source.
_AT_END = ("liner", "sleeve", "clamp", "shell", "heat-shrink", "boot", "cover", "label")
_AT_SPLIT = ("sleeve", "liner", "heat-shrink", "clamp", "boot", "shell", "cover", "label")
_UNDER_ALL = -1
Ranked = tuple[int, Step]


def closing_needs(facts: WorkFacts, place: str) -> tuple[str, ...]:
    """Return what is metered at an open end or split before it closes."""
    here = (f"{place}/meter", f"{place}/meter/links")
    nodes = [*(end.id for end in facts.plan.ends), *(split.id for split in facts.plan.splits)]
    return (*here, *(shield_meter(place, it) for it in nodes), *shield_meters(facts, place))


def close_steps(facts: WorkFacts, group: tuple[str, ...], made: tuple[str, ...]) -> Iterator[Step]:
    """Yield the steps that close an end, one after the other, when it is metered."""
    before = (*made, *(it for each in group for it in closing_needs(facts, each)))
    ranked = sorted(_closing(facts, group), key=lambda pair: pair[0])
    for step in (*_late(facts, group), *(step for _, step in ranked)):
        yield replace(step, needs=(*before, *step.needs))
        before = (*before, step.id)


def late_id(facts: WorkFacts, route: Route) -> str:
    """Return the id of the step that puts a part on when its end is soldered."""
    return f"{facts.group_of[route.comes_from][0]}/late/{route.use.id}"


def put_on(facts: WorkFacts, routes: Sequence[Route]) -> tuple[str, ...]:
    """Return the steps that put parts on the cable; what opens has none."""
    threaded = {it.use.id: queue.id for queue in facts.queues for it in queue.routes}
    return tuple(threaded.get(it.use.id, late_id(facts, it)) for it in routes)


def resting(facts: WorkFacts, node: str) -> list[Route]:
    """Return the parts that rest at a node, from inside out."""
    kinds = _AT_END if node in facts.plan.end_by_id else _AT_SPLIT
    here = [route for route in facts.routes if route.at == node]
    return sorted(here, key=lambda route: (kinds.index(route.part.kind), route.part.id))


def part_step(facts: WorkFacts, row: Sequence[Route], node: str, ends: tuple[str, ...]) -> Step:
    """Return the step that puts a part in its place at an end (or alike ends) or a split."""
    part, uses = row[0].part, tuple(route.use.id for route in row)
    act = "close" if ends else "split"
    kind = f"{act}_opens" if part.opens else f"{act}_{part.kind.replace('-', '_')}"
    told = (("tag", row_tag(row)), ("title", part.title), ("ends", span(ends or (node,))))
    name, needs = f"{node}/close/{uses[0]}", put_on(facts, row)
    return Step(name, kind, node, node, "close", told, needs, ends, parts=uses)


def _late(facts: WorkFacts, group: tuple[str, ...]) -> Iterator[Step]:
    for route in facts.routes:
        if route.after_joint and not route.part.opens and route.comes_from in group:
            told = (("tag", route.tag), ("title", route.part.title), ("ends", span(group)))
            name, uses, end = late_id(facts, route), (route.use.id,), group[0]
            yield Step(name, "late", end, end, "close", told, (), group, parts=uses)


def _closing(facts: WorkFacts, group: tuple[str, ...]) -> Iterator[Ranked]:
    """Yield the steps that close a plug, each with its rank from the joints outwards."""
    connector = facts.plan.connector_of(group[0])
    if connector is None:
        return
    rows = list(zip(*(resting(facts, end) for end in group), strict=True))
    kinds = {row[0].part.kind for row in rows}
    for row in rows:
        yield _rank(row[0].part, connector), part_step(facts, row, group[0], group)
    if "clamp" not in kinds:
        fanned = facts.plan.section_at[group[0]].fan_of
        yield _AT_END.index("clamp"), _usual(group, "clamp", "clamp_leg" if fanned else "clamp")
    if wants_own_shell(facts, group[0]):
        yield _AT_END.index("shell"), _usual(group, "shell", "shell")
    elif connector.shell.shape == "d" and "shell" not in kinds:
        yield _AT_END.index("shell"), _usual(group, "shell", "hood")


def _usual(group: tuple[str, ...], act: str, kind: str) -> Step:
    """Return the step for what every plug has."""
    return Step(f"{group[0]}/{act}", kind, group[0], group[0], "close", ends=group)


def _rank(part: Part, connector: Connector) -> int:
    """Rank a part from the joints outwards; a tube that passes no barrel lies under it."""
    under = part.kind == "heat-shrink" and part.bore_mm < connector.barrel.outside_mm
    return _UNDER_ALL if under else _AT_END.index(part.kind)
