"""A pinout record: which signal each contact of a connector carries, and on whose word."""

from typing import Literal

from pydantic import Field, model_validator

from planner.model.base import Ident, Line, Paragraph, Record
from planner.model.signals import Signal, channel_of, leg_of

Drive = Literal["load", "single-ended", "driven-balanced", "line"]
SourceKind = Literal["standard", "drawing", "letter", "measured", "practice", "hearsay", "memory"]
Trust = Literal["hearsay", "documented", "confirmed", "confirmed-by-two"]
TRUST_LADDER: tuple[Trust, ...] = ("hearsay", "documented", "confirmed", "confirmed-by-two")


class Source(Record):
    """Where a pinout came from. `practice` is common practice of the trade with no standard."""

    kind: SourceKind
    reference: Line = ""
    date: Line = ""
    recorded_by: Line = ""


class PinoutRecord(Record):
    """Signals by contact id, kept apart from the hardware: one plug, many pinouts.

    `drive` says what the equipment behind it does: `load` (a headphone, an input that drives
    nothing), `single-ended` (minus legs are the common ground), `driven-balanced` (minus legs are
    amplifier outputs), `line` (balanced line level).
    """

    id: Ident
    revision: int = Field(default=1, ge=1)
    title: Line = Field(min_length=1)
    fits: tuple[Ident, ...] = Field(min_length=1)
    use: Line = Field(min_length=1)
    maker: Line = ""
    drive: Drive
    signals: dict[Ident, tuple[Signal, ...]] = Field(min_length=1)
    source: Source
    trust: Trust = "documented"
    remarks: Paragraph = ""

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

    @property
    def confirmed(self) -> bool:
        """Tell whether the record may be relied on: a standard says so, or a part was measured."""
        if self.source.kind == "measured" or self.trust in {"confirmed", "confirmed-by-two"}:
            return True
        return self.source.kind == "standard" and self.trust != "hearsay"
