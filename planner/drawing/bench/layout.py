"""Where everything goes on the bench; ends and sections that did not change are not drawn anew."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from planner.drawing.bench.end import build_block
from planner.drawing.bench.facts import EndFacts, carried_signals, facts_of, terminal_scale
from planner.drawing.bench.head import HEAD_HEIGHT
from planner.drawing.bench.links import (
    SPLIT_PX,
    LinkFacts,
    Tie,
    in_order,
    link_items,
    materials_of,
    split_items,
)
from planner.drawing.bench.parts import (
    Bench,
    EndBlock,
    Group,
    Layer,
    PlacedEnd,
    SectionRun,
    Settings,
)
from planner.drawing.bench.shapes import Box, box_of, joined_box, moved_box
from planner.drawing.bench.stub import JACKET_PX
from planner.drawing.bench.tree import Reach, Tree, tree_of
from planner.drawing.primitives import DrawList, Point
from planner.model.plan import Plan
from planner.wiring.roles import role_of

MARGIN = 16.0
ZOOM_LEAST, ZOOM_MOST = 0.12, 6.0


@dataclass(frozen=True, slots=True)
class _Column:
    """Blocks from top to bottom with the y of each face's centre."""

    blocks: tuple[EndBlock, ...]
    centres: tuple[float, ...]
    height: float

    @property
    def middle(self) -> float:
        return sum(self.centres) / len(self.centres) if self.centres else 0.0


def _lead_in(block: EndBlock) -> float:
    """Return how far above its face's centre a block begins, its head included."""
    return -block.reach[1] + (4.0 if block.compact else HEAD_HEIGHT + 8.0)


def _stacked(blocks: tuple[EndBlock, ...], extra: float) -> _Column:
    y, centres = 0.0, []
    for place, block in enumerate(blocks):
        if place:
            y += (6.0 if block.compact else 18.0) + extra
        centres.append(y + _lead_in(block))
        y += _lead_in(block) + max(block.bottom, 12.0)
    return _Column(blocks, tuple(centres), y)


class BenchLayout:
    """Lay out plans one after another, keeping what stays equal."""

    def __init__(self) -> None:
        self._blocks: dict[str, tuple[EndFacts, Settings, EndBlock]] = {}
        self._links: dict[str, tuple[LinkFacts, Settings, tuple[Group, ...], SectionRun]] = {}
        self._tree: tuple[Plan | None, Tree] = (None, Tree())

    # -- blocks ---------------------------------------------------------------------------

    def bench(self, plan: Plan, settings: Settings) -> Bench:
        """Return the whole bench drawing of a plan."""
        tree = tree_of(plan)
        plain = replace(settings, width=0.0, height=0.0)
        blocks = self._all_blocks(plan, tree, plain)
        placed, box = _place(tree, blocks, settings)
        groups: dict[str, Group] = {}
        for end in placed.values():
            groups |= _placed_groups(end, placed)
        splits = _split_places(tree, placed)
        sections: dict[str, SectionRun] = {}
        for facts in _link_facts(plan, tree, placed, splits, settings):
            drawn, run = self._link(facts, plain)
            groups |= {group.key: group for group in drawn}
            sections[facts.section] = run
        for split, at in splits.items():
            block = split_items(
                at,
                _split_half(split, tree, placed, settings),
                SPLIT_PX * _small(settings),
                settings.look,
            )
            groups[f"split/{split}"] = Group(f"split/{split}", Layer.JACKET, block)
        words = [box_of(groups[f"section/{name}"].items) for name in sections]
        return Bench(groups, placed, sections, joined_box([box, *words]))

    def _all_blocks(self, plan: Plan, tree: Tree, settings: Settings) -> dict[str, EndBlock]:
        scales = {end.id: terminal_scale(plan.connector_of(end.id)) for end in plan.ends}
        if settings.one_scale:
            known = [scales[end.id] for end in plan.ends if plan.connector_of(end.id)]
            least = min(known, default=12.0)
            scales = dict.fromkeys(scales, least)
        sources = frozenset(end.id for end in plan.ends if role_of(plan, end.id) == "source")
        carried = carried_signals(plan, sources or frozenset(tree.left))
        return {
            end: self._block(
                facts_of(
                    plan,
                    end,
                    facing=1 if end in tree.left else -1,
                    scale=scales[end],
                    carried=carried,
                ),
                settings,
            )
            for end in (*tree.left, *tree.right)
        }

    def _block(self, facts: EndFacts, settings: Settings) -> EndBlock:
        kept = self._blocks.get(facts.end)
        if kept is not None and kept[1] == settings and kept[0] == facts:
            return kept[2]
        block = build_block(facts, settings)
        self._blocks[facts.end] = (facts, settings, block)
        return block

    def _link(self, facts: LinkFacts, settings: Settings) -> tuple[tuple[Group, ...], SectionRun]:
        kept = self._links.get(facts.section)
        if kept is not None and kept[1] == settings and kept[0] == facts:
            return kept[2], kept[3]
        ribbon, cores, run = link_items(facts, settings.look)
        key = f"section/{facts.section}"
        groups = (Group(key, Layer.LINK, ribbon), Group(f"{key}/cores", Layer.LINK_CORE, cores))
        self._links[facts.section] = (facts, settings, groups, run)
        return groups, run

    def fit_zoom(self, plan: Plan, settings: Settings, most: float = 1.5) -> float:
        """Return the largest zoom up to `most` at which the whole bench has room.

        Sizes grow nearly in a straight line with the zoom, so a few steps of false position do.
        """
        if not plan.ends:
            return 1.0
        low, high, zoom = ZOOM_LEAST, most, 1.0
        for _ in range(7):
            spill = self._spill(plan, replace(settings, zoom=zoom))
            if spill <= 1.0:
                low = zoom
                if high - low < 0.02:
                    break
            else:
                high = zoom
            guess = 0.985 * zoom / max(spill, 0.01)
            zoom = guess if low < guess < high else (low + high) / 2
        return low

    def _spill(self, plan: Plan, settings: Settings) -> float:
        """Return how many times too large the bench is for its room; 1 just fits."""
        box = self.bench(plan, replace(settings, width=0.0, height=0.0)).box
        across = (box[2] - box[0]) / max(settings.width - 2 * MARGIN, 1.0)
        down = (box[3] - box[1]) / max(settings.height - 2 * MARGIN, 1.0)
        return max(across, down)


