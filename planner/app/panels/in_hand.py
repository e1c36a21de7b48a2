"""In hand: the facts of what is selected, and the fields to change them."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QScrollArea, QVBoxLayout, QWidget

from planner.app.panels.facts.conductor import ConductorPage
from planner.app.panels.facts.contact import ContactPage
from planner.app.panels.facts.end import EndPage
from planner.app.panels.facts.lead import LeadPage
from planner.app.panels.facts.page import Page
from planner.app.panels.facts.section import SectionPage
from planner.app.panels.facts.units import ShownUnits
from planner.app.panels.widgets.labels import Head, label
from planner.app.panels.widgets.panel import Panel
from planner.app.workbench import Workbench
from planner.drawing.looks import Look

NOTHING = "Click an end, a core or a contact: its facts show here."


class InHandPanel(Panel):
    """Show one page, the one for what is selected; pages are made when first wanted."""

    def __init__(self, workbench: Workbench, look: Look, parent: QWidget | None = None) -> None:
        super().__init__(workbench, look, parent)
        self.units = ShownUnits()
        self.head = Head("In hand")
        self.nothing = label(NOTHING, "second", wrap=True)
        self._pages: dict[type[Page], Page] = {}
        self.page: Page | None = None
        self._lay_out()
        self._listen()
        self.set_look(look)
        self.refresh()

    def set_units(self, gauge: str, length: str) -> None:
        """Show sizes in `mm2` or `awg` first, lengths in `mm` or `inch`."""
        self.units.gauge, self.units.length = gauge, length
        self.refresh()

    def set_look(self, look: Look) -> None:
        """Take on a look."""
        super().set_look(look)
        for page in self._pages.values():
            page.look = look
        self.refresh()

    def _lay_out(self) -> None:
        self._inside = QWidget()
        self._inside.setProperty("surface", "clear")
        self._column = QVBoxLayout(self._inside)
        self._column.setContentsMargins(0, 0, 0, 0)
        scroll = QScrollArea()
        scroll.setWidgetResizable(True)
        scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        scroll.setWidget(self._inside)
        self.head.setContentsMargins(16, 8, 16, 4)
        self.head.setFixedHeight(40)
        self.nothing.setContentsMargins(16, 0, 16, 12)
        self._column.addWidget(self.nothing, 0, Qt.AlignmentFlag.AlignTop)
        whole = QVBoxLayout(self)
        whole.setContentsMargins(0, 0, 0, 0)
        whole.setSpacing(0)
        whole.addWidget(self.head)
        whole.addWidget(scroll, 1)
        self.setAccessibleName("In hand")

    def _listen(self) -> None:
        bench = self.workbench
        self.attach(bench.selection_changed, self.refresh)
        self.attach(bench.plan_changed, self._on_plan_changed)
        self.attach(bench.library_changed, self.refresh)
        self.attach(bench.over_changed, self._on_over_changed)
        self.attach(bench.hand_changed, self._on_over_changed)

    def _on_plan_changed(self, *_changes: object) -> None:
        self.refresh()

    def _on_over_changed(self) -> None:
        if isinstance(self.page, ConductorPage):
            self.page.refresh_drop()

    # -- pages ------------------------------------------------------------------------------

    def refresh(self) -> None:
        """Show the page for what is selected, as it is now."""
        wanted = self._wanted()
        page = self._page(wanted) if wanted else None
        if page is not self.page:
            if self.page is not None:
                self.page.hide()
            self.page = page
        self.nothing.setVisible(page is None)
        self.head.set_note(page.word if page else "nothing")
        if page is not None:
            page.refresh()
            page.show()

    def _wanted(self) -> type[Page] | None:
        plan, here = self.workbench.plan, self.workbench.selection
        if self.workbench.selected_section in plan.section_by_id:
            return SectionPage
        if here.conductor in plan.conductor_by_id:
            return ConductorPage
        if here.end in plan.end_by_id:
            connector = plan.connector_of(here.end)
            known = connector is not None and here.contact in connector.by_id
            return ContactPage if known else EndPage
        return LeadPage if plan.ends else None

    def _page(self, wanted: type[Page]) -> Page:
        if wanted not in self._pages:
            made = wanted(self.workbench, self.look, self.units)
            self._pages[wanted] = made
            self._column.addWidget(made)
        return self._pages[wanted]
