"""A pinout being taken in for a known connector: half-made is allowed until it is saved."""

import re
from collections.abc import Iterable, Iterator, Mapping
from pathlib import Path

from pydantic import Field

from planner.files.definitions import validated
from planner.intake.other_side import mirrored_contacts
from planner.model.base import Line, Paragraph, Record
from planner.model.connector import Connector, Side
from planner.model.pinout import PinoutRecord
from planner.model.source import Confirmation, Document, Statement
from planner.problem import EditRefused, InputError, Problem

_NOT_IN_ID = re.compile(r"[^a-z0-9.]+")


class PinoutDraft(Record):
    """What has been said so far. `seen_from` is the first question: it is never guessed.

    `signals` name contacts as they are on the part, whatever side the drawing shows.
    """

    id: Line = ""
    revision: int = Field(default=1, ge=1)
    title: Line = ""
    connector: Line = ""
    fits_also: tuple[str, ...] = ()
    seen_from: Side = "unstated"
    use: Line = ""
    maker: Line = ""
    drive: Line = ""
    signals: dict[str, tuple[str, ...]] = Field(default_factory=dict)
    remarks: Paragraph = ""
    source_kind: Line = ""
    reference: Line = ""
    date: Line = ""
    recorded_by: Line = ""
    documents: tuple[Document, ...] = ()
    statements: tuple[Statement, ...] = ()
    confirmations: tuple[Confirmation, ...] = ()
    before: PinoutRecord | None = None  # what it is the next revision of

    @property
    def carries_another(self) -> bool:
        """Tell whether it says otherwise than the record that was confirmed."""
        return self.before is not None and dict(self.signals) != dict(self.before.signals)


def carries(draft: PinoutDraft, contact: str, signals: tuple[str, ...]) -> PinoutDraft:
    """Say which signals a contact carries; none takes the contact out."""
    kept = {name: it for name, it in draft.signals.items() if name != contact}
    return draft.evolve(signals=kept | ({contact: signals} if signals else {}))


def carried_signals(draft: PinoutDraft) -> Mapping[str, frozenset[str]]:
    """Return the signals by contact as sets."""
    return {name: frozenset(it) for name, it in draft.signals.items()}


def mates(connector: Connector, known: Iterable[Connector]) -> tuple[Connector, ...]:
    """Return the connectors that may share a record: one family, contacts of the same names."""
    return tuple(
        it
        for it in known
        if it.id != connector.id
        and it.family == connector.family
        and it.by_id.keys() == connector.by_id.keys()
    )


def fit_also(draft: PinoutDraft, connector: str, *, fits: bool) -> PinoutDraft:
    """Say that the record holds for another connector too, or not."""
    others = tuple(it for it in draft.fits_also if it != connector)
    return draft.evolve(fits_also=(*others, connector) if fits else others)


def from_the_other_side(draft: PinoutDraft, connector: Connector) -> PinoutDraft:
    """Move every signal to the contact at its mirror image: the drawing showed the other side."""
    partners = mirrored_contacts(connector)
    if partners is None:
        raise EditRefused(
            f"the contacts of {connector.title} have no mirror images among themselves",
            "Read the numbers moulded on the part, and write the signals anew.",
        )
    return draft.evolve(signals={partners[name]: it for name, it in draft.signals.items()})


def drafted(record: PinoutRecord, connector: Connector) -> PinoutDraft:
    """Begin with a record that is there, to write its next revision or one like it."""
    return PinoutDraft(
        id=record.id,
        revision=record.revision,
        title=record.title,
        connector=connector.id,
        fits_also=tuple(it for it in record.fits if it != connector.id),
        before=record,
        seen_from=connector.drawn_from,
        use=record.use,
        maker=record.maker,
        drive=record.drive,
        signals=dict(record.signals),
        remarks=record.remarks,
        source_kind=record.source.kind,
        reference=record.source.reference,
        date=record.source.date,
        recorded_by=record.source.recorded_by,
        documents=record.documents,
        statements=record.statements,
        confirmations=record.confirmations,
    )


def proposed_id(draft: PinoutDraft, taken: frozenset[str] = frozenset()) -> str:
    """Return a short name made of maker, connector and use that no other record has."""
    words = (draft.maker, draft.connector, "" if draft.maker else draft.use)
    stem = _NOT_IN_ID.sub("-", " ".join(filter(None, words)).casefold()).strip("-.")[:50]
    stem = stem or "pinout"
    free = (stem, *(f"{stem}-{at}" for at in range(2, len(taken) + 3)))
    return next(name for name in free if name not in taken)


def finished(draft: PinoutDraft, connector: Connector) -> PinoutRecord:
    """Return the record; InputError with everything that is still missing."""
    missing = tuple(_missing(draft, connector))
    if missing:
        raise InputError(missing)
    return validated(PinoutRecord, _body(draft, connector), Path("the new pinout record"))


def _body(draft: PinoutDraft, connector: Connector) -> dict[str, object]:
    return {
        "id": draft.id or proposed_id(draft),
        "revision": draft.revision,
        "title": draft.title or f"{draft.maker or draft.use}, {connector.title}",
        "fits": (connector.id, *(it for it in draft.fits_also if it != connector.id)),
        "use": draft.use,
        "maker": draft.maker,
        "drive": draft.drive,
        "signals": dict(draft.signals),
        "source": {
            "kind": draft.source_kind,
            "reference": draft.reference,
            "date": draft.date,
            "recorded_by": draft.recorded_by,
        },
        "remarks": draft.remarks,
        "documents": draft.documents,
        "statements": draft.statements,
        "confirmations": () if draft.carries_another else draft.confirmations,
    } | _kept(draft)


def _kept(draft: PinoutDraft) -> dict[str, object]:
    """Return what the next revision keeps though no field asks for it.

    A rung that was stated rather than earned holds for the same signals on the same word only.
    """
    before = draft.before
    if before is None:
        return {}
    same = not draft.carries_another and draft.source_kind == before.source.kind
    stated = not before.confirmations and same
    return {"retired": before.retired} | ({"trust": before.trust} if stated else {})


def _missing(draft: PinoutDraft, connector: Connector) -> Iterator[Problem]:
    if draft.seen_from == "unstated":
        yield Problem(
            "nobody has said from which side the drawing is seen",
            "Seen from",
            "Hold the part against it and choose solder side or mating side.",
        )
    if not draft.signals:
        yield Problem("no contact carries anything yet", "Signals", "Write a signal to a contact.")
    for name in draft.signals:
        if name not in connector.by_id:
            yield Problem(
                f"{connector.title} has no contact {name!r}", "Signals", "Take that line out."
            )
    for field, words in (
        ("use", "what it is used for"),
        ("drive", "how the equipment drives it"),
        ("source_kind", "on whose word it rests"),
    ):
        if not getattr(draft, field):
            yield Problem(f"nobody has said {words}", words.capitalize(), "Choose or write it.")
