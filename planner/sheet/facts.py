"""What the sheet says about each end, gathered from the plan once."""

from dataclasses import dataclass, field, replace
from functools import cached_property

from planner.drawing.looks import PRINT, Look
from planner.dryfit.bodies import cut_mm, strip_mm
from planner.dryfit.cut_lengths import LEAD_STEP_MM, STRIP_STEP_MM
from planner.dryfit.fit import EndFit, fit_end
from planner.dryfit.shrinking import raised_mm
from planner.dryfit.sleeves import sleeves_on
from planner.model.cable import Core, Shield
from planner.model.codes import told_apart
from planner.model.connector import Connector, Contact
from planner.model.pinout import PinoutRecord
from planner.model.plan import Conductor, End, Plan
from planner.model.signals import signals_text
from planner.sheet.words import Words
from planner.wiring.graph import Wiring

# A tint that means nothing, in place of every colour.
PLAIN = replace(PRINT, cores=dict.fromkeys(PRINT.cores, (PRINT.jacket, PRINT.ink)))


@dataclass(frozen=True, slots=True)
class Flag:
    """How one conductor is told apart: code, colours (none for a shield), words, sleeve.

    `shield` is what a shield is made of, empty for a core. `cut_mm` from the jacket, `bare_mm` of
    it without insulation, both as they are measured on the bench; `sleeve_mm` long: 0 if not known.
    """

    conductor: str
    code: str
    colours: tuple[str, ...]
    words: str
    width_mm: float
    shield: str = ""
    sleeved: bool = False
    cut_mm: float = 0.0
    bare_mm: float = 0.0
    sleeve_mm: float = 0.0
    dabbed: bool = False
    strands: int = 0


@dataclass(frozen=True, slots=True)
class Joint:
    """One contact of an end: what it carries, and what lands on it."""

    contact: Contact
    carries: str
    flags: tuple[Flag, ...]
    number: int = 0  # in the order of soldering, from 1; 0 where nothing is soldered
    instead: str = ""  # what stands beside the face instead of the flags


@dataclass(frozen=True)
class EndFacts:
    """One end as the sheet shows it.

    `ending` are shields that land at another end and stop at this one; `loose` is what is left.
    `plain` draws the leads without their colours, where one picture stands for several ends;
    `along` turns a wide connector upright.
    """

    end: End
    connector: Connector | None
    pinout: PinoutRecord | None
    joints: tuple[Joint, ...]
    capped: tuple[Flag, ...]
    loose: tuple[Flag, ...]
    ending: tuple[Flag, ...]
    links: tuple[str, ...]
    fit: EndFit | None = None
    jacket_mm: float = 0.0
    words: Words = field(default_factory=Words)
    plain: bool = False
    along: bool = False

    @property
    def title(self) -> str:
        """The connector's title, or that there is none yet."""
        return self.connector.title if self.connector else self.words("end.no_connector")

    @property
    def subtitle(self) -> str:
        """The end's name, its channel, and its pinout's title."""
        name = self.end.name or self.words("end.end", end=self.end.id)
        said = [name[0].upper() + name[1:]]
        if self.end.channel:
            said.append(self.words("end.channel", channel=self.end.channel))
        said.append(self.pinout.title if self.pinout else self.words("end.no_pinout"))
        return ", ".join(said)

    @cached_property
    def turn_deg(self) -> float:
        """How far the face is drawn turned: a D is drawn level, or upright."""
        if self.connector is not None and self.connector.shell.shape == "d":
            return 180.0 * (round(self.end.turn_deg / 180) % 2) + (90.0 if self.along else 0.0)
        return self.end.turn_deg

    @property
    def look(self) -> Look:
        """What the leads are drawn in: their colours, or none of them."""
        return PLAIN if self.plain else PRINT

    @property
    def view_deg(self) -> float:
        """How far plug and cable together are turned on the page."""
        return self.turn_deg - self.end.turn_deg


