"""What the pages of one unit are made from: its record, judged, and the plan it was built to."""

import datetime as dt
from dataclasses import dataclass
from functools import cached_property

from planner.proving.judging import Judgement, Judging
from planner.proving.units import UnitRecord
from planner.sheet.leaf import Making
from planner.sheet.words import Words


@dataclass(frozen=True)
class Case:
    """A unit's record with its earlier ones.

    `spoilt` are the digests of attachments whose copies are gone or changed.
    """

    making: Making
    record: UnitRecord
    earlier: tuple[UnitRecord, ...] = ()
    spoilt: frozenset[str] = frozenset()

    @property
    def words(self) -> Words:
        """The words of the sheet."""
        return self.making.words

    @cached_property
    def _judging(self) -> Judging:
        return Judging(self.making.plan)

    @cached_property
    def stale(self) -> bool:
        """Whether the plan has changed since."""
        return self._judging.is_stale(self.record)

    @cached_property
    def judgement(self) -> Judgement:
        """What the readings show."""
        return self._judging.judged(self.record)

    @property
    def passed(self) -> bool:
        """Whether the pages are a certificate."""
        return self.judgement.verdict == "passed"

    def moment(self, at: str) -> str:
        """Print a moment of the record: date, hour and minute."""
        return dt.datetime.fromisoformat(at).strftime("%Y-%m-%d %H:%M")

    def day(self) -> str:
        """Print the date of the record."""
        return dt.datetime.fromisoformat(self.record.at).strftime("%Y-%m-%d")

    def ohm(self, ohm: float | None) -> str:
        """Print a resistance as a hand meter shows it, to two decimals; nothing where none is."""
        return "" if ohm is None else self.words.decimal(f"{ohm:.2f}")
