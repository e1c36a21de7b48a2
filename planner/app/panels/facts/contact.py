"""In hand: a contact: its terminal, what it carries, what is on it, links to other contacts."""

from functools import partial

from planner.app.panels.facts.covers import JointCovers
from planner.app.panels.facts.page import Page
from planner.app.panels.facts.units import ShownUnits
from planner.app.panels.widgets.fields import Choice
from planner.app.panels.widgets.labels import button, label
from planner.app.panels.words import contact_words, end_title, wire_code
from planner.app.workbench import Workbench
from planner.drawing.looks import Look
from planner.edits import landings
from planner.model.connector import Connector, Contact
from planner.model.signals import signals_text
from planner.wording import listed

_ACROSS = {"cup": "Bore", "lug": "Width", "post": "Width"}


class ContactPage(Page):
    """Show the contact that is selected."""

    word = "contact"

    def __init__(self, workbench: Workbench, look: Look, units: ShownUnits) -> None:
        super().__init__(workbench, look, units)
        self.title = label("", "head", wrap=True)
        self.second = label("", "second", wrap=True)
        self.covers = JointCovers(self.do)
        self.link = Choice("Link with", (), self._on_link)
        self.unlink = button("Remove the link", self._on_unlink)
        self.wrong = label("", "error", wrap=True)
        self.measure = label("", "small", wrap=True)
        self.column.addWidget(self.title)
        self.column.addWidget(self.second)
        self.add_facts("Signal", "Landed", "Terminal", "Size", "Takes", "Moulded", "Linked")
        for part in (self.covers, self.measure, self.link, self.unlink, self.wrong):
            self.column.addWidget(part)
        self.link.setToolTip("A deliberate join inside the end, so that it is no bridge")
        self.column.addStretch(1)

    def refresh(self) -> None:
        """Show what is selected now."""
        plan, place = self.workbench.plan, self.workbench.selection
        connector = plan.connector_of(place.end) if place.end in plan.end_by_id else None
        contact = connector.by_id.get(place.contact) if connector else None
        if connector is None or contact is None:
            return
        spoken = contact.spoken
        self.title.setText(f"{spoken[:1].upper()}{spoken[1:]} of {place.end}")
        self.second.setText(end_title(plan, place.end))
        signals = signals_text(self.workbench.wiring.signals_at(place.end, contact.id))
        self.show_fact("Signal", signals or "none by its pinout")
        self.show_fact("Landed", self._landed() or "empty")
        self._show_terminal(contact)
        self.covers.show_joint(self.workbench, landings.occupants(plan, place.end, contact.id))
        groups = [it for it in connector.to_measure() if it in {"positions", "terminals"}]
        self.measure.setText(f"From memory, measure on the part: {listed(groups)}.")
        self.measure.setVisible(bool(groups))
        self._show_links(connector, contact)

    def _landed(self) -> str:
        plan, place = self.workbench.plan, self.workbench.selection
        return listed(
            [
                wire_code(plan, plan.conductor_by_id[conductor], place.end)
                for conductor in self.workbench.wiring.landed_on(place.end, place.contact)
            ]
        )

    def _show_terminal(self, contact: Contact) -> None:
        terminal, small = contact.terminal, self.units.small
        self.show_fact(
            "Terminal", f"solder {terminal.kind}" if terminal.kind == "cup" else terminal.kind
        )
        across = f"{_ACROSS[terminal.kind].lower()} {small(terminal.across_mm)}"
        depth = "deep" if terminal.kind == "cup" else "long"
        self.show_fact("Size", f"{across}, {small(terminal.depth_mm)} {depth}")
        takes = terminal.takes
        self.show_fact("Takes", "one conductor" if takes == 1 else f"{takes} conductors")
        self.show_fact("Moulded", contact.moulded)

    def _show_links(self, connector: Connector, contact: Contact) -> None:
        plan, end = self.workbench.plan, self.workbench.selection.end
        linked = self._linked()
        self.show_fact("Linked", listed([contact_words(plan, end, it) for it in linked]))
        others = [it for it in connector.contacts if it.id != contact.id and it.id not in linked]
        self.link.set_choices((("", "nothing"), *((it.id, it.spoken) for it in others)))
        self.link.setVisible(bool(others))
        self.unlink.setVisible(bool(linked))
        self._show_wrong("")

    def _linked(self) -> tuple[str, ...]:
        place = self.workbench.selection
        return tuple(
            contact
            for link in self.workbench.plan.links
            if link.end == place.end and place.contact in link.contacts
            for contact in link.contacts
            if contact != place.contact
        )

    def _show_wrong(self, wrong: str) -> None:
        self.wrong.setText(wrong)
        self.wrong.setVisible(bool(wrong))

    def _on_link(self, other: str) -> None:
        place = self.workbench.selection
        if other:
            edit = partial(landings.link, end=place.end, contacts=(place.contact, other))
            self._show_wrong(self.do(f"Link {place.contact} and {other} at {place.end}", edit))

    def _on_unlink(self) -> None:
        place = self.workbench.selection
        edit = partial(landings.unlink, end=place.end, contacts=(place.contact,))
        self._show_wrong(self.do(f"Remove the link of {place.contact} at {place.end}", edit))
