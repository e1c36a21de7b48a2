"""The bench laid out; ends and sections that did not change are not drawn anew."""

from dataclasses import replace

from planner.drawing.bench.end import build_block
from planner.drawing.bench.facts import EndFacts, carried_signals, facts_of, terminal_scale
from planner.drawing.bench.joining import link_facts, split_half, split_places
from planner.drawing.bench.links import SPLIT_PX, LinkFacts, link_items, split_items
from planner.drawing.bench.lone import least_zoom, lone_bench
from planner.drawing.bench.parts import Bench, EndBlock, Group, Layer, SectionRun, Settings
from planner.drawing.bench.placing import MARGIN, place_ends, placed_groups, small
from planner.drawing.bench.shapes import box_of, joined_box
from planner.drawing.bench.tree import Tree, tree_of
from planner.model.plan import Plan
from planner.wiring.roles import role_of

ZOOM_LEAST, ZOOM_MOST = 0.12, 6.0
# Below this width of the room the heads are kept shorter.
NARROW_PX = 860.0
# Below this height for each of the ends that stand one above another, heads have one line.
LOW_PX = 240.0


def _with_shortness(settings: Settings, tree: Tree) -> Settings:
    """Return settings that say where width or height is short; what is said already stays."""
    rows = 1 if settings.only else max(len(tree.left), len(tree.right), 1)
    # One end alone has the whole width for its head.
    narrow = settings.narrow or (not settings.only and 0.0 < settings.width < NARROW_PX)
    low = settings.low or (rows > 1 and 0.0 < settings.height < LOW_PX * rows)
    return replace(settings, narrow=narrow, low=low)


class BenchLayout:
    """Lay out plans one after another, keeping what stays equal."""

    def __init__(self) -> None:
        self._blocks: dict[str, tuple[EndFacts, Settings, EndBlock]] = {}
        self._links: dict[str, tuple[LinkFacts, Settings, tuple[Group, ...], SectionRun]] = {}

    # -- blocks ---------------------------------------------------------------------------

    def bench(self, plan: Plan, settings: Settings) -> Bench:
        """Return the drawing of a plan: the whole bench, or the one end that is asked for."""
        tree = tree_of(plan)
        settings = _with_shortness(settings, tree)
        plain = replace(settings, width=0.0, height=0.0, only="")
        blocks = self._all_blocks(plan, tree, plain, settings.only)
        if settings.only in blocks:
            return lone_bench(blocks[settings.only], settings)
        placed, box = place_ends(tree, blocks, settings)
        groups: dict[str, Group] = {}
        for end in placed.values():
            groups |= placed_groups(end, placed)
        splits = split_places(tree, placed)
        sections: dict[str, SectionRun] = {}
        for facts in link_facts(plan, tree, placed, splits, settings):
            drawn, run = self._link(facts, plain)
            groups |= {group.key: group for group in drawn}
            sections[facts.section] = run
        for split, at in splits.items():
            block = split_items(
                at,
                split_half(split, tree, placed, settings),
                SPLIT_PX * small(settings),
                settings.look,
            )
            groups[f"split/{split}"] = Group(f"split/{split}", Layer.JACKET, block)
        words = [box_of(groups[f"section/{name}"].items) for name in sections]
        return Bench(groups, placed, sections, joined_box([box, *words]))

    def _all_blocks(
        self, plan: Plan, tree: Tree, settings: Settings, only: str = ""
    ) -> dict[str, EndBlock]:
        """Return the blocks of all ends, or of the only one that is wanted."""
        names = (*tree.left, *tree.right)
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
            for end in ((only,) if only in names else names)
        }

    def _block(self, facts: EndFacts, settings: Settings) -> EndBlock:
        kept = self._blocks.get(facts.end)
        if kept is not None and kept[1] == settings and kept[0] == facts:
            return kept[2]
        before = kept[2] if kept is not None and kept[1] == settings else None
        block = build_block(facts, settings, before)
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

        Sizes grow nearly in a straight line with the zoom, so false position is quick; a step of
        halving between keeps it from creeping where words take most of the room.
        """
        if not plan.ends:
            return 1.0
        low, high, zoom = ZOOM_LEAST, most, 1.0
        settings = _with_shortness(settings, tree_of(plan))
        for step in range(9):
            spill = self._spill(plan, replace(settings, zoom=zoom))
            if spill <= 1.0:
                low = zoom
                if high - low < 0.02:
                    break
            else:
                high = zoom
            guess = 0.985 * zoom / max(spill, 0.01)
            creeping = step % 3 == 2 or not low < guess < high
            zoom = (low + high) / 2 if creeping else guess
        return low

    def fit_end(self, plan: Plan, settings: Settings) -> float:
        """Return the zoom for the one end shown: it has room, or is as large as hands need."""
        fitting = self.fit_zoom(plan, settings)
        placed = self.bench(plan, replace(settings, zoom=1.0)).ends.get(settings.only)
        return max(fitting, least_zoom(placed.block)) if placed is not None else fitting

    def _spill(self, plan: Plan, settings: Settings) -> float:
        """Return how many times too large the bench is for its room; 1 just fits."""
        # The head of one end alone may go where the width leaves it room.
        width = settings.width if settings.only else 0.0
        box = self.bench(plan, replace(settings, width=width, height=0.0)).box
        across = (box[2] - box[0]) / max(settings.width - 2 * MARGIN, 1.0)
        down = (box[3] - box[1]) / max(settings.height - 2 * MARGIN, 1.0)
        return max(across, down)
