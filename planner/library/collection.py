"""The collection of definitions: found by id, listed by title, searched by words."""

from collections.abc import Iterable
from typing import Literal

from planner.library.words import rank
from planner.model.cable import Cable
from planner.model.connector import Connector
from planner.model.part import Part
from planner.model.pinout import PinoutRecord
from planner.problem import Problem

Definition = Connector | PinoutRecord | Cable | Part
DefinitionKind = Literal["connector", "pinout", "cable", "part"]


class Library:
    """Hold definitions of the four kinds; of two with one id the later one counts."""

    def __init__(
        self,
        connectors: Iterable[Connector] = (),
        pinouts: Iterable[PinoutRecord] = (),
        cables: Iterable[Cable] = (),
        parts: Iterable[Part] = (),
        problems: Iterable[Problem] = (),
    ) -> None:
        self._connectors = {record.id: record for record in connectors}
        self._pinouts = {record.id: record for record in pinouts}
        self._cables = {record.id: record for record in cables}
        self._parts = {record.id: record for record in parts}
        self.problems = tuple(problems)

    def connectors(self) -> tuple[Connector, ...]:
        """Return every connector, by title."""
        return tuple(sorted(self._connectors.values(), key=_title_key))

    def pinouts(self) -> tuple[PinoutRecord, ...]:
        """Return every pinout record, by title."""
        return tuple(sorted(self._pinouts.values(), key=_title_key))

    def cables(self) -> tuple[Cable, ...]:
        """Return every cable, by title."""
        return tuple(sorted(self._cables.values(), key=_title_key))

    def parts(self) -> tuple[Part, ...]:
        """Return every part, by title."""
        return tuple(sorted(self._parts.values(), key=_title_key))

    def connector(self, record_id: str) -> Connector | None:
        """Return a connector, or None if there is none with that id."""
        return self._connectors.get(record_id)

    def pinout(self, record_id: str) -> PinoutRecord | None:
        """Return a pinout record, or None if there is none with that id."""
        return self._pinouts.get(record_id)

    def cable(self, record_id: str) -> Cable | None:
        """Return a cable, or None if there is none with that id."""
        return self._cables.get(record_id)

    def part(self, record_id: str) -> Part | None:
        """Return a part, or None if there is none with that id."""
        return self._parts.get(record_id)

    def pinouts_for(self, connector_id: str) -> tuple[PinoutRecord, ...]:
        """Return the pinout records that fit a connector, by title."""
        return tuple(record for record in self.pinouts() if connector_id in record.fits)

    def search(self, text: str, kind: DefinitionKind | None = None) -> tuple[Definition, ...]:
        """Return the records in which every word of `text` is found, the best first.

        Words meet size, poles, family, maker, signals, title; `3.5 two` finds a 3.5 two-pole.
        Without words, all records come, by kind and title.
        """
        records = self._of_kind(kind)
        if not text.strip():
            return records
        ranked = [(rank(text, record), record) for record in records]
        found = [pair for pair in ranked if pair[0] > (0, 0)]
        found.sort(key=lambda pair: pair[0], reverse=True)
        return tuple(record for _rank, record in found)

    def _of_kind(self, kind: DefinitionKind | None) -> tuple[Definition, ...]:
        groups: dict[DefinitionKind, tuple[Definition, ...]] = {
            "connector": self.connectors(),
            "pinout": self.pinouts(),
            "cable": self.cables(),
            "part": self.parts(),
        }
        if kind is not None:
            return groups[kind]
        return tuple(record for group in groups.values() for record in group)


def _title_key(record: Definition) -> tuple[str, str]:
    return (record.title.casefold(), record.id)
