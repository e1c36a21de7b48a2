"""The stage of the canvas: the bench laid out at a zoom and a side, in the room there is."""

from dataclasses import replace
from typing import TYPE_CHECKING, Literal

from PySide6.QtCore import QPointF, Qt, Signal
from PySide6.QtGui import QColor, QPixmapCache
from PySide6.QtWidgets import QFrame, QGraphicsView, QStyle

from planner.app.canvas.aim import Aim
from planner.app.canvas.overlays import Overlays
from planner.app.canvas.scene import BenchScene
from planner.app.workbench import Workbench
from planner.drawing.bench import BenchLayout, Settings
from planner.drawing.bench.layout import ZOOM_LEAST, ZOOM_MOST
from planner.drawing.bench.placing import MARGIN
from planner.drawing.bench.shapes import Box
from planner.drawing.looks import Look

if TYPE_CHECKING:
    from planner.model.plan import Plan

# What a fitting zoom depends on, the plan apart: width, height, one scale, side, the only end.
Room = tuple[float, float, bool, str, str]
STEP = 1.25
WHOLE_LEAD = "Bench: the whole lead"
_SLACK_PX = 8
_CACHE_KB = 96 * 1024


class Stage(QGraphicsView):
    """Show the bench of the workbench's plan; scene units are px at every zoom.

    Zooming lays the bench out anew, so that words keep their size and labels find new places.
    """

    zoom_changed = Signal(float)
    side_changed = Signal(str)
    one_scale_changed = Signal(bool)
    end_shown = Signal(str)

    def __init__(self, workbench: Workbench, look: Look) -> None:
        super().__init__()
        self.workbench, self.look = workbench, look
        self.bench_scene = BenchScene(self)
        self.setScene(self.bench_scene)
        self.side: Literal["solder", "mating"] = "solder"
        self.aim = Aim(workbench, self.bench_scene, look)
        self.overlays = Overlays(workbench, self.bench_scene, look)
        self._layout = BenchLayout()
        self._zoom, self._fitted, self._one_scale = 1.0, True, False
        self._only = ""
        self._resting = False
        self.laid_out: Settings | None = None
        self._fits: tuple[Plan | None, dict[Room, float]] = (None, {})
        QPixmapCache.setCacheLimit(max(QPixmapCache.cacheLimit(), _CACHE_KB))
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
        self.setViewportUpdateMode(QGraphicsView.ViewportUpdateMode.MinimalViewportUpdate)
        self.setTransformationAnchor(QGraphicsView.ViewportAnchor.NoAnchor)

    # -- what is shown ----------------------------------------------------------------------

    @property
    def zoom(self) -> float:
        """The zoom; 1 is 100 %."""
        return self._zoom

    def set_look(self, look: Look) -> None:
        """Show the bench in another palette."""
        self.look = self.aim.look = look
        self.setBackgroundBrush(QColor(look.paper))
        self.overlays.set_look(look)
        self.relayout()

    def settings(self) -> Settings:
        """Return how the bench is laid out now."""
        size = self.maximumViewportSize()
        return Settings(
            self.look, self._zoom, self._one_scale, self.side, size.width(), size.height(),
            only=self._only,
        )  # fmt: skip

    def rest(self, *, resting: bool) -> None:
        """Leave the bench as it is while another view is looked at; then catch up."""
        if resting != self._resting:
            self._resting = resting
            if not resting:
                self.refit() if self._fitted else self.relayout()

    def relayout(self) -> None:
        """Lay the bench out anew; only what differs is drawn again."""
        if self._resting:
            return
        self.laid_out = self.settings()
        bench = self._layout.bench(self.workbench.plan, self.laid_out)
        self.bench_scene.show_bench(bench)
        size = self.maximumViewportSize()
        # A few px of a stroke over the edge are not worth a scroll bar.
        across, down = bench.box[2] + MARGIN, bench.box[3] + MARGIN
        wide, high = across > size.width() + _SLACK_PX, down > size.height() + _SLACK_PX
        # One scroll bar takes room from the other way, and must not bring the other bar with it.
        bar = self.style().pixelMetric(QStyle.PixelMetric.PM_ScrollBarExtent)
        width = across if wide else size.width() - (bar if high else 0)
        height = down if high else size.height() - (bar if wide else 0)
        self.setSceneRect(0, 0, int(width), int(height))
        self.overlays.show_all()

    def room(self) -> Box:
        """Return the part of the bench that can be seen, in scene coordinates."""
        seen = self.mapToScene(self.viewport().rect()).boundingRect()
        return (seen.left(), seen.top(), seen.right(), seen.bottom())

    # -- zoom, scale, side ------------------------------------------------------------------

    def fit(self) -> None:
        """Show the whole lead, and keep doing so until it is zoomed by hand."""
        self._fitted = True
        self.refit()

    def refit(self) -> None:
        """Find the zoom at which the whole lead, or the one end shown, has room."""
        if self._resting:
            return
        room, plan = replace(self.settings(), zoom=1.0), self.workbench.plan
        if self._fits[0] is not plan:
            self._fits = (plan, {})
        known = self._fits[1]
        key = (room.width, room.height, self._one_scale, self.side, self._only)
        if key not in known:
            find = self._layout.fit_end if self._only else self._layout.fit_zoom
            known[key] = find(plan, room)
        self._zoom = known[key]
        self.relayout()
        self.zoom_changed.emit(self._zoom)

    @property
    def only(self) -> str:
        """The one end that is shown; empty for the whole lead."""
        return self._only

    def show_end(self, end: str | None) -> None:
        """Show one end alone, as large as the room allows; None shows the whole lead."""
        wanted = end or ""
        if wanted == self._only:
            return
        self.call_off()
        self._only = wanted
        self.aim.clear()
        self.setAccessibleName(f"Bench: end {wanted}" if wanted else WHOLE_LEAD)
        self.fit()
        self.end_shown.emit(wanted)

    def zoom_in(self) -> None:
        """Zoom one step in."""
        self.zoom_to(self._zoom * STEP)

    def zoom_out(self) -> None:
        """Zoom one step out."""
        self.zoom_to(self._zoom / STEP)

    def zoom_reset(self) -> None:
        """Zoom to 100 %: the smallest terminal about 27 px."""
        self.zoom_to(1.0)

    def zoom_to(self, zoom: float, at: QPointF | None = None) -> None:
        """Zoom, keeping what is under `at` (a viewport point; the middle) where it is."""
        zoom = min(max(zoom, ZOOM_LEAST), ZOOM_MOST)
        where = at if at is not None else QPointF(self.viewport().rect().center())
        end, local = self._anchor(self.mapToScene(where.toPoint()))
        ratio = zoom / self._zoom
        self._fitted, self._zoom = False, zoom
        self.relayout()
        placed = self.bench_scene.bench.ends.get(end)
        if placed is not None:
            x, y = placed.at((local[0] * ratio, local[1] * ratio))
            self.horizontalScrollBar().setValue(round(x - where.x()))
            self.verticalScrollBar().setValue(round(y - where.y()))
        self.zoom_changed.emit(zoom)

    def _anchor(self, at: QPointF) -> tuple[str, tuple[float, float]]:
        """Return the end whose face is nearest to a point, and the point from its centre."""
        ends = self.bench_scene.bench.ends
        name = min(
            ends,
            key=lambda end: abs(ends[end].origin[0] - at.x()) + abs(ends[end].origin[1] - at.y()),
            default="",
        )
        if not name:
            return "", (0.0, 0.0)
        origin = ends[name].origin
        return name, (at.x() - origin[0], at.y() - origin[1])

    def set_one_scale(self, one_scale: bool) -> None:  # noqa: FBT001 - a slot for a checked action
        """Draw all ends at one scale, or each at its own."""
        if one_scale != self._one_scale:
            self._one_scale = one_scale
            self.refit() if self._fitted else self.relayout()
            self.one_scale_changed.emit(one_scale)

    def set_side(self, side: Literal["solder", "mating"]) -> None:
        """Look at the solder side, or at the mating side: mirrored, nothing lands there."""
        if side != self.side:
            self.call_off()
            self.side = side
            self.relayout()
            self.side_changed.emit(side)

    def call_off(self) -> None:
        """End what is under way before the stage changes; nothing is, on a bare stage."""
