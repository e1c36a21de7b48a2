"""A build plan: a tree of cable sections with ends at its leaves and splits inside.

Conductors run through the tree; landings put them on contacts at the ends. A plan carries a copy of
every definition that it uses, so it opens and checks anywhere.
"""

from functools import cached_property
from typing import Literal

from pydantic import Field

from planner.model.base import Ident, Line, Paragraph, Record, Revision
from planner.model.cable import Cable, Core, Shield
from planner.model.connector import Connector
from planner.model.part import Part
from planner.model.pinout import PinoutRecord
from planner.model.workmanship import Assumed, Workmanship

ShieldPolicy = Literal["both-ends", "source-end", "load-end", "isolated"]
Role = Literal["auto", "source", "load"]
Channel = Literal["", "L", "R", "1", "2", "3", "4", "5", "6", "7", "8", "mic"]


class End(Record):
    """One terminated end. `channel` binds a one-channel pinout; `turn_deg` turns the plug.

    Angles are counter-clockwise seen from the solder side. `room_mm` is how far the jacket's cut
    end stands above the highest terminal; 0 leaves it to the dry fit.
    """

    id: Ident
    name: Line = ""
    connector: str = ""
    pinout: str = ""
    channel: Channel = ""
    role: Role = "auto"
    turn_deg: float = Field(default=0.0, ge=-360, le=360)
    room_mm: float = Field(default=0.0, ge=0, le=200)
    solder_order: tuple[Ident, ...] = ()


class Split(Record):
    """An inner node of the tree, where sections part."""

    id: Ident
    name: Line = ""


class Section(Record):
    """A length of cable between two nodes.

    `fan_of` names the section whose cores go on here out of their jacket; then `cable` stays empty.
    """

    id: Ident
    near: Ident
    far: Ident
    cable: str = ""
    fan_of: str = ""
    length_mm: float = Field(gt=0, le=1_000_000)
    shield_policy: ShieldPolicy | None = None


class Run(Record):
    """One core or shield of the cable in one section."""

    section: Ident
    core: Ident


class Conductor(Record):
    """What is one metal from end to end: runs that meet at splits are joined there."""

    id: Ident
    kind: Literal["core", "shield"] = "core"
    runs: tuple[Run, ...] = Field(min_length=1)


class Landing(Record):
    """A conductor put on a contact at an end.

    `sleeved` where an insulating sleeve covers the joint, `dabbed` where a dab of insulating
    compound does.
    """

    end: Ident
    conductor: Ident
    contact: Ident
    sleeved: bool = False
    dabbed: bool = False


class Cap(Record):
    """A conductor that is spare at an end: cut back and capped."""

    end: Ident
    conductor: Ident


class Link(Record):
    """A deliberate join of contacts inside an end (a jumper)."""

    end: Ident
    contacts: tuple[Ident, ...] = Field(min_length=2)


class PartUse(Record):
    """A part round the cable next to a node (end or split), threaded from the end `comes_from`.

    `after_joint` says it is planned to come on when that end is already soldered. `section` names
    the section at a split that it rests round; empty: the last on the way from `comes_from`.
    """

    id: Ident
    part: Ident
    at: Ident
    comes_from: Ident
    after_joint: bool = False
    section: Line = ""


class Acceptance(Record):
    """A caution accepted with a written reason. `places` are the keys of the finding's places."""

    code: Line
    places: tuple[Line, ...] = ()
    reason: Line = Field(min_length=1)
    by: Line = ""


class Definitions(Record):
    """The copies that a plan carries."""

    connectors: tuple[Connector, ...] = ()
    pinouts: tuple[PinoutRecord, ...] = ()
    cables: tuple[Cable, ...] = ()
    parts: tuple[Part, ...] = ()


class Plan(Record):
    """The document: one lead to be built."""

    title: Line = ""
    order: Line = ""
    revision: Revision = 1
    remarks: Paragraph = ""
    ends: tuple[End, ...] = ()
    splits: tuple[Split, ...] = ()
    sections: tuple[Section, ...] = ()
    conductors: tuple[Conductor, ...] = ()
    landings: tuple[Landing, ...] = ()
    caps: tuple[Cap, ...] = ()
    links: tuple[Link, ...] = ()
    parts: tuple[PartUse, ...] = ()
    acceptances: tuple[Acceptance, ...] = ()
    step_order: tuple[Line, ...] = ()
    workmanship: Workmanship = Workmanship()
    assumed: Assumed = Assumed()
    definitions: Definitions = Definitions()

    @cached_property
    def end_by_id(self) -> dict[str, End]:
        """Ends by id."""
        return {end.id: end for end in self.ends}

    @cached_property
    def section_by_id(self) -> dict[str, Section]:
        """Sections by id."""
        return {section.id: section for section in self.sections}

    @cached_property
    def conductor_by_id(self) -> dict[str, Conductor]:
        """Conductors by id."""
        return {conductor.id: conductor for conductor in self.conductors}

    @cached_property
    def landing_at(self) -> dict[tuple[str, str], Landing]:
        """Landings by (end, conductor): a conductor lands on one contact of an end."""
        return {(landing.end, landing.conductor): landing for landing in self.landings}

    @cached_property
    def _connectors(self) -> dict[str, Connector]:
        return {record.id: record for record in self.definitions.connectors}

    @cached_property
    def _pinouts(self) -> dict[str, PinoutRecord]:
        return {record.id: record for record in self.definitions.pinouts}

    @cached_property
    def _cables(self) -> dict[str, Cable]:
        return {record.id: record for record in self.definitions.cables}

    def connector_of(self, end: str) -> Connector | None:
        """Return the hardware at an end, or None while it is not chosen."""
        return self._connectors.get(self.end_by_id[end].connector)

    def pinout_of(self, end: str) -> PinoutRecord | None:
        """Return the pinout record at an end, or None while it is not chosen."""
        return self._pinouts.get(self.end_by_id[end].pinout)

    def cable_of(self, section: str) -> Cable | None:
        """Return the cable of a section, following `fan_of`, or None while it is not chosen."""
        record = self.section_by_id[section]
        seen = {record.id}
        while record.fan_of and record.fan_of in self.section_by_id and record.fan_of not in seen:
            record = self.section_by_id[record.fan_of]
            seen.add(record.id)
        return self._cables.get(record.cable)

    def part_of(self, run: Run) -> Core | Shield | None:
        """Return the core or shield of a run; None while its section or cable is not known."""
        cable = self.cable_of(run.section) if run.section in self.section_by_id else None
        return cable.part(run.core) if cable is not None else None

    @cached_property
    def section_at(self) -> dict[str, Section]:
        """The one section that reaches each end."""
        touching = {}
        for section in self.sections:
            touching[section.near] = section
            touching[section.far] = section
        return {end.id: touching[end.id] for end in self.ends if end.id in touching}

    @cached_property
    def conductors_at(self) -> dict[str, tuple[tuple[Conductor, Run], ...]]:
        """For each end, the conductors that come out of the cable there, with their run there."""
        ends_of: dict[str, list[str]] = {}
        for end, section in self.section_at.items():
            ends_of.setdefault(section.id, []).append(end)
        found: dict[str, list[tuple[Conductor, Run]]] = {end.id: [] for end in self.ends}
        for conductor in self.conductors:
            for run in conductor.runs:
                for end in ends_of.get(run.section, ()):
                    found[end].append((conductor, run))
        return {end: tuple(pairs) for end, pairs in found.items()}
