"""The collection of definitions: found by id, listed by title, searched by words."""

from collections.abc import Callable, Iterable, Mapping
from pathlib import Path

from planner.library.words import rank
from planner.model.cable import Cable
from planner.model.connector import Connector
from planner.model.definition import Definition, DefinitionKind, is_retired
from planner.model.part import Part
from planner.model.pinout import PinoutRecord
from planner.model.source import SourceKind, Trust
from planner.problem import Problem


class Library:
    """Hold definitions of the four kinds; of two with one id the later one counts."""

    def __init__(
        self,
        connectors: Iterable[Connector] = (),
        pinouts: Iterable[PinoutRecord] = (),
        cables: Iterable[Cable] = (),
        parts: Iterable[Part] = (),
        problems: Iterable[Problem] = (),
        *,
        files: Mapping[tuple[type, str], Path] | None = None,
    ) -> None:
        self._connectors = {record.id: record for record in connectors}
        self._pinouts = {record.id: record for record in pinouts}
        self._cables = {record.id: record for record in cables}
        self._parts = {record.id: record for record in parts}
        self.problems = tuple(problems)
        self._files = dict(files or {})

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

    def of_kind(self, kind: DefinitionKind, record_id: str) -> Definition | None:
        """Return a definition of a kind, or None if there is none with that id."""
        finders: dict[DefinitionKind, Callable[[str], Definition | None]] = {
            "connector": self.connector,
            "pinout": self.pinout,
            "cable": self.cable,
            "part": self.part,
        }
        return finders[kind](record_id)

    def file_of(self, record: Definition) -> Path | None:
        """Return the file that a definition was read from, None if it came from no file."""
        return self._files.get((type(record), record.id))

    def pinouts_for(self, connector_id: str) -> tuple[PinoutRecord, ...]:
        """Return the pinout records that may be chosen for a connector, by title; none retired."""
        fitting = (record for record in self.pinouts() if connector_id in record.fits)
        return tuple(record for record in fitting if not is_retired(record))

    def search(
        self,
        text: str,
        kind: DefinitionKind | None = None,
        *,
        trust: Trust | None = None,
        source: SourceKind | None = None,
        retired: bool | None = None,
    ) -> tuple[Definition, ...]:
        """Return the records in which every word of `text` is found, the best first.

        Words meet size, poles, family, maker, signals, title; `3.5 two` finds a 3.5 two-pole.
        Without words, all records come, by kind and title. `trust` and `source` leave pinout
        records of that rung and kind of source only; `retired` those that are, or are not.
        """
        records = [it for it in self._of_kind(kind) if _is_so(it, trust, source, retired=retired)]
        if not text.strip():
            return tuple(records)
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


def _is_so(
    record: Definition, trust: Trust | None, source: SourceKind | None, *, retired: bool | None
) -> bool:
    if retired is not None and is_retired(record) != retired:
        return False
    if trust is None and source is None:
        return True
    if not isinstance(record, PinoutRecord):
        return False
    return trust in {None, record.trust} and source in {None, record.source.kind}


def _title_key(record: Definition) -> tuple[str, str]:
    return (record.title.casefold(), record.id)
