"""A pinout record: which signal each contact of a connector carries, and on whose word."""

from collections.abc import Iterator
from typing import Literal

from pydantic import Field, model_validator

from planner.model.base import Ident, Line, Paragraph, Record, Revision
from planner.model.signals import Signal, channel_of, leg_of
from planner.model.source import (
    MOST_DOCUMENTS,
    TRUST_LADDER,
    Confirmation,
    Document,
    Retired,
    Source,
    Statement,
    Trust,
    earned_trust,
)

Drive = Literal["load", "single-ended", "driven-balanced", "line"]


class PinoutRecord(Record):
    """Signals by contact id, kept apart from the hardware: one plug, many pinouts.

    `drive` says what the equipment behind it does: `load` (a headphone, an input that drives
    nothing), `single-ended` (minus legs are the common ground), `driven-balanced` (minus legs are
    amplifier outputs), `line` (balanced line level).

    `trust` follows from the source and the confirmations. `hearsay` can be stated of a record that
    nobody confirmed; a higher rung can be stated only where no confirmation is named, as files
    from before confirmations were kept do.
    """

    id: Ident
    revision: Revision = 1
    title: Line = Field(min_length=1)
    fits: tuple[Ident, ...] = Field(min_length=1)
    use: Line = Field(min_length=1)
    maker: Line = ""
    drive: Drive
    signals: dict[Ident, tuple[Signal, ...]] = Field(min_length=1)
    source: Source
    trust: Trust = "documented"
    remarks: Paragraph = ""
    documents: tuple[Document, ...] = Field(default=(), max_length=MOST_DOCUMENTS)
    statements: tuple[Statement, ...] = ()
    confirmations: tuple[Confirmation, ...] = ()
    retired: Retired | None = None

    @model_validator(mode="after")
    def _bound_or_not(self) -> "PinoutRecord":
        legs = [signal for carried in self.signals.values() for signal in carried if leg_of(signal)]
        if len({channel_of(signal) == "" for signal in legs}) > 1:
            msg = "a record either names its channels (L+, 1-) or leaves all open (+, -), not both"
            raise ValueError(msg)
        return self

    @property
    def one_channel(self) -> bool:
        """Tell whether the end that uses this record must bind a channel."""
        return any(signal in {"+", "-"} for carried in self.signals.values() for signal in carried)

    @model_validator(mode="after")
    def _hangs_together(self) -> "PinoutRecord":
        for problem in self._loose_names():
            raise ValueError(problem)
        return self

    def _loose_names(self) -> Iterator[str]:
        digests = [document.digest for document in self.documents]
        if len(set(digests)) < len(digests):
            yield "one document stands twice: keep one of the two"
        for statement in self.statements:
            for contact in statement.contacts:
                if contact not in self.signals:
                    yield f"a statement names {contact!r}: name a contact that signals has"
            if statement.document and statement.document not in digests:
                yield "a statement names a document that is not here: add it to documents"

    @model_validator(mode="after")
    def _trust_follows(self) -> "PinoutRecord":
        earned = earned_trust(self.source, self.statements, self.confirmations)
        above = TRUST_LADDER.index(self.trust) > TRUST_LADDER.index(earned)
        if above and self.confirmations:
            msg = f"{self.trust} is more than the confirmations give: name who else confirmed it"
            raise ValueError(msg)
        stated = self.trust in ("confirmed", "confirmed-by-two") and above
        if not stated and (self.trust != "hearsay" or self.confirmations):
            # Frozen for everyone else; the rung is part of making the record.
            object.__setattr__(self, "trust", earned)
        return self

    @property
    def confirmed(self) -> bool:
        """Tell whether the record may be relied on: a standard says so, or a part was measured."""
        if self.retired is not None:
            return False
        if self.trust in {"confirmed", "confirmed-by-two"}:
            return True
        return self.source.kind == "standard" and self.trust != "hearsay"