# -- places -----------------------------------------------------------------------------------


def _small(settings: Settings) -> float:
    return min(max(settings.zoom, 0.45), 1.2)


def _link_room(tree: Tree, height: float, settings: Settings) -> float:
    """Return the least width between the cable stubs of both sides, px."""
    if not tree.splits:
        return 120.0 * _small(settings)
    legs = min(max(0.14 * height, 62.0), 150.0)
    return (66.0 + SPLIT_PX) * len(tree.splits) * _small(settings) + legs


def _place(
    tree: Tree, blocks: Mapping[str, EndBlock], settings: Settings
) -> tuple[dict[str, PlacedEnd], Box]:
    left = tuple(blocks[end] for end in tree.left)
    right = tuple(blocks[end] for end in tree.right)
    least = max(_stacked(left, 0).height, _stacked(right, 0).height)
    slack = max(settings.height - 2 * MARGIN - least, 0.0)
    column = _stacked(right, min(slack / max(len(right), 1), 36.0))
    other = _stacked(left, min(slack / max(len(left), 1), 36.0))
    height = max(column.height, other.height)
    placed: dict[str, PlacedEnd] = {}
    tie_x = max((-block.reach[0] + block.cable[0] for block in left), default=0.0)
    natural = _link_room(tree, height, settings) if right else 0.0
    ahead = max((_right_width(block) for block in right), default=0.0)
    width = tie_x + natural + ahead
    heads = max((block.head_width for block in left), default=0.0)
    spare = max(settings.width - 2 * MARGIN - width, 0.0)
    far_x = max(tie_x + natural + min(spare, 300.0), heads + 24.0 if right else 0.0)
    down = (height - column.height) / 2
    for block, y in zip(column.blocks, column.centres, strict=True):
        placed[block.end] = PlacedEnd(block, (far_x - block.cable[0], y + down))
    shift = (height - other.height) / 2
    for block, y in zip(other.blocks, other.centres, strict=True):
        centre = y + shift
        if len(left) == 1 and right:
            centre = max(column.middle + down, _lead_in(block))
        placed[block.end] = PlacedEnd(block, (tie_x - block.cable[0], centre))
    return _centred(placed, settings)


