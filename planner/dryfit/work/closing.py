"""How an end is closed: clamp, liner, shell, shrink, boot, in the order that leaves a way in."""

from collections.abc import Iterator

from planner.dryfit.threading import Route
from planner.dryfit.work.facts import WorkFacts
from planner.dryfit.work.metering import shield_meter, shield_meters
from planner.dryfit.work.starting import queues, wants_own_shell
from planner.dryfit.work.step import Step, span
from planner.model.connector import Connector

# From the joints outwards. Common practice, no source.
_OUTWARDS = ("liner", "sleeve", "clamp", "shell", "heat-shrink", "boot", "cover", "label")
_SHELL = _OUTWARDS.index("shell")


def closing_needs(facts: WorkFacts, place: str) -> tuple[str, ...]:
    """Return what is metered at an open end or split before it closes."""
    here = (f"{place}/meter", f"{place}/meter/links")
    nodes = [*(end.id for end in facts.plan.ends), *(split.id for split in facts.plan.splits)]
    return (*here, *(shield_meter(place, it) for it in nodes), *shield_meters(facts, place))


def close_steps(facts: WorkFacts, group: tuple[str, ...], made: tuple[str, ...]) -> Iterator[Step]:
    """Yield the steps that close an end, one after the other, when it is metered."""
    end = group[0]
    before = (*made, *(it for each in group for it in closing_needs(facts, each)))
    for route in _late(facts, group):
        values = (("tag", route.tag), ("title", route.part.title), ("ends", span(group)))
        name = f"{end}/late/{route.use.id}"
        yield Step(name, "late", end, end, "close", values, before, group, (), (route.use.id,))
        before = (*before, name)
    for step in _closing(facts, group):
        yield Step(
            step.id, step.kind, end, end, "close", step.values, before, group, (), step.parts
        )
        before = (*before, step.id)


def _late(facts: WorkFacts, group: tuple[str, ...]) -> Iterator[Route]:
    for route in facts.routes:
        if route.after_joint and route.comes_from in group:
            yield route


def _closing(facts: WorkFacts, group: tuple[str, ...]) -> Iterator[Step]:
    """Yield id, kind, values and parts of what closes an end, from the joints outwards."""
    end = group[0]
    connector = facts.plan.connector_of(end)
    assert connector is not None
    own: list[tuple[tuple[int, int], Step]] = []
    rows = zip(*(_resting(facts, each) for each in group), strict=False)
    kinds = set[str]()
    for at, row in enumerate(rows):
        part = row[0].part
        kinds.add(part.kind)
        rank = _OUTWARDS.index(part.kind)
        if part.kind == "heat-shrink" and part.bore_mm < connector.barrel.outside_mm:
            rank = -1  # it cannot go over the barrel, so it lies under it
        values = (
            ("tag", span(route.tag for route in row)),
            ("title", part.title),
            ("ends", span(group)),
        )
        name = f"{end}/close/{row[0].use.id}"
        uses = tuple(route.use.id for route in row)
        kind = f"close_{part.kind.replace('-', '_')}"
        own.append(((rank, at), Step(name, kind, end, values=values, parts=uses)))
    own += [((rank, -1), step) for rank, step in _usual(facts, end, connector, kinds)]
    for _, step in sorted(own, key=lambda pair: pair[0]):
        yield step


def _usual(
    facts: WorkFacts, end: str, connector: Connector, kinds: set[str]
) -> Iterator[tuple[int, Step]]:
    """Yield what every plug has: clamp and shell, unless the plan has parts for them."""
    if "clamp" not in kinds:
        section = facts.plan.section_at[end]
        kind = "clamp_leg" if section.fan_of else "clamp"
        yield _OUTWARDS.index("clamp"), Step(f"{end}/clamp", kind, end)
    if wants_own_shell(facts, end):
        yield _SHELL, Step(f"{end}/shell", "shell", end)
    elif connector.shell.shape == "d" and "shell" not in kinds:
        yield _SHELL, Step(f"{end}/shell", "hood", end)


def _resting(facts: WorkFacts, node: str) -> list[Route]:
    """Return the parts that rest at a node, in the order of the plan."""
    place = {use.id: at for at, use in enumerate(facts.plan.parts)}
    here = [route for route in facts.routes if route.at == node]
    return sorted(here, key=lambda route: place[route.use.id])


def split_parts(facts: WorkFacts, split: str) -> Iterator[tuple[Route, tuple[str, ...]]]:
    """Yield the parts that rest at a split from inside out, each with the steps that thread it."""
    threaded = {use.use.id: queue.id for queue in queues(facts) for use in queue.routes}
    parts = sorted(_resting(facts, split), key=lambda route: _split_rank(route.part.kind))
    for route in parts:
        late = f"{facts.group_of[route.comes_from][0]}/late/{route.use.id}"
        yield route, (threaded.get(route.use.id, late),)


def _split_rank(kind: str) -> int:
    """Shrink lies under the cover."""
    order = ("sleeve", "liner", "heat-shrink", "clamp", "boot", "shell", "cover", "label")
    return order.index(kind)
