"""In hand: a section of cable: which cable, how long, where its shield lands."""

from functools import partial
from typing import cast

from planner.app.panels.facts.electrical import section_capacitance_text, section_ohm_text
from planner.app.panels.facts.page import Page
from planner.app.panels.facts.parts import Parts
from planner.app.panels.facts.units import ShownUnits
from planner.app.panels.pictograms import SIDE, cable_picture
from planner.app.panels.widgets.drawn import Drawn
from planner.app.panels.widgets.fields import Choice, Field
from planner.app.panels.widgets.labels import label
from planner.app.panels.words import POLICY_WORDS, distinct
from planner.app.workbench import Workbench
from planner.drawing.looks import Look
from planner.edits import cables
from planner.model.cable import Cable
from planner.model.plan import Section, ShieldPolicy
from planner.units import parse_length_mm


class SectionPage(Page):
    """Show the section of cable that is selected."""

    word = "cable"

    def __init__(self, workbench: Workbench, look: Look, units: ShownUnits) -> None:
        super().__init__(workbench, look, units)
        self.title = label("", "head", wrap=True)
        self.picture = Drawn((SIDE, SIDE), look)
        self.cable = Choice("Cable", (), self._on_cable)
        self.length = Field("Length", self._on_length, "Such as 1.2 m, 350 mm, 12 in or 4 ft")
        self.policy = Choice("Shield lands", POLICY_WORDS, self._on_policy)
        for part in (self.title, self.picture, self.cable, self.length, self.policy):
            self.column.addWidget(part)
        self.add_facts("Spool", "Cores", "Shield", "Jacket", "Core size", "Goes on")
        self.add_facts("Resistance", "Capacitance")
        self.parts = Parts(self)
        self.column.addWidget(self.parts)
        self.column.addStretch(1)

    @property
    def _section(self) -> Section | None:
        return self.workbench.plan.section_by_id.get(self.workbench.selected_section)

    def refresh(self) -> None:
        """Show what is selected now."""
        section = self._section
        if section is None:
            return
        self.title.setText(f"{section.near} to {section.far}")
        cable = self.workbench.plan.cable_of(section.id)
        self.length.show_text(self.units.length_of(section.length_mm))
        self._show_choices(section)
        self._show_cable(cable)
        goes_on = f"the cores of {section.fan_of}, out of their jacket" if section.fan_of else ""
        self.show_fact("Goes on", goes_on)
        self.show_fact("Resistance", section_ohm_text(self.workbench.plan, section.id))
        self.show_fact("Capacitance", section_capacitance_text(self.workbench.plan, section.id))
        self.parts.show_place(section=section.id)

    def _show_choices(self, section: Section) -> None:
        stock = self.workbench.library.cables()
        none = () if section.cable else (("", "not chosen"),)
        self.cable.set_choices((*none, *((it.id, it.title) for it in stock)))
        self.cable.show_value(section.cable)
        self.cable.setVisible(not section.fan_of)
        self.policy.show_value(section.shield_policy or "")
        self.policy.setVisible(not section.fan_of)

    def _show_cable(self, cable: Cable | None) -> None:
        self.picture.setVisible(cable is not None)
        if cable is not None:
            self.picture.show_drawing(lambda look: cable_picture(cable, look))
            self.picture.setAccessibleName(f"cut end of {cable.title}")
        spool = (cable.spool, cable.maker) if cable else ()
        self.show_fact("Spool", ", ".join(filter(None, spool)))
        self.show_fact("Cores", " ".join(core.code for core in cable.cores) if cable else "")
        self.show_fact("Shield", _shields(cable) if cable else "")
        self.show_fact("Jacket", self.units.small(cable.jacket_mm) if cable else "")
        sizes = distinct(self.units.size(core.area_mm2) for core in cable.cores) if cable else ()
        self.show_fact("Core size", "; ".join(sizes))

    def _on_cable(self, key: str) -> None:
        record, section = self.workbench.library.cable(key), self._section
        if record is not None and section is not None:
            edit = partial(cables.choose_cable, section=section.id, cable=record)
            self.do(f"Choose {record.title} for {section.id}", edit)

    def _on_length(self, text: str) -> str:
        section = self._section
        if section is None:
            return ""
        try:
            length_mm = parse_length_mm(text, "in" if self.units.length == "inch" else "mm")
        except ValueError as error:
            return f"{error}."
        edit = partial(cables.set_length, section=section.id, length_mm=length_mm)
        return self.do(f"Length of {section.id}", edit)

    def _on_policy(self, value: str) -> None:
        section = self._section
        if section is not None:
            policy = cast("ShieldPolicy", value) if value else None
            edit = partial(cables.set_shield_policy, section=section.id, policy=policy)
            self.do(f"Shield of {section.id}", edit)


def _shields(cable: Cable) -> str:
    kinds = distinct(shield.kind for shield in cable.shields)
    count = len(cable.shields)
    if not count:
        return "none"
    return f"{count} {TIMES_OF} {kinds[0]}" if count > 1 else kinds[0]


TIMES_OF = "\u00d7"
