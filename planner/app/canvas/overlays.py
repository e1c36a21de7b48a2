"""What is lit, selected, found or shown on the canvas, as the workbench says it."""

from typing import Literal

from PySide6.QtCore import QObject, QTimer, QVariantAnimation

from planner.app.canvas.scene import BenchScene
from planner.app.workbench import Workbench
from planner.checks.acceptance import acceptance_of
from planner.drawing.bench import Layer
from planner.drawing.bench import overlays as drawn
from planner.drawing.looks import Look
from planner.drawing.primitives import Point
from planner.model.place import Place

PULSE_MS = 700


class Overlays(QObject):
    """Keep the overlays that follow the workbench: light, selection, findings, the pulse."""

    def __init__(self, workbench: Workbench, scene: BenchScene, look: Look) -> None:
        super().__init__(scene)
        self._workbench, self._scene, self._look = workbench, scene, look
        self.focus = Place()
        self._dragged: Place | None = None
        self._pulse = QVariantAnimation(self)
        self._pulse.setDuration(PULSE_MS)
        self._pulse.setLoopCount(2)
        self._pulse.setStartValue(0.0)
        self._pulse.setEndValue(1.0)
        self._pulse.valueChanged.connect(self._on_pulse)
        self._pulse.finished.connect(lambda: self._on_pulse(None))
        self._pulse_at: tuple[Point, float] = ((0.0, 0.0), 0.0)
        workbench.lit_changed.connect(self.show_light)
        workbench.selection_changed.connect(self.show_light)
        workbench.findings_changed.connect(self.show_findings)

    def set_look(self, look: Look) -> None:
        """Draw in another look."""
        self._look = look
        self.show_all()

    def show_all(self) -> None:
        """Draw every overlay anew, after the bench was laid out."""
        self.show_light()
        self.show_findings()
        self.show_focus(self.focus)

    def set_dragged(self, place: Place | None) -> None:
        """Leave out the glow and the plate of a core that is drawn at the pointer."""
        self._dragged = place
        self.show_light()

    def show_light(self) -> None:
        """Draw the glow under what is lit or selected, its rings and plates."""
        scene, look, bench = self._scene, self._look, self._scene.bench
        selected = self._workbench.selection
        places = self._workbench.lit | ({selected} if selected.conductor else set())
        here = places - {self._dragged}
        scene.overlay("light/cable", Layer.LINK_GLOW, drawn.section_glow(bench, places, look))
        scene.overlay("light/cores", Layer.GLOW, drawn.net_glow(bench, here, look))
        rings = self._workbench.lit | ({selected} if selected.contact else set())
        scene.overlay("light/rings", Layer.MARK, drawn.net_rings(bench, rings, look))
        plates = drawn.net_plates(bench, here, look, selected) if here else ()
        scene.overlay("light/plates", Layer.PLATE, plates)

    def show_findings(self) -> None:
        """Draw the rings and marks of stops and cautions at their contacts."""
        marks = drawn.finding_marks(
            self._scene.bench, self._weights(), self._look, self._exchanged()
        )
        self._scene.overlay("findings", Layer.MARK, marks)

    def _weights(self) -> dict[tuple[str, str], Literal["stop", "caution"]]:
        """Return the heaviest weight at each contact; what is unfinished or accepted is quiet."""
        found: dict[tuple[str, str], Literal["stop", "caution"]] = {}
        plan = self._workbench.plan
        for finding in self._workbench.findings:
            if finding.unfinished or finding.weight == "note" or acceptance_of(plan, finding):
                continue
            for place in finding.where:
                contact = place.contact or self._landed_on(place)
                if contact and found.get((place.end, contact)) != "stop":
                    found[place.end, contact] = finding.weight
        return found

    def _exchanged(self) -> list[tuple[str, tuple[str, str]]]:
        """Return the pairs of contacts of one end that a stop says are exchanged."""
        found = []
        for finding in self._workbench.findings:
            places = [place for place in finding.where if place.contact]
            alike = len(places) == 2 and places[0].end == places[1].end
            if alike and finding.weight == "stop" and not finding.unfinished:
                found.append((places[0].end, (places[0].contact, places[1].contact)))
        return found

    def _landed_on(self, place: Place) -> str:
        landing = self._workbench.plan.landing_at.get((place.end, place.conductor))
        return landing.contact if landing else ""

    def show_focus(self, place: Place) -> None:
        """Draw the keyboard's frame round a contact; an empty place takes it away."""
        self.focus = place
        known = (place.end, place.contact) in self._scene.bench.contacts
        items = (
            drawn.focus_frame(self._scene.bench, place.end, place.contact, self._look)
            if known
            else ()
        )
        self._scene.overlay("focus", Layer.GESTURE, items)

    def pulse(self, centre: Point, radius: float) -> None:
        """Show a place by two rings that go out from it."""
        self._pulse_at = (centre, radius)
        self._pulse.stop()
        QTimer.singleShot(0, self._pulse.start)

    def _on_pulse(self, share: float | None) -> None:
        centre, radius = self._pulse_at
        items = () if share is None else drawn.pulse_ring(centre, radius, share, self._look)
        self._scene.overlay("pulse", Layer.MARK, items)
