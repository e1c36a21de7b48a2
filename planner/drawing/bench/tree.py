"""The lead as a tree on the bench: which ends lie left and right, which way each section runs."""

from dataclasses import dataclass, field

from planner.model.plan import Plan, Section
from planner.wiring.roles import role_of


@dataclass(frozen=True, slots=True)
class Reach:
    """A section as drawn: from its left node to its right node."""

    section: Section
    left: str
    right: str


@dataclass(frozen=True)
class Tree:
    """Ends by side, sections from left to right, splits with their depth from the left."""

    left: tuple[str, ...] = ()
    right: tuple[str, ...] = ()
    reaches: tuple[Reach, ...] = ()
    depth: dict[str, int] = field(default_factory=dict)

    @property
    def splits(self) -> tuple[str, ...]:
        """The splits, left to right."""
        return tuple(sorted(self.depth, key=lambda split: self.depth[split]))


def _left_ends(plan: Plan) -> tuple[str, ...]:
    """Return the source ends, or the first end where the sources do not set a side."""
    sources = tuple(end.id for end in plan.ends if role_of(plan, end.id) == "source")
    if 0 < len(sources) < len(plan.ends) and len(sources) <= len(plan.ends) - len(sources):
        return sources
    return tuple(end.id for end in plan.ends[:1])


def tree_of(plan: Plan) -> Tree:
    """Lay the lead out as a tree from its left end or ends."""
    if not plan.ends:
        return Tree()
    left = _left_ends(plan)
    ends = set(plan.end_by_id)
    touching: dict[str, list[Section]] = {}
    for section in plan.sections:
        touching.setdefault(section.near, []).append(section)
        touching.setdefault(section.far, []).append(section)
    reaches: list[Reach] = []
    depth: dict[str, int] = {}
    right: list[str] = []
    seen, done = {left[0]}, set[str]()
    queue = [(left[0], 0)]
    while queue:
        node, level = queue.pop()
        if node in ends and node not in left:
            right.append(node)
        if node not in ends:
            depth[node] = level
        for section in reversed(touching.get(node, [])):
            other = section.far if section.near == node else section.near
            if section.id in done or other in seen:
                continue
            done.add(section.id)
            seen.add(other)
            turned = other in left
            reaches.append(Reach(section, other, node) if turned else Reach(section, node, other))
            queue.append((other, level + 1))
    lost = [end.id for end in plan.ends if end.id not in seen and end.id not in left]
    return Tree(left, (*right, *lost), tuple(reaches), depth)
