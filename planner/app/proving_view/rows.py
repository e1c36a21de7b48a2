"""The rows of the readings: what is held to what, what is expected, read, and how it stands."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from itertools import product
from typing import TYPE_CHECKING, Literal

from planner.proving.reading import Contact, Pair, Reading, Readings
from planner.units import number, ohm_text

if TYPE_CHECKING:
    from planner.drawing.marks import MarkKind
    from planner.proving.entries import Entry
    from planner.proving.expected import Path

Standing = Literal["unread", "part", "good", "beep", "high", "open", "bridge", "heard", "doubt"]
# Shape and word say the same; the colour comes with the shape.
STANDINGS: "dict[Standing, tuple[MarkKind, str]]" = {
    "unread": ("nothing", "unread"),
    "part": ("nothing", "in part"),
    "good": ("tick", "good"),
    "beep": ("tick", "beeps"),
    "high": ("caution", "high"),
    "open": ("stop", "open"),
    "bridge": ("stop", "bridge"),
    "heard": ("note", "split it"),
    "doubt": ("caution", "in doubt"),
}
BAD: frozenset[Standing] = frozenset({"high", "open", "bridge", "heard", "doubt"})
READ = frozenset(STANDINGS) - {"unread", "part", "heard", "doubt"}


@dataclass(frozen=True, slots=True)
class Section:
    """A head among the rows."""

    title: str
    note: str = ""


@dataclass(frozen=True, slots=True)
class ProbeRow:
    """One act with the meter: one probe on `ones`, the other on `others`, each clipped together.

    `path` is there where they are to be joined; without it nothing may be heard. `gap_mm` is how
    near the two come to each other, where that is known.
    """

    ones: tuple[Contact, ...]
    others: tuple[Contact, ...]
    path: "Path | None" = field(default=None, compare=False)
    gap_mm: float | None = field(default=None, compare=False)
    inner: bool = field(default=False, compare=False)  # it splits up the row over it

    @property
    def joined(self) -> bool:
        """Tell whether a sound lead beeps here."""
        return self.path is not None

    @property
    def single(self) -> bool:
        """Tell whether it is one contact to one contact."""
        return len(self.ones) == len(self.others) == 1

    def pairs(self) -> Iterator[tuple[Contact, Contact]]:
        """Go through the pairs that it covers."""
        return product(self.ones, self.others)

    @property
    def key(self) -> Pair:
        """What names a row, whatever it expects."""
        return frozenset((*self.ones, *self.others))


Row = Section | ProbeRow


def standing_of(row: ProbeRow, readings: Readings, heard: frozenset[Pair]) -> Standing:
    """Tell how a row stands with what was read."""
    if row.single:
        return _standing_of_pair(row, readings)
    found = [readings.of(*pair) for pair in row.pairs()]
    if any(it is not None and it.joined for it in found):
        return "bridge"
    whole = all(it is not None for it in found)
    if row.key in heard:
        return "doubt" if whole else "heard"
    if whole:
        return "good"
    return "part" if any(it is not None for it in found) else "unread"


def _standing_of_pair(row: ProbeRow, readings: Readings) -> Standing:
    found = readings.of(row.ones[0], row.others[0])
    if found is None:
        return "unread"
    if row.path is None:
        return "bridge" if found.joined else "good"
    if not found.joined:
        return "open"
    own = readings.own_ohm(found)
    if own is None:
        return "beep"
    return "high" if own > row.path.limit_ohm else "good"


def readings_of(row: ProbeRow, entry: "Entry") -> tuple[Reading, ...]:
    """Return the readings that an entry stands for; none where a group was heard.

    A beep of a group says that something in it is joined, not what: its pairs stay unknown.
    """
    if entry.joined and not row.single:
        return ()
    return tuple(
        Reading(one=one, other=other, joined=entry.joined, ohm=entry.ohm)
        for one, other in row.pairs()
    )


# -- words ------------------------------------------------------------------------------------


def contacts_words(contacts: Sequence[Contact]) -> str:
    """Name contacts shortly: `A T`, `A 1 2 3`, `12 contacts`."""
    by_end: dict[str, list[str]] = {}
    for end, contact in contacts:
        by_end.setdefault(end, []).append(contact)
    shown = "; ".join(f"{end} {' '.join(ids)}" for end, ids in by_end.items())
    return shown if len(shown) <= _LONGEST else f"{len(contacts)} contacts"


_LONGEST = 12


def expected_words(row: ProbeRow) -> str:
    """Say what a sound lead shows."""
    if row.path is None:
        return "open"
    return "beep" if row.path.ohm is None else ohm_text(row.path.ohm)


def limit_words(row: ProbeRow) -> str:
    """Say the most that a good joint shows."""
    return "" if row.path is None else f"\u2264 {number(row.path.limit_ohm)}"


def reading_words(row: ProbeRow, readings: Readings, heard: frozenset[Pair]) -> str:
    """Say what was read, as the meter showed it."""
    if row.single:
        found = readings.of(row.ones[0], row.others[0])
        return "" if found is None else shown_words(found)
    standing = standing_of(row, readings, heard)
    return {"good": "open", "bridge": "beep", "heard": "beep", "doubt": "beep"}.get(standing, "")


def shown_words(reading: Reading) -> str:
    """Say one reading."""
    if not reading.joined:
        return "open"
    return "beep" if reading.ohm is None else ohm_words(reading.ohm)


def ohm_words(ohm: float) -> str:
    """Say ohms as a hand meter shows them."""
    return f"{number(ohm / 1000, 3)} k\u03a9" if ohm >= 1000 else f"{number(ohm, 3)} \u03a9"
