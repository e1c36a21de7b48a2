"""Where the core in hand points: which contact would take it, what that would do, how it looks."""

from dataclasses import dataclass
from functools import partial

from PySide6.QtCore import QObject

from planner.app.canvas.scene import BenchScene
from planner.app.panels.verdict import drop_verdict
from planner.app.panels.words import contact_words, wire_code
from planner.app.workbench import Ghost, Workbench
from planner.checks.finding import WEIGHTS
from planner.drawing.bench import Layer
from planner.drawing.bench import overlays as drawn
from planner.drawing.bench.callout import CalloutLine, busy_boxes, callout, card_place
from planner.drawing.bench.hand import ghost_core
from planner.drawing.bench.shapes import Box
from planner.drawing.looks import Look
from planner.drawing.primitives import DrawList, Point
from planner.edits import landings
from planner.model.place import Place

SNAP_PX = 24.0
_LINES_MOST = 4


@dataclass(frozen=True, slots=True)
class Target:
    """A contact that the core in hand is held over, and what a drop there would do."""

    end: str
    contact: str
    ghost: Ghost
    exchange: bool
    weight: str = ""


class Aim(QObject):
    """Follow the pointer with a core in hand; drop it where it points."""

    def __init__(self, workbench: Workbench, scene: BenchScene, look: Look) -> None:
        super().__init__(scene)
        self._workbench, self._scene, self.look = workbench, scene, look
        self.target: Target | None = None
        self._previews: dict[tuple[int, Place, str, str, bool], Ghost] = {}

    # -- looking ----------------------------------------------------------------------------

    def point(self, at: Point, room: Box, *, exchange: bool = False) -> None:
        """Look at what lies under the pointer and show what a drop would do."""
        found = self._scene.bench.contact_at(at, reach=SNAP_PX)
        self.look_at(found, room, exchange=exchange)

    def look_at(self, found: tuple[str, str] | None, room: Box, *, exchange: bool = False) -> None:
        """Show what a drop on a contact would do; None for no contact."""
        hand = self._workbench.hand
        self.target = None
        if hand is not None and found is not None and not self._is_home(hand, found):
            self.target = self._target(hand, *found, exchange=exchange)
        over = self.target
        same_end = over is not None and hand is not None and over.end == hand.end
        self._workbench.hover(over.contact if over is not None and same_end else "")
        self._show(hand, room)

    def clear(self) -> None:
        """Take the ring, the ghost and the callout away."""
        self.target = None
        self._workbench.hover("")
        self._overlay((), ())

    def _is_home(self, hand: Place, found: tuple[str, str]) -> bool:
        landing = self._workbench.plan.landing_at.get((hand.end, hand.conductor))
        return landing is not None and (landing.end, landing.contact) == found

    def _target(self, hand: Place, end: str, contact: str, *, exchange: bool) -> Target:
        ghost = self._ghost(hand, end, contact, exchange=exchange)
        fresh = [finding for finding in ghost.new if not finding.unfinished]
        weight = min((found.weight for found in fresh), key=WEIGHTS.index, default="")
        return Target(end, contact, ghost, exchange, weight)

    def _ghost(self, hand: Place, end: str, contact: str, *, exchange: bool) -> Ghost:
        if end == hand.end:
            return self._workbench.ghost(contact, exchange=exchange)
        key = (self._workbench.document.edition, hand, end, contact, exchange)
        if key not in self._previews:
            edit = landings.exchange if exchange else landings.land
            moved = partial(edit, end=end, conductor=hand.conductor, contact=contact)
            self._previews = {key: self._workbench.preview(moved)}
        return self._previews[key]

    # -- dropping ---------------------------------------------------------------------------

    def drop(self) -> bool:
        """Land the core on what it points at; False when nothing is pointed at or it is refused."""
        hand, target = self._workbench.hand, self.target
        self.clear()
        if hand is None or target is None or not target.ghost.allowed:
            return False
        return self._workbench.land(
            target.end, hand.conductor, target.contact, exchange=target.exchange
        )

    # -- showing ----------------------------------------------------------------------------

    def _show(self, hand: Place | None, room: Box) -> None:
        target, bench, look = self.target, self._scene.bench, self.look
        if hand is None or target is None:
            self._overlay((), ())
            return
        card = self._callout(hand, target, room)
        if not target.ghost.allowed:
            ring = drawn.refused_ring(bench, target.end, target.contact, look)
            self._overlay(ring, card)
            return
        ring = drawn.snap_ring(bench, target.end, target.contact, look, target.weight)
        placed = bench.ends[target.end]
        if hand.conductor in placed.block.strands:
            ghost = ghost_core(placed, hand.conductor, target.contact, look, target.weight)
            ring = ghost + ring
        self._overlay(ring, card)

    def _overlay(self, ring: DrawList, card: DrawList) -> None:
        self._scene.overlay("hand/ring", Layer.MARK, ring)
        self._scene.overlay("hand/card", Layer.GESTURE, card)

    def _callout(self, hand: Place, target: Target, room: Box) -> DrawList:
        plan = self._workbench.plan
        code = wire_code(plan, plan.conductor_by_id[hand.conductor], hand.end)
        title = f"{code} on {contact_words(plan, target.end, target.contact)}"
        if target.end != hand.end:
            title += f" of {target.end}"
        lines = (
            self._refusal(hand, target) if not target.ghost.allowed else self._words(hand, target)
        )
        bench = self._scene.bench
        place = Place(end=target.end, contact=target.contact)
        centre = bench.contacts[target.end, target.contact]
        radius = drawn.ring_radius(bench, place)
        busy = busy_boxes(bench, target.end)
        where = card_place(centre, radius, title, lines, room=room, busy=busy)
        return callout(centre, radius, title, lines, look=self.look, place=where)

    def _words(self, hand: Place, target: Target) -> list[CalloutLine]:
        place = Place(end=target.end, conductor=hand.conductor)
        said = drop_verdict(self._workbench, place, target.contact, target.ghost)
        return [CalloutLine(kind, words) for kind, words in said[:_LINES_MOST]]

    def _refusal(self, hand: Place, target: Target) -> list[CalloutLine]:
        lines = [CalloutLine("nothing", target.ghost.reason)]
        if not target.exchange:
            other = self._ghost(hand, target.end, target.contact, exchange=True)
            if other.allowed:
                lines.append(CalloutLine("hand", "Shift exchanges"))
        return lines
