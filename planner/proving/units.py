"""What is kept of one built unit: who proved it when, what was read, what was done about it."""

import datetime as dt
from collections.abc import Iterable
from typing import TYPE_CHECKING, Annotated, Literal

from pydantic import AfterValidator, Field, StringConstraints, model_validator

from planner.model.base import Ident, Line, Paragraph, Record
from planner.proving.methods import Method
from planner.proving.reading import Contact, Meter, Ohm, Readings

if TYPE_CHECKING:  # to load units, numpy need not be loaded
    from planner.proving.expected import Sweep
    from planner.proving.probing import IsolationPlan

UnitVerdict = Literal["passed", "failed", "unfinished"]
IsolationMethod = Literal[""] | Method
Tone = Literal["left", "right", "in-phase", "out-of-phase", "sweep", "microphone", "other"]
Heard = Literal["as-expected", "otherwise", "not-heard"]  # the last: silence where it must sound

# Every pair of a lead of 256 nets, as many as a connector has contacts, and some more.
MOST_READINGS = 40_000
MOST_ENTRIES = 500


def _moment(text: str) -> str:
    dt.datetime.fromisoformat(text)
    return text


Moment = Annotated[Line, AfterValidator(_moment)]  # ISO 8601, such as 2026-03-14T15:09:26+01:00
Digest = Annotated[str, StringConstraints(pattern=r"^[0-9a-f]{64}$")]  # SHA-256
Suffix = Annotated[str, StringConstraints(pattern=r"^(\.[a-z0-9]{1,8})?$")]


class Attachment(Record):
    """A photo or another file, found by what is in it and not by its name."""

    name: Line = Field(min_length=1)
    digest: Digest
    suffix: Suffix = ""
    size_bytes: int = Field(ge=0)

    @property
    def file_name(self) -> str:
        """The name of the copy that is kept: the digest, so that no name leads elsewhere."""
        return f"{self.digest}{self.suffix}"


class Rework(Record):
    """What was found to be wrong, and what was done about it before it was read again."""

    at: Moment
    who: Line = ""
    found: Paragraph
    done: Paragraph = ""


class Wiggle(Record):
    """What the meter did while the lead was flexed at one end."""

    end: Ident
    state: Literal["steady", "broken"]
    at: Moment
    note: Line = ""


class Listening(Record):
    """What one tone sounded like."""

    tone: Tone
    heard: Heard
    note: Line = ""


def broken_ends(wiggle: Iterable[Wiggle]) -> tuple[str, ...]:
    """Return the ends at which the contact broke when they were last bent."""
    last = {entry.end: entry.state for entry in wiggle}
    return tuple(end for end, state in last.items() if state == "broken")


def wrong_tones(listening: Iterable[Listening]) -> tuple[Tone, ...]:
    """Return the tones that were last heard otherwise than expected, or not at all."""
    last = {entry.tone: entry.heard for entry in listening}
    return tuple(tone for tone, heard in last.items() if heard != "as-expected")


class ExpectedPath(Record):
    """Two contacts that a sound unit joins, and the most that their path may show, ohm."""

    one: Contact
    other: Contact
    ohm: Ohm | None = None
    limit_ohm: Ohm
    rule: Line = ""
    estimated: bool = False


class Expected(Record):
    """What the unit was held against: every contact, and the paths that make the nets.

    It is kept with the readings, so that they are not judged by what the plan became later.
    """

    contacts: tuple[Contact, ...] = Field(default=(), max_length=MOST_READINGS)
    paths: tuple[ExpectedPath, ...] = Field(default=(), max_length=MOST_READINGS)


class StopAt(Record):
    """The widest gap that is measured at an end, mm."""

    end: Ident
    mm: float = Field(ge=0, le=1000)


class Asked(Record):
    """The pairs of a plan of isolation that stops before the last, and where it stops."""

    pairs: tuple[tuple[Contact, Contact], ...] = Field(default=(), max_length=MOST_READINGS)
    stop: tuple[StopAt, ...] = Field(default=(), max_length=MOST_ENTRIES)


class UnitRecord(Record):
    """The state of one unit at one time. A later record of its number takes its place.

    Without `asked` every two nets are to be read apart.
    """

    number: int = Field(ge=1, le=999_999)
    at: Moment
    who: Line = ""
    verdict: UnitVerdict
    plan_digest: Digest
    plan_revision: int = Field(ge=1, le=1_000_000_000)
    readings: Readings = Readings()
    expected: Expected = Expected()
    isolation: IsolationMethod = ""
    asked: Asked | None = None
    remarks: Paragraph = ""
    attachments: tuple[Attachment, ...] = Field(default=(), max_length=MOST_ENTRIES)
    rework: tuple[Rework, ...] = Field(default=(), max_length=MOST_ENTRIES)
    wiggle: tuple[Wiggle, ...] = Field(default=(), max_length=MOST_ENTRIES)
    listening: tuple[Listening, ...] = Field(default=(), max_length=MOST_ENTRIES)

    @model_validator(mode="after")
    def _is_not_too_much(self) -> "UnitRecord":
        if len(self.readings.readings) > MOST_READINGS:
            msg = f"a unit has at most {MOST_READINGS} readings"
            raise ValueError(msg)
        return self

    @property
    def meter(self) -> Meter:
        """The meter that it was read with."""
        return self.readings.meter


def now() -> str:
    """Return this moment as a record has it, to the second, with its zone."""
    return dt.datetime.now(dt.UTC).astimezone().isoformat(timespec="seconds")


def expected_of(sweep: "Sweep") -> Expected:
    """Return an expected sweep as a record keeps it."""
    paths = tuple(
        ExpectedPath(
            one=path.one,
            other=path.other,
            ohm=path.ohm,
            limit_ohm=path.limit_ohm,
            rule=path.rule,
            estimated=path.estimated,
        )
        for path in sweep.paths
    )
    return Expected(contacts=sweep.contacts, paths=paths)


def asked_of(isolation: "IsolationPlan") -> Asked | None:
    """Return a plan of isolation as a record keeps it: nothing where it asks for every pair."""
    stop = isolation.stop_after
    if stop is None:
        return None
    pairs = sorted((min(pair), max(pair)) for pair in isolation.pairs)
    lines = (StopAt(end=end, mm=mm) for end, mm in stop.mm_by_end.items())
    return Asked(pairs=tuple(pairs), stop=tuple(lines))
