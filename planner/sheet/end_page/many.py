"""The pages of an end with many contacts: the face along the page, the landings, the steps."""

from collections.abc import Iterator, Sequence
from dataclasses import replace

from planner.drawing.primitives import DrawList
from planner.sheet.block import moved
from planner.sheet.end_page import steps as step_list
from planner.sheet.end_page import table
from planner.sheet.end_page.alike import Shared
from planner.sheet.end_page.check import WIDTH as CHECK_WIDTH
from planner.sheet.end_page.check import check_panel
from planner.sheet.end_page.joints import joints_panel
from planner.sheet.end_page.page import LEAST_CHECK, TOP
from planner.sheet.end_page.panel import PANEL_TOP, Panel, titled
from planner.sheet.end_page.stops import stops_panel
from planner.sheet.end_page.template import groups_of, template_panel
from planner.sheet.end_page.upright import upright_face
from planner.sheet.end_page.work import lines_of
from planner.sheet.leaf import Making
from planner.sheet.paper import COLUMN_GAP, HALF_WIDTH, LIVE_WIDTH
from planner.sheet.stack import joined
from planner.sheet.stop_band import free_at

_WHITE = 300.0
_OVER_FOOT = 150.0  # between the frame of the face and the rule of the foot
_TABLE_WIDTH = LIVE_WIDTH - CHECK_WIDTH - COLUMN_GAP
_RIGHT = LIVE_WIDTH - CHECK_WIDTH
_SECOND = HALF_WIDTH + COLUMN_GAP


def many_bodies(making: Making, shared: Shared) -> tuple[DrawList, ...]:
    """Return the bodies of the pages: the face, what is landed and measured, the steps."""
    pages = _Pages(making, shared)
    bodies = (pages.face(), *pages.landings(), *pages.steps())
    return tuple(moved(body, (making.paper.left, TOP)) for body in bodies)


class _Pages:
    def __init__(self, making: Making, shared: Shared) -> None:
        assert shared.shown.connector is not None
        self.making, self.shared, self.connector = making, shared, shared.shown.connector
        self.words, self.facts = making.words, shared.shown
        self.room = making.paper.body_bottom - TOP

    def _free(self, right: float) -> float:
        """Return how far down a column goes whose right edge is `right`."""
        paper = self.making.paper
        if not self.making.stopped:
            return self.room
        return free_at(paper, paper.left + right) - TOP

    def face(self) -> DrawList:
        """Draw the face; a long one is turned along the page."""
        along = self.connector.shell.shape == "d"
        facts = replace(self.facts, along=along)
        room = self._free(LIVE_WIDTH) - _OVER_FOOT
        return upright_face(facts, self.connector, room, withheld=self.making.stopped).items

    def landings(self) -> Iterator[DrawList]:
        """Yield the table left; right of its first piece template and check bar, or the stops."""
        stopped = self.making.stopped
        pitch = table.TIGHT_ROW if stopped else table.ROW
        manner = table.Manner(self.words, _TABLE_WIDTH, not stopped, pitch)
        rows = table.rows_of(self.facts, self.words)
        room = self._free(_TABLE_WIDTH)
        for place, piece in enumerate(table.table_panels(rows, manner, room, room)):
            yield (*piece.items, *(self._right() if place == 0 else ()))

    def _right(self) -> DrawList:
        if self.making.stopped:
            space = (CHECK_WIDTH, self._free(LIVE_WIDTH))
            ids, findings = self.shared.ids, self.making.findings
            return stops_panel(findings, ids, self.words, space, CHECK_WIDTH).at(_RIGHT, 0)
        template = template_panel(groups_of(self.facts), self.words, CHECK_WIDTH)
        below = template.height + _WHITE
        room = min(LEAST_CHECK, self.room - below)
        check = check_panel(self.shared.ends, self.connector, self.words, room)
        return (*template.at(_RIGHT, 0), *check.at(_RIGHT, below))

    def steps(self) -> Iterator[DrawList]:
        """Yield the steps in two columns a page; the joints stand over the second one."""
        if self.making.stopped:
            return
        joints = joints_panel(self.facts, self.making.plan.workmanship, self.words)
        lines = tuple(lines_of(self.making, self.facts.end.id))
        runs = step_list.runs_of(lines, HALF_WIDTH, step_list.PITCH)
        room = self.room - PANEL_TOP
        rooms = (room, self.room - joints.height - _WHITE, room)
        pieces = list(step_list.steps_panels(runs, self.words, HALF_WIDTH, rooms))
        left = titled(self.words("end.steps"), HALF_WIDTH, pieces[0] if pieces else Panel((), 0))
        right = [joints.at(_SECOND, 0)]
        right += [piece.at(_SECOND, joints.height + _WHITE) for piece in pieces[1:2]]
        yield (*left.items, *joined(right))
        for place in range(2, len(pieces), 2):
            yield self._two(pieces[place : place + 2])

    def _two(self, pieces: Sequence[Panel]) -> DrawList:
        columns = (piece.at(place * _SECOND, 0) for place, piece in enumerate(pieces))
        body = Panel(joined(columns), self.room)
        return titled(self.words("end.steps"), LIVE_WIDTH, body).items
