"""What one end is drawn from, gathered from the plan; equal facts give an equal drawing."""

import math
from dataclasses import dataclass

from planner.model.cable import Core, Shield
from planner.model.connector import Connector
from planner.model.pinout import PinoutRecord
from planner.model.plan import Plan, Section
from planner.model.signals import bind, signals_text

# Smallest terminal at 100 %, and the least and most that a face may measure, in px.
TERMINAL_PX = 27.0
FACE_LEAST_PX, FACE_MOST_PX = 150.0, 520.0
SCALE_UNKNOWN = 12.0

_OF_SHIELD = {"shield": frozenset({"shield"})}
_SOURCE_WORDS = {
    "standard": "after the standard",
    "drawing": "from a drawing",
    "letter": "from a letter",
    "measured": "measured on the part",
    "practice": "common practice",
    "hearsay": "hearsay",
    "memory": "from memory",
}


# A connector, its scale, and how far it is turned.
Shows = tuple[Connector | None, float, float]


@dataclass(frozen=True)
class CoreFact:
    """One conductor at an end: what it is made of, what it carries, where it lies."""

    conductor: str
    material: Core | Shield
    carried: str
    contact: str = ""
    wanted: str = ""
    capped: bool = False

    @property
    def is_shield(self) -> bool:
        """Tell whether this is a shield's tail."""
        return isinstance(self.material, Shield)

    @property
    def code(self) -> str:
        """The letter code on the plate."""
        return "SH" if isinstance(self.material, Shield) else self.material.code


@dataclass(frozen=True)
class EndFacts:
    """One end. `facing` is 1 where the cable leaves to the right, -1 to the left.

    `shown_turn_deg` is how far the face is turned on the bench: a long D stands upright, so that
    its cores fan out in order beside it.
    """

    end: str
    name: str
    facing: int
    scale: float
    turn_deg: float
    shown_turn_deg: float
    connector: Connector | None
    pinout: PinoutRecord | None
    signals: tuple[tuple[str, str], ...]
    cores: tuple[CoreFact, ...]
    jacket_mm: float
    braided: bool
    has_cable: bool

    @property
    def shows(self) -> Shows:
        """What the face's own parts are drawn from, the landings apart."""
        return (self.connector, self.scale, self.shown_turn_deg)

    @property
    def part(self) -> str:
        """The connector's title, or nothing yet."""
        return self.connector.title if self.connector else ""

    @property
    def title(self) -> str:
        """What hardware it is and what the end is called: `Slim 3.5, left cup`."""
        return ", ".join(filter(None, (self.part, self.name))) or "no connector yet"

    @property
    def source_words(self) -> str:
        """Where the pinout came from, as the line under the title says it."""
        if self.connector is None:
            return "choose one from the shelf"
        if self.pinout is None:
            return "no pinout yet"
        words = _SOURCE_WORDS[self.pinout.source.kind]
        if self.pinout.trust.startswith("confirmed") and self.pinout.source.kind != "measured":
            words += ", confirmed on the part"
        return f"{self.pinout.title}, {words}"


def terminal_scale(connector: Connector | None) -> float:
    """Return px per mm that makes the smallest terminal about 27 px, kept to a sane face."""
    if connector is None:
        return SCALE_UNKNOWN
    wanted = TERMINAL_PX / min(contact.terminal.across_mm for contact in connector.contacts)
    shell = connector.shell
    across = max(shell.bore_mm if shell.shape == "round" else 0.0, shell.width_mm, shell.height_mm)
    return min(max(wanted, FACE_LEAST_PX / across), FACE_MOST_PX / across)


def lies_wide(connector: Connector | None, turn_deg: float) -> bool:
    """Tell whether a connector's face is much wider than high as it is turned."""
    if connector is None or connector.shell.shape != "d":
        return False
    level = abs(math.cos(math.radians(turn_deg))) > 0.7
    return level and connector.shell.width_mm > 1.5 * connector.shell.height_mm


