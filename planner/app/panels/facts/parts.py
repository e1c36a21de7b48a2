"""In hand: the parts of an end or a section: those chosen, those proposed, what stock lacks."""

from collections.abc import Sequence
from functools import partial

from PySide6.QtGui import QShowEvent
from PySide6.QtWidgets import QHBoxLayout, QPushButton, QVBoxLayout, QWidget

from planner.app.panels.facts.page import Page
from planner.app.panels.widgets.labels import Head, button, label
from planner.app.panels.widgets.rows import MarkedLine, emptied
from planner.app.workbench import Edit
from planner.dryfit.parts import answers
from planner.dryfit.proposing import Lack, Proposal
from planner.dryfit.shrink_places import cut_mm
from planner.dryfit.thickness import trunk_at
from planner.dryfit.threading import thread
from planner.edits.parts import remove_part, take_parts
from planner.model.part import Part
from planner.model.plan import PartUse, Plan

NO_WAY = "no way on: see the findings"


class PartRow(QWidget):
    """A part in words with its button; the button says the part to who can't see the row."""

    def __init__(self, title: str, small: str, act: QPushButton, spoken: str) -> None:
        super().__init__()
        self.words = label(title, wrap=True)
        self.small = label(small, "small", wrap=True)
        self.act = act
        act.setAccessibleName(spoken)
        text = QVBoxLayout()
        text.setSpacing(0)
        text.addWidget(self.words)
        text.addWidget(self.small)
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 4, 0, 4)
        row.setSpacing(8)
        row.addLayout(text, 1)
        row.addWidget(act)


class Parts(QWidget):
    """The section of the in-hand pages; nothing is worked out while it is hidden."""

    def __init__(self, page: Page) -> None:
        super().__init__()
        self._page = page
        self._end = self._section = ""
        self._stale = True
        self.head = Head("Parts", "section")
        self.take_all = button("Take all", self._on_take_all, tip="Plan all parts proposed here")
        self.refusal = label("", "error", wrap=True)
        self._proposed: tuple[Proposal, ...] = ()
        self._list = QVBoxLayout()
        self._list.setSpacing(0)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 8, 0, 0)
        column.setSpacing(2)
        for part in (self.head, self.refusal):
            column.addWidget(part)
        column.addLayout(self._list)
        column.addWidget(self.take_all)
        self.setAccessibleName("Parts")

    def show_place(self, *, end: str = "", section: str = "") -> None:
        """Show the parts of an end, or of a section and the splits it is the trunk of."""
        self._end, self._section, self._stale = end, section, True
        if self.isVisible():
            self._fill()

    def showEvent(self, event: QShowEvent) -> None:
        """Work out what was put off while this was hidden."""
        super().showEvent(event)
        if self._stale:
            self._fill()

    def _fill(self) -> None:
        self._stale = False
        bench = self._page.workbench
        plan, stock = bench.plan, bench.library.parts()
        found = answers(plan, stock, end=self._end, section=self._section)
        self._proposed = tuple(it for it in found if isinstance(it, Proposal))
        uses = chosen_at(plan, end=self._end, section=self._section)
        emptied(self._list)
        if uses:
            self._add_chosen(plan, uses)
        for proposal in self._proposed:
            self._add(self._proposed_row(proposal))
        for lack in found:
            if isinstance(lack, Lack):
                self._add(MarkedLine("note", f"{upper(lack.why)}.", self._page.look))
        self.refusal.hide()
        self.head.set_note(f"{len(uses)} chosen, {len(self._proposed)} proposed")
        self.take_all.setVisible(len(self._proposed) > 1)
        self.take_all.setAccessibleName(f"Take all {len(self._proposed)} parts proposed")
        self.head.setVisible(bool(uses or found))

    # -- rows -------------------------------------------------------------------------------

    def _add_chosen(self, plan: Plan, uses: Sequence[PartUse]) -> None:
        threading = thread(plan)
        known = {part.id: part for part in plan.definitions.parts}
        for use in uses:
            part = known.get(use.part)
            title = part.title if part is not None else use.part
            route = threading.route_of(use.id)
            tag = f"{route.tag}  " if route is not None else ""
            remove = button("Remove", partial(self._on_remove, use.id, title), "plain")
            spoken = f"Remove {tag.strip()} {title}".replace("  ", " ")
            small = self._chosen_words(plan, use, hindered=route is None)
            row = PartRow(f"{tag}{title}", small, remove, spoken)
            row.words.setProperty("tone", "bold")
            self._add(row)

    def _add(self, row: QWidget) -> None:
        self._list.addWidget(row)
        row.show()

    def _chosen_words(self, plan: Plan, use: PartUse, *, hindered: bool) -> str:
        cut = cut_mm(plan, use)
        words = [f"comes on from {use.comes_from}"]
        if use.at != use.comes_from:
            words.append(f"rests at {use.at}")
        if cut:
            words.append(f"cut {self._page.units.small(cut)}")
        return ", ".join([*words, NO_WAY] if hindered else words)

    def _proposed_row(self, proposal: Proposal) -> PartRow:
        part = proposal.part
        take = button("Take", partial(self._on_take, (proposal,), part), tip=proposal.why)
        why = f"{upper(proposal.why)}. Comes on from {proposal.comes_from}."
        return PartRow(part.title, why, take, f"Take {part.title} for {proposal.at}: {why}")

    # -- edits ------------------------------------------------------------------------------

    def _on_take(self, wanted: tuple[Proposal, ...], part: Part) -> None:
        self._do(f"Take {part.title} for {wanted[0].at}", partial(take_parts, proposals=wanted))

    def _on_take_all(self) -> None:
        edit = partial(take_parts, proposals=self._proposed)
        self._do(f"Take the parts of {self._end or self._section}", edit)

    def _on_remove(self, use: str, title: str) -> None:
        self._do(f"Remove {title}", partial(remove_part, use=use))

    def _do(self, text: str, edit: Edit) -> None:
        """Do an edit; the focus stays where it was in the list."""
        place = next((at for at, it in enumerate(self.buttons()) if it.hasFocus()), None)
        wrong = self._page.do(text, edit)
        self.refusal.setText(wrong)
        self.refusal.setVisible(bool(wrong))
        left = self.buttons()
        if place is not None and left:
            left[min(place, len(left) - 1)].setFocus()

    def buttons(self) -> list[QPushButton]:
        """Return the buttons that show, from the top."""
        items = [self._list.itemAt(at) for at in range(self._list.count())]
        rows = [it.widget() for it in items if it is not None]
        found = [row.act for row in rows if isinstance(row, PartRow)]
        return [*found, self.take_all] if self.take_all.isVisibleTo(self) else found


def chosen_at(plan: Plan, *, end: str = "", section: str = "") -> tuple[PartUse, ...]:
    """Return the parts planned at an end, or those at a split that rest round a section.

    A part that names no section counts for the one that parts there.
    """
    if end:
        return tuple(use for use in plan.parts if use.at == end)
    trunks = {split.id: trunk_at(plan, split.id) for split in plan.splits}
    parted = {split: trunk.id for split, trunk in trunks.items() if trunk is not None}
    return tuple(
        use for use in plan.parts if use.at in parted and (use.section or parted[use.at]) == section
    )


def upper(text: str) -> str:
    """Begin a sentence."""
    return f"{text[:1].upper()}{text[1:]}"