def _right_width(block: EndBlock) -> float:
    """Return how far a right block goes on from where its cable is tied."""
    reach = block.reach[2] - block.cable[0]
    if block.compact:
        return block.face_box[2] - block.cable[0] + 12 + block.head_width
    return max(reach, block.head_width - JACKET_PX)


def _centred(placed: dict[str, PlacedEnd], settings: Settings) -> tuple[dict[str, PlacedEnd], Box]:
    """Move all into the room: centred where there is more than needed, else from the corner."""
    box = joined_box(
        box
        for end in placed.values()
        for box in (
            end.box,
            *(moved_box(box_of(items), at) for _, items, at in _furniture(end, placed)),
        )
    )
    dx = MARGIN - box[0] + max(settings.width - 2 * MARGIN - (box[2] - box[0]), 0.0) / 2
    dy = MARGIN - box[1] + max(settings.height - 2 * MARGIN - (box[3] - box[1]), 0.0) / 2
    dx, dy = round(dx), round(dy)
    moved = {
        name: PlacedEnd(end.block, (end.origin[0] + dx, end.origin[1] + dy))
        for name, end in placed.items()
    }
    return moved, moved_box(box, (dx, dy))


def _furniture(
    end: PlacedEnd, placed: Mapping[str, PlacedEnd]
) -> list[tuple[str, DrawList, Point]]:
    """Return head and foot of an end with the places of their top left corners."""
    block, (x, y) = end.block, end.origin
    if block.compact:
        left = block.face_box[2] + 12 if block.facing < 0 else block.reach[0]
        top = -11.0 if block.facing < 0 else block.reach[1] - 30.0
        return [("head", block.head, (x + left, y + top))]
    alone = sum(other.block.facing == block.facing for other in placed.values()) == 1
    top = y - _lead_in(block)
    if alone:
        top = min(other.origin[1] - _lead_in(other.block) for other in placed.values())
    left = x + block.reach[0] if block.facing > 0 else _heads_left(placed)
    foot = (x + block.foot_at[0], y + block.foot_at[1])
    return [("head", block.head, (left, top)), ("foot", block.foot, foot)]


def _heads_left(placed: Mapping[str, PlacedEnd]) -> float:
    """Return where the heads of the right column begin, all at one place."""
    right = [end for end in placed.values() if end.block.facing < 0]
    jackets = min(end.origin[0] + end.block.cable[0] - 22.0 for end in right)
    room = min(end.origin[0] + end.block.reach[2] - end.block.head_width for end in right)
    return min(jackets, room)


def _placed_groups(end: PlacedEnd, placed: Mapping[str, PlacedEnd]) -> dict[str, Group]:
    found = {group.key: replace(group, origin=end.origin) for group in end.block.groups}
    for kind, items, at in _furniture(end, placed):
        key = f"{kind}/{end.block.end}"
        found[key] = Group(key, Layer.LABEL, items, (round(at[0]), round(at[1])))
    return found


# -- splits and links -------------------------------------------------------------------------


def _tied(placed: Mapping[str, PlacedEnd], end: str) -> Point:
    return placed[end].at(placed[end].block.cable)


def _split_places(tree: Tree, placed: Mapping[str, PlacedEnd]) -> dict[str, Point]:
    """Return the middle of each split block."""
    if not tree.splits:
        return {}
    near = max((_tied(placed, end)[0] for end in tree.left), default=0.0)
    far = min((_tied(placed, end)[0] for end in tree.right), default=near + 200.0)
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


def _split_half(
    split: str, tree: Tree, placed: Mapping[str, PlacedEnd], settings: Settings
) -> float:
    trunks = [reach.left for reach in tree.reaches if reach.right == split]
    halves = [placed[end].block.cable_half for end in trunks if end in placed]
    legs = sum(reach.left == split for reach in tree.reaches)
    return max(min(max(halves, default=20.0), 52.0), 4.0 * legs, 16.0 * _small(settings))


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


def _link_facts(
    plan: Plan,
    tree: Tree,
    placed: Mapping[str, PlacedEnd],
    splits: Mapping[str, Point],
    settings: Settings,
) -> list[LinkFacts]:
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
    return _lengths_once(found)


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
    half = _split_half(node, tree, placed, settings)
    beside = sorted(
        (other for other in tree.reaches if other.left == node),
        key=lambda other: _level(other.right, tree, placed),
    )
    order = in_order(names, levels)
    width = SPLIT_PX * _small(settings) / 2
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
