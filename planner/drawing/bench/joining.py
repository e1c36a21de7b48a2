"""Where the cable runs between the placed ends: splits, ties, lengths, what is said of a shield."""

from collections.abc import Mapping
from dataclasses import replace

from planner.drawing.bench.head import HEAD_LEAD
from planner.drawing.bench.links import (
    SPLIT_PX,
    LinkFacts,
    Tie,
    in_order,
    materials_of,
    with_free_words,
)
from planner.drawing.bench.parts import PlacedEnd, Settings
from planner.drawing.bench.placing import heads_left, small
from planner.drawing.bench.tree import Reach, Tree
from planner.drawing.primitives import Point
from planner.model.plan import Plan


def _tied(placed: Mapping[str, PlacedEnd], end: str) -> Point:
    return placed[end].at(placed[end].block.cable)


def split_places(tree: Tree, placed: Mapping[str, PlacedEnd]) -> dict[str, Point]:
    """Return the middle of each split block."""
    if not tree.splits:
        return {}
    near = max((_tied(placed, end)[0] for end in tree.left), default=0.0)
    far = min((_tied(placed, end)[0] for end in tree.right), default=near + 200.0)
    if tree.right and not all(end.block.compact for end in placed.values()):
        # The heads of the right column may begin before its cables are tied.
        far = min(far, heads_left(placed) + HEAD_LEAD)
    deepest = max(tree.depth.values())
    found = {}
    for split in tree.splits:
        ends = _leaves(split, tree, placed)
        level = [placed[end].origin[1] for end in tree.left if end in placed]
        y = level[0] if len(tree.splits) == 1 and level else sum(ends) / max(len(ends), 1)
        x = near + (far - near) * 0.56 * tree.depth[split] / deepest
        found[split] = (x, y)
    return found


def _level(node: str, tree: Tree, placed: Mapping[str, PlacedEnd]) -> float:
    """Return the mean y of what lies to the right of a node."""
    ys = [placed[node].origin[1]] if node in placed else _leaves(node, tree, placed)
    return sum(ys) / max(len(ys), 1)


def _leaves(node: str, tree: Tree, placed: Mapping[str, PlacedEnd]) -> list[float]:
    """Return the y of every end to the right of a node."""
    found: list[float] = []
    for reach in tree.reaches:
        if reach.left == node:
            if reach.right in placed:
                found.append(placed[reach.right].origin[1])
            else:
                found += _leaves(reach.right, tree, placed)
    return found


def split_half(
    split: str, tree: Tree, placed: Mapping[str, PlacedEnd], settings: Settings
) -> float:
    """Return half the height of a split block: the trunk's, or what its legs need."""
    trunks = [reach.left for reach in tree.reaches if reach.right == split]
    halves = [placed[end].block.cable_half for end in trunks if end in placed]
    legs = sum(reach.left == split for reach in tree.reaches)
    return max(min(max(halves, default=20.0), 52.0), 4.0 * legs, 16.0 * small(settings))


def _runs_in(plan: Plan) -> dict[str, dict[str, str]]:
    found: dict[str, dict[str, str]] = {section.id: {} for section in plan.sections}
    for conductor in plan.conductors:
        for run in conductor.runs:
            if run.section in found:
                found[run.section][conductor.id] = run.core
    return found


def metres(length_mm: float) -> str:
    """Return a length of cable in words: `1.20 m`."""
    return f"{length_mm / 1000:.2f} m"


def link_facts(
    plan: Plan,
    tree: Tree,
    placed: Mapping[str, PlacedEnd],
    splits: Mapping[str, Point],
    settings: Settings,
) -> list[LinkFacts]:
    """Gather what each section is drawn from, left to right."""
    runs = _runs_in(plan)
    levels = _levels(placed)
    found = []
    for reach in tree.reaches:
        if {reach.left, reach.right} - placed.keys() - splits.keys():
            continue
        cable = plan.cable_of(reach.section.id)
        here = runs[reach.section.id]
        materials = materials_of(cable, here)
        names = [name for name, _ in materials]
        left = _tie(reach, reach.left, names, tree, placed, splits, levels, settings)
        right = _tie(reach, reach.right, names, tree, placed, splits, levels, settings)
        shields = len(here) > len(materials)
        found.append(
            LinkFacts(
                section=reach.section.id,
                left=left,
                right=right,
                materials=materials,
                shielded=shields,
                length=metres(reach.section.length_mm),
                note=_shield_note(reach, plan, tree, runs)
                if cable and settings.side == "solder"
                else "",
                words_at=_words_at(reach, tree, placed),
                drawn=cable is not None and settings.side == "solder",
            )
        )
    return with_free_words(_lengths_once(found), settings.look)


def _levels(placed: Mapping[str, PlacedEnd]) -> dict[str, float]:
    """Return for each conductor where it leaves the leftmost fan, to keep its place inside."""
    found: dict[str, float] = {}
    for end in sorted(placed.values(), key=lambda end: -end.block.facing):
        for name, y in end.block.ties.items():
            found.setdefault(name, end.origin[1] + y)
    return found


def _tie(  # noqa: PLR0913, PLR0917 - all of the bench's places
    reach: Reach, node: str, names: list[str], tree: Tree, placed: Mapping[str, PlacedEnd],
    splits: Mapping[str, Point], levels: Mapping[str, float], settings: Settings,
) -> Tie:  # fmt: skip
    if node in placed:
        end = placed[node]
        return Tie(_tied(placed, node), end.block.cable_half, in_order(names, end.block.ties))
    x, y = splits[node]
    half = split_half(node, tree, placed, settings)
    beside = sorted(
        (other for other in tree.reaches if other.left == node),
        key=lambda other: _level(other.right, tree, placed),
    )
    order = in_order(names, levels)
    width = SPLIT_PX * small(settings) / 2
    if reach.right == node:
        return Tie((x - width, y), half * 0.86, order)
    share = half * 0.9 / len(beside)
    place = beside.index(reach) - (len(beside) - 1) / 2
    return Tie((x + width, y + place * 2 * share), share * 0.96, order)


def _shield_note(
    reach: Reach, plan: Plan, tree: Tree, runs: Mapping[str, Mapping[str, str]]
) -> str:
    """Say in words that a shield of the trunk ends in the split."""
    cable = plan.cable_of(reach.section.id)
    onward = [other.section.id for other in tree.reaches if other.left == reach.right]
    if cable is None or not onward:
        return ""
    for name, core in runs[reach.section.id].items():
        shield = cable.shield_by_id.get(core)
        if shield is not None and not any(name in runs[section] for section in onward):
            return f"{shield.kind} ends in the split"
    return ""


def _words_at(reach: Reach, tree: Tree, placed: Mapping[str, PlacedEnd]) -> str:
    leg = reach.left not in placed and reach.right in placed
    if not leg:
        return "under"
    beside = [other for other in tree.reaches if other.left == reach.left]
    return "beside" if len(beside) <= 3 else "none"


def _lengths_once(links: list[LinkFacts]) -> list[LinkFacts]:
    """Say the length of many legs once, on the trunk, where they are too close for words."""
    silent = [link for link in links if link.words_at == "none"]
    lengths = sorted({link.length for link in silent})
    if not silent:
        return links
    span = lengths[0] if len(lengths) == 1 else f"{lengths[0]} to {lengths[-1]}"
    words = f"legs {len(silent)} × {span}" if len(lengths) == 1 else f"legs {span}"
    return [replace(link, note=f"{words}") if link.words_at == "under" else link for link in links]
