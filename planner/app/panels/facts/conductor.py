"""In hand: a conductor at an end: its core, what it carries, where it lands, what is done to it."""

from functools import partial

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QVBoxLayout

from planner.app.panels.facts import electrical
from planner.app.panels.facts.covers import JointCovers
from planner.app.panels.facts.page import Page
from planner.app.panels.facts.units import ShownUnits
from planner.app.panels.verdict import drop_verdict
from planner.app.panels.widgets.drawn import Drawn
from planner.app.panels.widgets.fields import check
from planner.app.panels.widgets.labels import label, line
from planner.app.panels.widgets.rows import MarkedLine, emptied
from planner.app.panels.words import (
    METAL_WORDS,
    carried,
    contact_words,
    wire_at,
    wire_code,
    wire_words,
)
from planner.app.workbench import Workbench
from planner.drawing.cores import core_stroke, plate, strands_stroke, tail_stroke
from planner.drawing.looks import Look
from planner.drawing.primitives import DrawList
from planner.edits import landings
from planner.model.cable import Core, Shield
from planner.model.plan import Conductor
from planner.units import number

PICTURE = (112, 30)
TIMES = "\u00d7"


class ConductorPage(Page):
    """Show the conductor that is selected or in hand."""

    word = "conductor"

    def __init__(self, workbench: Workbench, look: Look, units: ShownUnits) -> None:
        super().__init__(workbench, look, units)
        self.picture = Drawn(PICTURE, look)
        self.title = label("", "head", wrap=True)
        self.carries = label("", "second", wrap=True)
        self.capped = check("Spare and capped here", self._on_capped, "Cut back and capped (C)")
        self.covers = JointCovers(self.do)
        self.wrong = label("", "error", wrap=True)
        self.drop_title = label("", "accent", wrap=True)
        self.drop = QVBoxLayout()
        self.drop_line = line()
        self._lay_out()

    def _lay_out(self) -> None:
        words = QVBoxLayout()
        words.setSpacing(0)
        words.addWidget(self.title)
        words.addWidget(self.carries)
        top = QHBoxLayout()
        top.setSpacing(8)
        top.addWidget(self.picture, 0, Qt.AlignmentFlag.AlignTop)
        top.addLayout(words, 1)
        self.column.addLayout(top)
        self.add_facts("Strands", "Size", "Insulation", "Metal", "Resistance", "Lands on")
        for part in (self.capped, self.covers, self.wrong, self.drop_line, self.drop_title):
            self.column.addWidget(part)
        self.column.addLayout(self.drop)
        self.column.addStretch(1)

    def refresh(self) -> None:
        """Show what is selected now."""
        plan, place = self.workbench.plan, self.workbench.selection
        conductor = plan.conductor_by_id.get(place.conductor)
        if conductor is None:
            return
        wire = wire_at(plan, conductor, place.end)
        words = wire_words(plan, conductor, place.end)
        noun = "core" if isinstance(wire, Core) else "shield"
        self.title.setText(f"{words[:1].upper()}{words[1:]} {noun}")
        brings = carried(plan, self.workbench.wiring, conductor.id)
        self.carries.setText(f"carries {brings}" if brings else "carries nothing yet")
        code = wire_code(plan, conductor, place.end)
        self.picture.show_drawing(lambda look: picture(wire, code, look))
        self.picture.setAccessibleName(f"{code} {words}")
        self._show_wire(wire)
        self.show_fact("Resistance", electrical.conductor_text(plan, conductor.id))
        self.show_fact("Lands on", self._lands(conductor))
        self._show_checks()
        self.refresh_drop()

    def _show_wire(self, wire: Core | Shield | None) -> None:
        core = wire if isinstance(wire, Core) else None
        strands = f"{core.strands} {TIMES} {number(core.strand_mm, 3)} mm" if core else ""
        self.show_fact("Strands", strands)
        self.show_fact("Size", self.units.size(core.area_mm2) if core else "")
        self.show_fact("Insulation", self.units.small(core.insulation_mm) if core else "")
        metal = METAL_WORDS[wire.metal] if wire else ""
        self.show_fact(
            "Metal",
            f"{metal}, twisted tail {number(wire.tail_mm)} mm"
            if isinstance(wire, Shield)
            else metal,
        )

    def _lands(self, conductor: Conductor) -> str:
        plan = self.workbench.plan
        said = []
        for end in self.workbench.wiring.ends_of(conductor.id):
            landing = plan.landing_at.get((end, conductor.id))
            capped = any((cap.end, cap.conductor) == (end, conductor.id) for cap in plan.caps)
            loose = "spare, capped" if capped else "loose"
            said.append(f"{end}: {contact_words(plan, end, landing.contact) if landing else loose}")
        return "\n".join(said)

    def _show_checks(self) -> None:
        plan, place = self.workbench.plan, self.workbench.selection
        landing = plan.landing_at.get((place.end, place.conductor))
        capped = any((cap.end, cap.conductor) == (place.end, place.conductor) for cap in plan.caps)
        self.capped.setChecked(capped)
        self.capped.setVisible(bool(place.end) and landing is None)
        self.covers.show_joint(self.workbench, (landing,) if landing else ())
        self._show_wrong("")

    def _show_wrong(self, wrong: str) -> None:
        self.wrong.setText(wrong)
        self.wrong.setVisible(bool(wrong))

    def refresh_drop(self) -> None:
        """Say what dropping it on the contact it is held over would do."""
        hand, over = self.workbench.hand, self.workbench.over
        emptied(self.drop)
        held = hand is not None and bool(over)
        self.drop_line.setVisible(held)
        self.drop_title.setVisible(held)
        if hand is None or not over:
            return
        words = contact_words(self.workbench.plan, hand.end, over)
        self.drop_title.setText(f"If dropped on {words} of {hand.end}")
        ghost = self.workbench.ghost(over)
        for kind, sentence in drop_verdict(self.workbench, hand, over, ghost):
            self.drop.addWidget(MarkedLine(kind, sentence, self.picture.look))

    def _on_capped(self, on: bool) -> None:  # noqa: FBT001 - what the box says
        place = self.workbench.selection
        edit = partial(
            landings.cap if on else landings.uncap, end=place.end, conductor=place.conductor
        )
        words = "Cap" if on else "Take the cap off"
        wrong = self.do(f"{words} {place.conductor} at {place.end}", edit)
        self._show_checks()
        self._show_wrong(wrong)


def picture(wire: Core | Shield | None, code: str, look: Look) -> DrawList:
    """Draw a core with its plate and bare strands, or a shield's tail."""
    middle, cut = PICTURE[1] / 2, 78.0
    if isinstance(wire, Core):
        scale = 20.0 / wire.insulation_mm
        width = max(wire.conductor_mm * scale, 6.0)
        bare = strands_stroke(((cut - 2, middle), (104.0, middle)), width, look, round_end=True)
        body = core_stroke(((1.0, middle), (cut, middle)), wire, scale=scale, look=look)
        return (*bare, *body, *plate((cut / 2, middle), code, look=look))
    if isinstance(wire, Shield):
        run = ((1.0, middle), (104.0, middle))
        tail = tail_stroke(run, wire, scale=11.0 / wire.tail_mm, look=look)
        return (*tail, *plate((cut / 2, middle), code, look=look))
    return ()
