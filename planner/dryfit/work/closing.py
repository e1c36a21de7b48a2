"""How an end is closed: clamp, liner, shell, shrink, boot, in the order that leaves a way in."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from planner.dryfit.routes import NEARNESS, nearness
from planner.dryfit.threading import Route
from planner.dryfit.work.facts import WorkFacts
from planner.dryfit.work.metering import shield_meter, shield_meters
from planner.dryfit.work.queues import row_tag
from planner.dryfit.work.starting import wants_own_shell
from planner.dryfit.work.step import Step, span
from planner.markup import as_it_is

# From the joints outwards. Common practice, no source.
_AT_SPLIT = ("sleeve", "liner", "heat-shrink", "clamp", "boot", "shell", "cover", "label")
Ranked = tuple[int, Step]
Values = tuple[tuple[str, str], ...]


def closing_needs(facts: WorkFacts, place: str) -> tuple[str, ...]:
    """Return what is metered at an open end or split before it closes."""
    here = (f"{place}/meter", f"{place}/meter/links")
    nodes = [*(end.id for end in facts.plan.ends), *(split.id for split in facts.plan.splits)]
    return (*here, *(shield_meter(place, it) for it in nodes), *shield_meters(facts, place))


def close_steps(facts: WorkFacts, group: tuple[str, ...], made: tuple[str, ...]) -> Iterator[Step]:
    """Yield the steps that close an end, one after the other, when it is metered.

    Before that come the parts that go on over the soldered plug.
    """
    metered = (*made, *(it for each in group for it in closing_needs(facts, each)))
    late = list(_late(facts, group))
    for step in late:
        over_plug = metered if step.kind == "late" else ()
        yield replace(step, needs=(*over_plug, *step.needs))
    before = (*metered, *(step.id for step in late if step.kind == "late"))
    for _, step in sorted(_closing(facts, group), key=lambda pair: pair[0]):
        yield replace(step, needs=(*before, *step.needs))
        before = (*before, step.id)


def late_id(facts: WorkFacts, route: Route) -> str:
    """Return the id of the step that puts a part on when its end is soldered."""
    return f"{facts.group_of[route.comes_from][0]}/late/{route.use.id}"


def put_on(facts: WorkFacts, routes: Sequence[Route]) -> tuple[str, ...]:
    """Return the steps that put parts on the cable; what opens has none."""
    threaded = {it.use.id: queue.id for queue in facts.queues for it in queue.routes}
    closed = (it for it in routes if not it.part.opens)
    return tuple(threaded.get(it.use.id) or late_id(facts, it) for it in closed)


def resting(facts: WorkFacts, node: str) -> list[Route]:
    """Return the parts that rest at a node, from inside out."""
    kinds = NEARNESS if node in facts.plan.end_by_id else _AT_SPLIT
    here = [route for route in facts.routes if route.at == node]
    return sorted(here, key=lambda route: (kinds.index(route.part.kind), route.part.id))


def part_step(facts: WorkFacts, row: Sequence[Route], node: str, ends: tuple[str, ...]) -> Step:
    """Return the step that puts a part in its place at an end (or alike ends) or a split."""
    part, uses = row[0].part, tuple(route.use.id for route in row)
    act = "close" if ends else "split"
    kind = f"{act}_opens" if part.opens else f"{act}_{part.kind.replace('-', '_')}"
    told = _told(row[0], row_tag(row), ends or (node,))
    name, needs = f"{node}/close/{uses[0]}", put_on(facts, row)
    return Step(name, kind, node, node, "close", told, needs, ends, parts=uses)


def _told(route: Route, tag: str, ends: Sequence[str]) -> Values:
    return (
        ("tag", tag),
        ("tags", f"*{tag}*"),
        ("title", as_it_is(route.part.title)),
        ("ends", span(ends)),
    )


def _late(facts: WorkFacts, group: tuple[str, ...]) -> Iterator[Step]:
    """Yield a step for each part that goes on late, after what would else be in its way."""
    before: list[Route] = []
    for route in facts.routes:
        if route.use.id in facts.late and route.comes_from in group:
            kind = "late" if route.after_joint else "thread_one"
            told = _told(route, route.tag, (route.comes_from,))
            needs = put_on(facts, [it for it in before if facts.meets(it, route)])
            name, end = late_id(facts, route), group[0]
            step = Step(name, kind, end, end, "close", told, needs, group)
            yield replace(step, parts=(route.use.id,))
        if not route.part.opens:
            before.append(route)


def _closing(facts: WorkFacts, group: tuple[str, ...]) -> Iterator[Ranked]:
    """Yield the steps that close a plug, each with its rank from the joints outwards."""
    connector = facts.plan.connector_of(group[0])
    if connector is None:
        return
    rows = list(zip(*(resting(facts, end) for end in group), strict=True))
    kinds = {row[0].part.kind for row in rows}
    for row in rows:
        yield nearness(row[0].part, connector), part_step(facts, row, group[0], group)
    if "clamp" not in kinds:
        fanned = facts.plan.section_at[group[0]].fan_of
        yield NEARNESS.index("clamp"), _usual(group, "clamp", "clamp_leg" if fanned else "clamp")
    if wants_own_shell(facts, group[0]):
        yield NEARNESS.index("shell"), _usual(group, "shell", "shell")
    elif connector.shell.shape == "d" and "shell" not in kinds:
        yield NEARNESS.index("shell"), _usual(group, "shell", "hood")


def _usual(group: tuple[str, ...], act: str, kind: str) -> Step:
    """Return the step for what every plug has."""
    return Step(f"{group[0]}/{act}", kind, group[0], group[0], "close", ends=group)