def signals_of(plan: Plan, end: str) -> dict[str, frozenset[str]]:
    """Return the bound signals of each contact at an end."""
    pinout, channel = plan.pinout_of(end), plan.end_by_id[end].channel
    if pinout is None:
        return {}
    return {contact: bind(signals, channel) for contact, signals in pinout.signals.items()}


def carried_signals(plan: Plan, sources: frozenset[str]) -> dict[str, frozenset[str]]:
    """Return what each conductor brings: from a source end, else from wherever it is landed."""
    signals = {end.id: signals_of(plan, end.id) for end in plan.ends}
    brought: dict[str, frozenset[str]] = {}
    met: dict[str, frozenset[str]] = {}
    for landing in plan.landings:
        here = signals.get(landing.end, {}).get(landing.contact, frozenset())
        heap = brought if landing.end in sources else met
        heap[landing.conductor] = heap.get(landing.conductor, frozenset()) | here
    return met | brought


def _wanted(
    signals: dict[str, frozenset[str]], carried: frozenset[str], taken: frozenset[str]
) -> str:
    """Return a contact that has what a core brings: a free one before one that is taken."""
    fitting = [contact for contact, here in signals.items() if carried & here]
    return next((contact for contact in fitting if contact not in taken), (fitting or [""])[0])


def cores_of(plan: Plan, end: str, carried: dict[str, frozenset[str]]) -> tuple[CoreFact, ...]:
    """Return the conductors that come out of the cable at an end."""
    signals = signals_of(plan, end)
    capped = {cap.conductor for cap in plan.caps if cap.end == end}
    taken = frozenset(landing.contact for landing in plan.landings if landing.end == end)
    found = []
    for conductor, run in plan.conductors_at.get(end, ()):
        cable = plan.cable_of(run.section)
        material = cable.part(run.core) if cable else None
        if material is None:
            continue
        landing = plan.landing_at.get((end, conductor.id))
        brings = carried.get(conductor.id, frozenset())
        found.append(
            CoreFact(
                conductor=conductor.id,
                material=material,
                carried="" if isinstance(material, Shield) else signals_text(brings),
                contact=landing.contact if landing else "",
                wanted=_wanted(
                    signals, brings or _OF_SHIELD.get(conductor.kind, frozenset()), taken
                ),
                capped=conductor.id in capped,
            )
        )
    return tuple(found)


def jacket_mm(plan: Plan, section: Section | None, cores: tuple[CoreFact, ...]) -> float:
    """Return the jacket's diameter; for a fanned-out leg, that of a tube round its cores."""
    cable = plan.cable_of(section.id) if section else None
    if cable is None:
        return 4.0
    if section is not None and not section.fan_of:
        return cable.jacket_mm
    sizes = [core.material.insulation_mm for core in cores if isinstance(core.material, Core)]
    return max(1.5, 0.7 * sum(sizes) + 1.0) if len(sizes) > 2 else sum(sizes) + 1.0


def facts_of(
    plan: Plan,
    end: str,
    *,
    facing: int,
    scale: float,
    carried: dict[str, frozenset[str]],
) -> EndFacts:
    """Gather what one end is drawn from."""
    record, connector = plan.end_by_id[end], plan.connector_of(end)
    section = plan.section_at.get(end)
    cores = cores_of(plan, end, carried)
    return EndFacts(
        end=end,
        name=record.name,
        facing=facing,
        scale=scale,
        turn_deg=record.turn_deg,
        shown_turn_deg=record.turn_deg + (90.0 if lies_wide(connector, record.turn_deg) else 0.0),
        connector=connector,
        pinout=plan.pinout_of(end),
        signals=tuple(
            (contact, signals_text(here)) for contact, here in signals_of(plan, end).items()
        ),
        cores=cores,
        jacket_mm=jacket_mm(plan, section, cores),
        braided=any(core.is_shield for core in cores),
        has_cable=section is not None and plan.cable_of(section.id) is not None,
    )
