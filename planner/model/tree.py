"""Whether a plan's sections form one tree with the ends at its leaves and splits inside."""

from collections import Counter
from collections.abc import Iterator

from planner.model.plan import Plan, Section
from planner.problem import Problem


def tree_problems(plan: Plan) -> Iterator[Problem]:
    """Yield what keeps the sections from being a tree; the names in them must all be known."""
    yield from _rings_and_pieces(plan)
    yield from _leaves(plan)
    yield from _fans(plan)


def node_ids(plan: Plan) -> tuple[str, ...]:
    """Return the ids of the ends, then of the splits."""
    return (*(end.id for end in plan.ends), *(split.id for split in plan.splits))


def _rings_and_pieces(plan: Plan) -> Iterator[Problem]:
    group = {node: node for node in node_ids(plan)}
    for section in plan.sections:
        near, far = _root(group, section.near), _root(group, section.far)
        if near == far:
            what = f"it closes a ring: {section.near!r} and {section.far!r} are joined already"
            yield Problem(what, f"sections[{section.id}]", "A lead is a tree: take a section out.")
        group[near] = far
    yield from _pieces(plan, group)


def _pieces(plan: Plan, group: dict[str, str]) -> Iterator[Problem]:
    """Name one node of each piece that is apart from the first node."""
    first, *others = group or ("",)
    reached = {_root(group, first)} if first else set()
    for node in others:
        root = _root(group, node)
        if root not in reached:
            reached.add(root)
            name = "ends" if node in plan.end_by_id else "splits"
            what = f"{node!r} is not joined to {first!r} by any section"
            yield Problem(what, f"{name}[{node}]", "Add the section that joins them.")


def _root(group: dict[str, str], node: str) -> str:
    while group[node] != node:
        group[node] = group[group[node]]
        node = group[node]
    return node


def _leaves(plan: Plan) -> Iterator[Problem]:
    touching = Counter(node for section in plan.sections for node in (section.near, section.far))
    for end in plan.ends:
        if touching[end.id] > 1:
            what = f"{touching[end.id]} sections meet at end {end.id!r}, which is a single end"
            yield Problem(what, f"ends[{end.id}]", "Put a split where sections meet.")
        if touching[end.id] == 0 and len(plan.ends) == 1:
            yield Problem(
                f"no section reaches end {end.id!r}", f"ends[{end.id}]", "Add a section to it."
            )
    for split in plan.splits:
        if touching[split.id] < 2:
            what = f"fewer than two sections meet at split {split.id!r}"
            yield Problem(what, f"splits[{split.id}]", "Make it an end, or add a section.")


def _fans(plan: Plan) -> Iterator[Problem]:
    for section in plan.sections:
        if not section.fan_of:
            continue
        where = f"sections[{section.id}].fan_of"
        trunk = plan.section_by_id[section.fan_of]
        if not {section.near, section.far} & {trunk.near, trunk.far}:
            what = f"section {trunk.id!r} does not meet {section.id!r}"
            yield Problem(what, where, "Name the section whose cores go on here.")
        if _fans_in_a_ring(plan, section):
            what = f"section {section.id!r} is, step by step, the fan of itself"
            yield Problem(what, where, "Let the chain end at a section with a cable.")


def _fans_in_a_ring(plan: Plan, section: Section) -> bool:
    seen = {section.id}
    while section.fan_of:
        section = plan.section_by_id[section.fan_of]
        if section.id in seen:
            return True
        seen.add(section.id)
    return False
