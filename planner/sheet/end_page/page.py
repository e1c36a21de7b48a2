"""The page of an end: face, side view, landings, steps, joints, template; more pages if needed."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property

from planner.drawing.bench.shapes import box_of
from planner.drawing.primitives import DrawList
from planner.sheet.block import moved
from planner.sheet.end_page import steps as step_list
from planner.sheet.end_page import table
from planner.sheet.end_page.alike import Shared
from planner.sheet.end_page.check import bar_panel, check_panel, plug_panel, slim_bar_panel
from planner.sheet.end_page.ends_table import ends_table
from planner.sheet.end_page.joints import joints_panel
from planner.sheet.end_page.key_panel import key_panel
from planner.sheet.end_page.panel import (
    LEFT_WIDTH,
    PANEL_TOP,
    RIGHT_LEFT,
    RIGHT_WIDTH,
    Panel,
    titled,
)
from planner.sheet.end_page.stops import stops_panel
from planner.sheet.end_page.template import WIDTH, groups_of, template_panel
from planner.sheet.end_page.work import lines_of
from planner.sheet.face_panel import Faced, page_face
from planner.sheet.leaf import Making
from planner.sheet.paper import LIVE_WIDTH, MM
from planner.sheet.side_panel import side_panel
from planner.sheet.stack import joined
from planner.sheet.stop_band import free_at

TOP = 42 * MM
_CHECK_LEFT = LIVE_WIDTH - 100 * MM
_LEAST_SIDE = 3300.0
LEAST_CHECK = 4600.0


@dataclass(frozen=True, slots=True)
class Spacing:
    """What gives way where a page is full: white between panels, pitches; never type.

    `face` is the least height of the area for the face.
    """

    face: float
    white: float
    steps: float
    rows: float
    tight: bool


_SPACINGS = (
    Spacing(7450.0, 450.0, step_list.PITCH, table.ROW, tight=False),
    Spacing(6350.0, 450.0, step_list.PITCH, table.ROW, tight=False),
    Spacing(6350.0, 220.0, step_list.TIGHT_PITCH, table.TIGHT_ROW, tight=True),
    Spacing(6350.0, 220.0, step_list.LEAST_PITCH, table.TIGHT_ROW, tight=True),
)
_GAP = 150.0


class EndPage:
    """What stands on the page of one end, or of ends that are alike, at one spacing."""

    def __init__(
        self, making: Making, shared: Shared, spacing: Spacing, faces: dict[float, Faced]
    ) -> None:
        assert shared.shown.connector is not None
        self.making, self.spacing, self.faces = making, spacing, faces
        self.connector = shared.shown.connector
        self.shared, self.facts = shared, shared.shown
        self.words = making.words
        self.room = making.paper.body_bottom - TOP

    @cached_property
    def face(self) -> Faced:
        """The face in its frame."""
        least = self.spacing.face
        if least not in self.faces:
            self.faces[least] = page_face(
                self.facts, self.connector, withheld=self.making.stopped, least=least
            )
        return self.faces[least]

    @cached_property
    def beside(self) -> tuple[tuple[Panel, ...], tuple[Panel, ...]]:
        """What stands right of the face; then what the table needs of further pages."""
        stopped, face = self.making.stopped, self.face
        manner = table.Manner(self.words, RIGHT_WIDTH, not stopped, self.spacing.rows)
        tables, needed = self._tables(manner)
        free = face.height - needed - _GAP
        side = side_panel(
            self.facts, self.connector, RIGHT_WIDTH, max(free, _LEAST_SIDE), withheld=stopped
        )
        above = (Panel(*side),) if side is not None else ()
        below = () if face.keyed else (key_panel(self.facts, self.connector),)
        used = sum(panel.height + _GAP for panel in (*above, *below))
        most = max(face.height - used, 6 * table.ROW)
        first, *others = tables(most)
        return (*above, first, *below), tuple(others)

    def _tables(self, manner: table.Manner) -> tuple[Callable[[float], Iterator[Panel]], float]:
        """Return what draws the landing table into a first room and pages, and its height."""
        rows = table.rows_of(self.facts, self.words)
        if len(self.shared.ends) == 1:
            height = table.table_height(rows, manner)
            return lambda most: table.table_panels(rows, manner, most, self.room), height
        ends = ends_table(self.shared.ends, manner)
        notes = table.notes(rows, manner)
        whole = Panel((*ends.items, *notes.at(0, ends.height)), ends.height + notes.height)
        return lambda _: iter((whole,)), whole.height

    @cached_property
    def right_height(self) -> float:
        """How far down the panels right of the face go."""
        return sum(panel.height + _GAP for panel in self.beside[0]) - _GAP

    def view(self) -> DrawList:
        """Draw the face and what stands right of it."""
        items, y = [self.face.items], 0.0
        for panel in self.beside[0]:
            items.append(panel.at(RIGHT_LEFT, y))
            y += panel.height + _GAP
        return joined(items)

    @cached_property
    def runs(self) -> tuple[step_list.Run, ...]:
        """The steps, drawn."""
        lines = tuple(lines_of(self.making, self.facts.end.id))
        return step_list.runs_of(lines, LEFT_WIDTH, self.spacing.steps)

    @cached_property
    def joints(self) -> Panel:
        """Good and not good joints."""
        rules = self.making.plan.workmanship
        return joints_panel(self.facts, rules, self.words, tight=self.spacing.tight)

    @cached_property
    def foot(self) -> Panel:
        """Strip template and check bar, side by side where the template is not too wide."""
        template = self._template(WIDTH)
        room = max(template.height, LEAST_CHECK)
        check = check_panel(self.shared.ends, self.connector, self.words, room)
        right = box_of(template.items)[2]
        y = 0.0 if right < _CHECK_LEFT else template.height + self.spacing.white
        items = (*template.items, *check.at(_CHECK_LEFT, y))
        return Panel(items, max(template.height, y + check.height))

    def _template(self, width: float) -> Panel:
        groups = groups_of(self.facts)
        return template_panel(groups, self.words, width, tight=self.spacing.tight)

    def in_columns(self) -> DrawList | None:
        """Return one page of two columns, the template in the right one; None without room."""
        white, lower = self.spacing.white, len(self.beside[0])
        steps, template = self._steps(self.room, footed=True), self._template(RIGHT_WIDTH)
        wide = box_of(template.items)[2] > RIGHT_WIDTH + 50
        if len(steps) > 1 or self.beside[1] or wide:
            return None
        for below, beside in self._feet():
            left = [self.face_panel, *steps, *below]
            right = [*self.beside[0], self.joints, template, *beside]
            if max(_height(panels, white) for panels in (left, right)) <= self.room:
                columns = (
                    (0.0, spread_down(left, self.room, white, 1)),
                    (RIGHT_LEFT, spread_down(right, self.room, white, lower)),
                )
                return joined(panel.at(x, y) for x, placed in columns for panel, y in placed)
        return None

    def _feet(self) -> Iterator[tuple[tuple[Panel, ...], tuple[Panel, ...]]]:
        """Yield what stands under the steps and under the template, the airiest first."""
        ends, words = self.shared.ends, self.words
        plug = plug_panel(ends, self.connector, words, RIGHT_WIDTH)
        yield (bar_panel(words),), (plug,)
        slim = slim_bar_panel(words, LEFT_WIDTH)
        yield (slim,), (plug,)
        yield (plug_panel(ends, self.connector, words, LEFT_WIDTH), slim), ()

    @property
    def face_panel(self) -> Panel:
        """The face as a panel."""
        return Panel(self.face.items, self.face.height)

    def bodies(self) -> tuple[DrawList, ...]:
        """Return what stands on each page, from the body's upper left corner."""
        if self.making.stopped:
            return self._stopped()
        white = self.spacing.white
        free = self.room - self.foot.height - white
        footed = max(self.face.height, self.right_height) <= free
        free = free if footed else self.room
        steps = self._steps(free - self.face.height - white, footed=footed)
        joints = self._joints_top(free)
        first = steps[0].at(0, self.face.height + white) if steps else ()
        drawn = self.joints.at(RIGHT_LEFT, joints) if joints is not None else ()
        page = (*self.view(), *first, *drawn, *(self._foot() if footed else ()))
        right = [*([self.joints] if joints is None else []), *self.beside[1]]
        if len(steps) > 1 or right or not footed:
            columns = self.in_columns()
            if columns is not None:
                return (columns,)
        return (page, *self._further(steps[1:], right, footed=footed))

    def _steps(self, first: float, *, footed: bool) -> tuple[Panel, ...]:
        """Return the steps in pieces, each under the title; a further page may have the foot."""
        then = self.room - (0.0 if footed else self.foot.height + self.spacing.white)
        whole = self.room - PANEL_TOP
        pieces = step_list.steps_panels(
            self.runs, self.words, LEFT_WIDTH, (first - PANEL_TOP, then - PANEL_TOP, whole)
        )
        title = self.words("end.steps")
        return tuple(
            titled(title, LEFT_WIDTH, piece) if piece.height else piece for piece in pieces
        )

    def _joints_top(self, free: float) -> float | None:
        """Return where the joints stand: level with the steps, or higher where room is short."""
        level = max(self.face.height, self.right_height) + self.spacing.white
        top = min(level, free - self.joints.height)
        return top if top >= self.right_height + self.spacing.white else None

    def _foot(self) -> DrawList:
        return self.foot.at(0, self.room - self.foot.height)

    def _further(
        self, steps: Sequence[Panel], right: Sequence[Panel], *, footed: bool
    ) -> Iterator[DrawList]:
        """Yield what further pages hold: steps left, joints and the rest of the table right."""
        rest, panels = list(steps), list(right)
        while rest or panels or not footed:
            items = [rest.pop(0).items] if rest else []
            room = self.room
            if not footed:
                items.append(self._foot())
                room, footed = room - self.foot.height - self.spacing.white, True
            items += self._column(panels, room)
            yield joined(items)

    def _column(self, panels: list[Panel], room: float) -> Iterator[DrawList]:
        """Yield what fits into the right column, and take it out of `panels`."""
        y = 0.0
        while panels and (y == 0.0 or y + panels[0].height <= room):
            panel = panels.pop(0)
            yield panel.at(RIGHT_LEFT, y)
            y += panel.height + self.spacing.white

    def _stopped(self) -> tuple[DrawList, ...]:
        y = max(self.face.height, self.right_height) + self.spacing.white
        paper = self.making.paper
        room = free_at(paper, paper.left + LEFT_WIDTH) - TOP - y
        ids = self.shared.ids
        stops = stops_panel(self.making.findings, ids, self.words, (LEFT_WIDTH, room), LIVE_WIDTH)
        pages = [(*self.view(), *stops.at(0, y))]
        pages += [panel.items for panel in self.beside[1]]
        return tuple(pages)


def _height(panels: Sequence[Panel], white: float) -> float:
    return sum(panel.height for panel in panels) + white * max(len(panels) - 1, 0)


def spread_down(
    panels: Sequence[Panel], room: float, white: float, upper: int
) -> Iterator[tuple[Panel, float]]:
    """Yield panels with their tops: so many from the top, then with the white that is left."""
    spare = room - _height(panels, white)
    gaps = max(len(panels) - upper, 1)
    y = 0.0
    for place, panel in enumerate(panels):
        if place >= upper:
            y += spare / gaps
        yield panel, y
        y += panel.height + white


def end_bodies(making: Making, shared: Shared) -> tuple[DrawList, ...]:
    """Return the bodies of the pages of an end, or of alike ones: as few as there can be."""
    best: tuple[DrawList, ...] = ()
    faces: dict[float, Faced] = {}
    for spacing in _SPACINGS[-1:] if making.stopped else _SPACINGS:
        bodies = EndPage(making, shared, spacing, faces).bodies()
        if not best or len(bodies) < len(best):
            best = bodies
        if len(best) == 1:
            break
    return tuple(moved(body, (making.paper.left, TOP)) for body in best)
