"""The words and small facts of a plan that several panels say."""

from collections.abc import Iterable, Sequence

from planner.checks.finding import Finding
from planner.drawing.marks import MarkKind
from planner.model.cable import Core, Shield
from planner.model.pinout import PinoutRecord
from planner.model.place import Place
from planner.model.plan import Conductor, Plan
from planner.model.signals import signals_text
from planner.wiring.graph import Wiring
from planner.wiring.roles import role_of
from planner.wording import listed

TRUST_WORDS = {
    "hearsay": "hearsay only",
    "documented": "documented, not confirmed on a part",
    "confirmed": "confirmed on the part",
    "confirmed-by-two": "confirmed by two people",
}
SOURCE_WORDS = {
    "standard": "from a standard",
    "drawing": "from a drawing",
    "letter": "from a letter",
    "measured": "measured on a part",
    "practice": "common practice, no standard",
    "hearsay": "from hearsay",
    "memory": "from memory",
}
ROLE_WORDS = (
    ("auto", "as the pinouts say"),
    ("source", "source"),
    ("load", "load"),
)
POLICY_WORDS = (
    ("", "not stated"),
    ("source-end", "source end only"),
    ("load-end", "load end only"),
    ("both-ends", "both ends"),
    ("isolated", "no end (isolated)"),
)
CHANNEL_WORDS = (
    ("", "none"),
    ("L", "L, left"),
    ("R", "R, right"),
    *((number, f"channel {number}") for number in "12345678"),
    ("mic", "microphone"),
)
METAL_WORDS = {"copper": "copper", "tinned": "tinned copper", "silver": "silver"}


def distinct(words: Iterable[str]) -> tuple[str, ...]:
    """Return the words, each once, in their order, without empty ones."""
    return tuple(dict.fromkeys(word for word in words if word))


def end_title(plan: Plan, end: str) -> str:
    """Return what an end is called: its name, else its connector's title."""
    record = plan.end_by_id.get(end)
    if record is None:
        return ""
    connector = plan.connector_of(end)
    return record.name or (connector.title if connector else "nothing chosen yet")


def contact_words(plan: Plan, end: str, contact: str) -> str:
    """Return a contact as spoken: `ring 1`; its id where nothing is known of it."""
    connector = plan.connector_of(end) if end in plan.end_by_id else None
    known = connector.by_id.get(contact) if connector else None
    return known.spoken if known else contact


def wire_at(plan: Plan, conductor: Conductor, end: str = "") -> Core | Shield | None:
    """Return the core or shield that a conductor is at an end, else in its first run."""
    section = plan.section_at.get(end)
    runs = [run for run in conductor.runs if section and run.section == section.id]
    return plan.part_of((runs or list(conductor.runs))[0])


def wire_code(plan: Plan, conductor: Conductor, end: str = "") -> str:
    """Return the letter code that marks a conductor: `WHRD`, or `SH` for a shield."""
    wire = wire_at(plan, conductor, end)
    if isinstance(wire, Core):
        return wire.code
    return "SH" if conductor.kind == "shield" else conductor.id


def wire_words(plan: Plan, conductor: Conductor, end: str = "") -> str:
    """Return a conductor in words: `white, red stripe`, or `braid`."""
    wire = wire_at(plan, conductor, end)
    if isinstance(wire, Core):
        return ", ".join(filter(None, (wire.colour_words, wire.group)))
    return wire.kind if wire is not None else conductor.kind


def carried(plan: Plan, wiring: Wiring, conductor: str) -> str:
    """Return the signals that a conductor brings from the source (else from its first landing)."""
    landed = [landing for landing in plan.landings if landing.conductor == conductor]
    landed.sort(key=lambda landing: role_of(plan, landing.end) != "source")
    for landing in landed:
        signals = wiring.signals_at(landing.end, landing.contact)
        if signals:
            return signals_text(signals)
    return ""


def places_text(plan: Plan, places: Sequence[Place]) -> str:
    """Say where: `R: tip and sleeve`, `BU at A`, `L and R`."""
    said = [(place.end, _at_end(plan, place)) for place in places]
    alike: dict[tuple[str, ...], list[str]] = {}
    for end in distinct(end for end, _ in said):
        words = distinct(word for other, word in said if other == end)
        alike.setdefault(words, []).append(end)
    shown = [
        f"{listed(ends)}: {listed(_few(words))}" if words else listed(ends)
        for words, ends in alike.items()
    ]
    loose = distinct(word for end, word in said if not end)
    return "; ".join((*shown, *((listed(loose),) if loose else ())))


def _few(words: Sequence[str]) -> Sequence[str]:
    """Cut a long list short: `a, b, c and 9 more`."""
    return words if len(words) <= 6 else (*words[:4], f"{len(words) - 4} more")


def _part_words(plan: Plan, part: str) -> str:
    """Return a part by its title, found by the id of its use or its own."""
    own = next((use.part for use in plan.parts if use.id == part), part)
    return next((it.title for it in plan.definitions.parts if it.id == own), part)


def _at_end(plan: Plan, place: Place) -> str:
    if place.contact:
        return contact_words(plan, place.end, place.contact)
    conductor = plan.conductor_by_id.get(place.conductor)
    if conductor is not None:
        return wire_code(plan, conductor, place.end)
    return place.conductor or _part_words(plan, place.part)


def worst_at(findings: Iterable[Finding], end: str, conductor: str, contact: str) -> Finding | None:
    """Return the heaviest stop or caution that names this landing, or None."""
    for finding in findings:
        if finding.unfinished or finding.weight == "note":
            continue
        for place in finding.where:
            if place.end == end and (
                (contact and place.contact == contact)
                or (place.conductor == conductor and not place.contact)
            ):
                return finding
    return None


def trust_mark(pinout: PinoutRecord) -> MarkKind:
    """Return the mark of how far a pinout may be relied on."""
    return "tick" if pinout.confirmed else "caution"
