"""A connector being drawn: half-made is allowed, and figures stay as they were typed."""

from collections.abc import Iterable
from pathlib import Path

from pydantic import Field

from planner.files.definitions import validated
from planner.files.side import mirrored
from planner.model.base import Line, Paragraph, Record
from planner.model.connector import (
    Barrel,
    Clamp,
    Connector,
    Contact,
    FigureBasis,
    FigureGroup,
    Shell,
    Side,
    Terminal,
)
from planner.model.source import Document, Retired
from planner.model.tracing import Tracing
from planner.problem import InputError, Problem

# A beginning that can be seen and drawn on; typical figures, from memory: to be measured.
FIRST_TERMINAL = Terminal(kind="cup", x_mm=0, y_mm=0, bore_mm=1.6, depth_mm=3.5, opening_deg=90)
FIRST_SHELL = Shell(bore_mm=14)
FIRST_CLAMP = Clamp(min_mm=3, max_mm=6.5)
FIRST_BARREL = Barrel(outside_mm=18, bore_mm=8, length_mm=45)
FIGURE_GROUPS: tuple[FigureGroup, ...] = (
    "numbering",
    "positions",
    "terminals",
    "shell",
    "clamp",
    "barrel",
)
_MEASURE = "typical, from memory: measure on the part in hand"


class ConnectorDraft(Record):
    """What has been said of a connector so far.

    Positions are mm, x right, y up, as looked at from `seen_from`: if that answer changes, what was
    typed stays, and means the other side.
    """

    id: Line = ""
    revision: int = Field(default=1, ge=1)
    title: Line = ""
    family: Line = ""
    gender: Line = ""
    size: Line = ""
    maker: Line = ""
    remarks: Paragraph = ""
    seen_from: Side = "unstated"
    mating: Line = "through"
    shell: Shell = FIRST_SHELL
    clamp: Clamp = FIRST_CLAMP
    barrel: Barrel = FIRST_BARREL
    contacts: tuple[Contact, ...] = ()
    basis: tuple[FigureBasis, ...] = tuple(
        FigureBasis(figures=group, kind="memory", reference=_MEASURE) for group in FIGURE_GROUPS
    )
    documents: tuple[Document, ...] = ()
    tracing: Tracing | None = None
    retired: Retired | None = None

    def contact(self, name: str) -> Contact | None:
        """Return a contact by id."""
        return next((it for it in self.contacts if it.id == name), None)


def drafted(connector: Connector) -> ConnectorDraft:
    """Begin with a connector that is there, to draw its next revision."""
    seen = mirrored(connector) if connector.drawn_from == "mating" else connector
    fields = {name: getattr(seen, name) for name in _SHARED}
    return ConnectorDraft(seen_from=connector.drawn_from, **fields)


_SHARED = (
    *("id", "revision", "title", "family", "gender", "size", "maker", "remarks", "mating"),
    *("shell", "clamp", "barrel", "contacts", "basis", "documents", "tracing", "retired"),
)


def family_as_known(typed: str, known: Iterable[str]) -> str:
    """Return a family as it is spelled already: `D-Sub` is dsub, so that the two are compared."""
    return next((it for it in known if _plain(it) == _plain(typed)), typed)


def _plain(family: str) -> str:
    return "".join(letter for letter in family.casefold() if letter.isalnum())


def finished(draft: ConnectorDraft) -> Connector:
    """Return the connector, solder side; InputError with everything that is still missing."""
    missing = tuple(_missing(draft))
    if missing:
        raise InputError(missing)
    body = {name: getattr(draft, name) for name in _SHARED} | {"drawn_from": draft.seen_from}
    record = validated(Connector, body, Path("the new connector"))
    return mirrored(record) if draft.seen_from == "mating" else record


def drawable(draft: ConnectorDraft) -> Connector | None:
    """Return what can be drawn of a draft, as it is looked at; None without any contact."""
    named = draft.evolve(id="new", title="new", family="new", gender="male", seen_from="solder")
    return finished(named.evolve(retired=None)) if draft.contacts else None


def _missing(draft: ConnectorDraft) -> Iterable[Problem]:
    if draft.seen_from == "unstated":
        yield Problem(
            "nobody has said from which side it is drawn",
            "Seen from",
            "Hold the part against the drawing and choose solder side or mating side.",
        )
    if not draft.contacts:
        yield Problem("there is no contact yet", "Contacts", "Place them by ring, rows or clicks.")
    for field, words in _WANTED:
        if not getattr(draft, field):
            yield Problem(f"the {words} is missing", words.capitalize(), f"Write the {words}.")


_WANTED = (("id", "short name"), ("title", "title"), ("family", "family"), ("gender", "gender"))