def end_facts(plan: Plan, words: Words | None = None) -> tuple[EndFacts, ...]:
    """Gather the facts of every end, in the plan's order; `words` are English if not given."""
    wiring = Wiring(plan)
    return tuple(_facts(plan, wiring, end, words or Words()) for end in plan.ends)


def _facts(plan: Plan, wiring: Wiring, end: End, words: Words) -> EndFacts:
    fit = fit_end(plan, wiring, end.id)
    flags = _fitted(_flags(plan, end.id), plan, fit)
    order = {contact: place for place, contact in enumerate(fit.order if fit else (), start=1)}
    landed: dict[str, list[Flag]] = {}
    for landing in plan.landings:
        if landing.end == end.id and landing.conductor in flags:
            flag = flags[landing.conductor]
            flag = replace(flag, sleeved=landing.sleeved, dabbed=landing.dabbed)
            landed.setdefault(landing.contact, []).append(flag)
    connector = plan.connector_of(end.id)
    done = {flag.conductor for group in landed.values() for flag in group}
    spare = {cap.conductor for cap in plan.caps if cap.end == end.id} - done
    elsewhere = {landing.conductor for landing in plan.landings if landing.end != end.id}
    left = [flag for name, flag in flags.items() if name not in spare | done]
    stopping = [flag for flag in left if not flag.colours and flag.conductor in elsewhere]
    return EndFacts(
        end=end,
        connector=connector,
        pinout=plan.pinout_of(end.id),
        joints=tuple(
            Joint(
                contact,
                signals_text(wiring.signals_at(end.id, contact.id)),
                tuple(landed.get(contact.id, ())),
                order.get(contact.id, 0),
            )
            for contact in (connector.contacts if connector else ())
        ),
        capped=tuple(flag for name, flag in flags.items() if name in spare),
        loose=tuple(flag for flag in left if flag not in stopping),
        ending=tuple(stopping),
        links=tuple(" + ".join(link.contacts) for link in plan.links if link.end == end.id),
        fit=fit,
        jacket_mm=_jacket_mm(plan, end.id),
        words=words,
    )


def _jacket_mm(plan: Plan, end: str) -> float:
    """Return how thick the jacket is that is cut at an end; 0 where bare cores come to it."""
    section = plan.section_at.get(end)
    cable = plan.cable_of(section.id) if section is not None and not section.fan_of else None
    return cable.jacket_mm if cable is not None else 0.0


def _fitted(flags: dict[str, Flag], plan: Plan, fit: EndFit | None) -> dict[str, Flag]:
    """Give the flags the lengths that the dry fit found."""
    if fit is None:
        return flags
    lengths = {use.conductor: use.length_mm for use in sleeves_on(fit, plan.workmanship)}
    found = dict(flags)
    for lead in fit.leads:
        name = lead.landing.conductor
        if name in found:
            found[name] = replace(
                found[name],
                cut_mm=raised_mm(cut_mm(lead), LEAD_STEP_MM),
                bare_mm=raised_mm(strip_mm(lead), STRIP_STEP_MM),
                sleeve_mm=lengths.get(name, 0.0),
            )
    return found


def _flags(plan: Plan, end: str) -> dict[str, Flag]:
    """Return the flags of the conductors that come out of the cable at an end, in lay order."""
    found: list[tuple[Conductor, Core | Shield]] = []
    for conductor, run in plan.conductors_at.get(end, ()):
        record = plan.part_of(run)
        if record is not None:
            found.append((conductor, record))
    codes = told_apart([record for _, record in found], shield="SHIELD")
    return {
        conductor.id: _flag(conductor.id, record, code)
        for (conductor, record), code in zip(found, codes, strict=True)
    }


def _flag(name: str, record: Core | Shield, code: str) -> Flag:
    if isinstance(record, Shield):
        words = record.kind if not record.around else f"{record.kind} of {' '.join(record.around)}"
        return Flag(name, code, (), words, record.tail_mm, record.kind)
    words = record.colour_words
    if code != record.code:
        words = f"{words}, {record.group or record.id}"
    width = record.insulation_mm
    return Flag(name, code, record.colours, words, width, strands=record.strands)
