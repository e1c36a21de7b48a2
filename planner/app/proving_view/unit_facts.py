"""What is typed about a unit and its meter: read, or refused with what to type instead."""

import re
from typing import TYPE_CHECKING, Literal

from planner.app.proving_view.rows import BAD, ProbeRow
from planner.proving.units import MOST_ENTRIES
from planner.units import number

if TYPE_CHECKING:
    from collections.abc import Collection, Sequence

    from planner.app.proving_view.state import Proving
    from planner.proving.reading import Meter
    from planner.proving.units import Attachment, Listening, Rework, Wiggle

    EntryKind = Literal["attachments", "listening", "rework", "wiggle"]

MOST_NUMBER = 999_999
_ENTRIES = {
    "attachments": "files",
    "listening": "answers of listening",
    "rework": "reworks",
    "wiggle": "ends flexed",
}
_FIGURE = r"(\d+(?:[.,]\d+)?)"
_ERROR = re.compile(rf"\s*{_FIGURE}\s*%\s*(?:\+|and)?\s*{_FIGURE}\s*(?:\u03a9|\u2126|ohm)?\s*")
_ERROR_MEND = "Type percent and ohm from the sheet of the meter, such as 1 % + 0.1."


def unit_number(typed: str, taken: "Collection[int]") -> int | str:
    """Read the number of a unit; return what is wrong with it as text."""
    if not typed.isascii() or not typed.isdigit() or not 1 <= int(typed) <= MOST_NUMBER:
        return f"A unit has a whole number from 1 to {MOST_NUMBER}."
    if int(typed) in taken:
        return f"Unit {int(typed)} is recorded: take it up again in Units, or type another number."
    return int(typed)


def error_words(meter: "Meter") -> str:
    """Say how far off a meter may be: `1 % + 0.1 \u03a9`."""
    return f"{number(meter.percent)} % + {number(meter.offset_ohm, 3)} \u03a9"


def meter_error(typed: str, meter: "Meter") -> "Meter | str":
    """Return a meter with the error that was typed; what is wrong with it as text."""
    match = _ERROR.fullmatch(typed)
    if match is None:
        return f"{typed!r} is no error of a meter. {_ERROR_MEND}"
    percent, offset_ohm = (float(figure.replace(",", ".")) for figure in match.groups())
    if percent > _MOST_PERCENT or offset_ohm > _MOST_OFFSET_OHM:
        return f"That is more than {_MOST_PERCENT} % or {_MOST_OFFSET_OHM} ohm. {_ERROR_MEND}"
    return meter.evolve(percent=percent, offset_ohm=offset_ohm)


_MOST_PERCENT, _MOST_OFFSET_OHM = 50, 100


class Noting:
    """Note what is said about the unit under way; each is one undo step. Refusals come as text."""

    def __init__(self, proving: "Proving") -> None:
        self._proving = proving

    def set_who(self, who: str) -> str:
        """Say who holds the meter."""
        self._proving.who = who
        if self._proving.unit is not None:
            self._proving.change("Who", self._proving.unit.evolve(who=who))
        return ""

    def set_meter(self, name: str) -> str:
        """Say which meter it is read with."""
        return self._take_meter(self._proving.meter.evolve(name=name))

    def set_error(self, typed: str) -> str:
        """Say how far off the meter may be; return what is wrong with what was typed."""
        return self._take_meter(meter_error(typed, self._proving.meter))

    def _take_meter(self, meter: "Meter | str") -> str:
        if isinstance(meter, str):
            return meter
        if self._proving.unit is not None:
            readings = self._proving.unit.readings.evolve(meter=meter)
            self._proving.change("Meter", self._proving.unit.evolve(readings=readings))
        return ""

    def set_number(self, typed: str) -> str:
        """Give the unit another number; return what is wrong with it."""
        unit = self._proving.unit
        if unit is None:
            return ""
        found = unit_number(typed, self._proving.recorded - {unit.number})
        if isinstance(found, str):
            return found
        self._proving.change(f"Unit {found}", unit.evolve(number=found))
        return ""

    def room_for(self, kind: "EntryKind", kept: "Sequence[object]") -> bool:
        """Tell whether one more entry of a kind can be kept; say so where it can't."""
        if len(kept) < MOST_ENTRIES:
            return True
        self._proving.said.emit(
            f"A unit keeps {MOST_ENTRIES} {_ENTRIES[kind]} at most: this one is not noted."
        )
        return False

    def add(self, text: str, kind: "EntryKind", entry: "Attachment | Listening | Wiggle") -> bool:
        """Note an entry; return whether there was room for it."""
        unit = self._proving.unit
        kept = getattr(unit, kind, ())
        if unit is None or not self.room_for(kind, kept):
            return False
        self._proving.change(text, unit.evolve(**{kind: (*kept, entry)}))
        return True

    def set_zero(self, ohm: float) -> None:
        """Take what the meter shows with its probes together."""
        unit = self._proving.unit
        if unit is not None:
            meter = unit.readings.meter.evolve(zero_ohm=ohm)
            after = unit.evolve(readings=unit.readings.evolve(meter=meter), zero_asked=True)
            self._proving.change("Meter\u2019s zero", after)

    def rework(self, entry: "Rework") -> None:
        """Note a rework; what was read bad, or at the contacts that were mended, is unread."""
        unit, made = self._proving.unit, self._proving.judge.diagnosis
        if unit is None or not self.room_for("rework", unit.rework):
            return
        faults = made.faults if made is not None else ()
        mended = frozenset(contact for fault in faults for contact in fault.contacts)
        gone = [it.pair for it in unit.readings.readings if it.pair & mended]
        for place, row in enumerate(self._proving.rows):
            if isinstance(row, ProbeRow) and self._proving.standing(place) in BAD:
                gone += [frozenset(pair) for pair in row.pairs()]
        after = unit.without(gone, unit.heard_groups)
        self._proving.change("Rework", after.evolve(rework=(*unit.rework, entry)))
