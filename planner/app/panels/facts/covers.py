"""In hand: what covers a joint: its sleeve, with room to park, and a dab of compound."""

from collections.abc import Callable, Sequence
from functools import partial, reduce

from PySide6.QtWidgets import QVBoxLayout, QWidget

from planner.app.panels.widgets.fields import check
from planner.app.panels.widgets.labels import label
from planner.app.panels.widgets.rows import Fact
from planner.app.workbench import Edit, Workbench
from planner.dryfit.fit import fit_end
from planner.dryfit.sleeve_sizes import SleeveUse
from planner.dryfit.sleeve_words import size_words
from planner.dryfit.sleeves import sleeves_for
from planner.edits.landings import dab, sleeve
from planner.model.plan import Landing, Plan

Do = Callable[[str, Edit], str]


class JointCovers(QWidget):
    """Show and change what covers one joint, for one conductor or for all that are in it."""

    def __init__(self, do: Do) -> None:
        super().__init__()
        self._do = do
        self._landings: tuple[Landing, ...] = ()
        self.sleeve = Fact("Sleeve")
        self.dab = Fact("Dab")
        self.sleeved = check("Sleeved at the joint", self._on_sleeved, "An insulating sleeve")
        self.dabbed = check(
            "Dabbed at the joint", self._on_dabbed, "A dab of insulating compound, once it is cold"
        )
        self.wrong = label("", "error", wrap=True)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(4)
        for part in (self.sleeve, self.dab, self.sleeved, self.dabbed, self.wrong):
            column.addWidget(part)

    def show_joint(self, workbench: Workbench, landings: Sequence[Landing]) -> None:
        """Show what covers these landings on one contact; nothing is shown where there are none."""
        self._landings = tuple(landings)
        self.setVisible(bool(landings))
        self._show_wrong("")
        if landings:
            sleeve_said, dab_said = covers_said(workbench, landings)
            self.sleeve.show_value(sleeve_said)
            self.dab.show_value(dab_said)
            self.sleeved.setChecked(all(landing.sleeved for landing in landings))
            self.dabbed.setChecked(all(landing.dabbed for landing in landings))

    def _show_wrong(self, wrong: str) -> None:
        self.wrong.setText(wrong)
        self.wrong.setVisible(bool(wrong))

    def _on_sleeved(self, on: bool) -> None:  # noqa: FBT001 - what the box says
        def edit(plan: Plan, it: Landing) -> Plan:
            return sleeve(plan, end=it.end, conductor=it.conductor, sleeved=on)

        self._change("Sleeve" if on else "Take the sleeve off", edit)

    def _on_dabbed(self, on: bool) -> None:  # noqa: FBT001 - what the box says
        def edit(plan: Plan, it: Landing) -> Plan:
            return dab(plan, end=it.end, conductor=it.conductor, dabbed=on)

        self._change("Dab" if on else "Take the dab off", edit)

    def _change(self, words: str, edit: Callable[[Plan, Landing], Plan]) -> None:
        landings, names = self._landings, " and ".join(it.conductor for it in self._landings)
        together: Edit = partial(reduce, edit, landings)
        self._show_wrong(self._do(f"{words} {names} at {landings[0].end}", together))


def covers_said(workbench: Workbench, landings: Sequence[Landing]) -> tuple[str, str]:
    """Return the words on the sleeve and on the dab of a joint; empty where there is none."""
    first = landings[0]
    fit = fit_end(workbench.plan, workbench.wiring, first.end)
    if fit is None:
        return "", ""
    sleeves = sleeves_for(workbench.plan, fit)
    on, wanted = _use(sleeves.on, landings), _use(sleeves.sleeves, landings)
    said = size_words(on) if on else ""
    if wanted and not on:
        said = f"wanted: {size_words(wanted)}"
    dabs = [
        f"wanted towards {other}" for contact, other, _ in sleeves.dabs if contact == first.contact
    ]
    return said, "\n".join(dabs)


def _use(uses: Sequence[SleeveUse], landings: Sequence[Landing]) -> SleeveUse | None:
    """Return the sleeve of a joint: the conductor's own, or the one round all that is in it."""
    here = [use for use in uses if use.contact == landings[0].contact]
    names = {landing.conductor for landing in landings}
    own = [use for use in here if use.conductor in names]
    return next(iter([*own, *here]), None)
