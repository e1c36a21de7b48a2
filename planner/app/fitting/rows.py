"""The joints of an end in the order of soldering: what each row of the list says."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from planner.app.fitting.words import room_words
from planner.app.panels.words import contact_words, wire_code
from planner.model.signals import signals_text

if TYPE_CHECKING:
    from planner.app.workbench import Workbench
    from planner.dryfit.access import Access
    from planner.dryfit.fit import EndFit
    from planner.model.cable import Core, Shield


@dataclass(frozen=True)
class JointRow:
    """One joint: its number, contact, cores, how much room the iron has, whether it is sleeved."""

    number: int
    contact: str
    spoken: str
    signal: str
    codes: tuple[str, ...]
    parts: "tuple[Core | Shield, ...]"
    margin_mm: float
    blocker: str
    sleeved: bool
    dabbed: bool

    @property
    def hidden(self) -> bool:
        """Tell whether the iron does not reach the joint."""
        return self.margin_mm < 0

    @property
    def said(self) -> str:
        """The row as it is read aloud."""
        reach = "the iron does not reach it" if self.hidden else "room for the iron"
        cover = "sleeved" if self.sleeved else "no sleeve"
        who = " and ".join(self.codes)
        return (
            f"{self.number}, {self.spoken}, {self.signal or 'no signal'}, {who}, "
            f"{reach} {room_words(self.margin_mm)} mm, {cover}"
        )


def joint_rows(
    workbench: "Workbench", fit: "EndFit | None", ways_in: Sequence["Access"]
) -> tuple[JointRow, ...]:
    """Return the rows of an end's joints, in the order of soldering."""
    if fit is None:
        return ()
    plan, end = workbench.plan, fit.end
    found = []
    for number, access in enumerate(ways_in, start=1):
        contact = access.contact
        leads = [lead for lead in fit.leads if lead.landing.contact == contact]
        conductors = [plan.conductor_by_id[lead.landing.conductor] for lead in leads]
        found.append(
            JointRow(
                number,
                contact,
                contact_words(plan, end, contact),
                signals_text(workbench.wiring.signals_at(end, contact)),
                tuple(wire_code(plan, conductor, end) for conductor in conductors),
                tuple(lead.part for lead in leads),
                access.margin_mm,
                access.blocker,
                sleeved=any(lead.landing.sleeved for lead in leads),
                dabbed=any(lead.landing.dabbed for lead in leads),
            )
        )
    return tuple(found)
