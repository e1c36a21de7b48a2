"""What a builder types for one reading: a figure in ohm, open, or only that it beeped."""

import re
from dataclasses import dataclass
from decimal import Decimal

from planner.proving.reading import OPEN_FROM_OHM
from planner.units import MINUS

OPEN_WORDS = frozenset({"o", "open", "ol", "o.l", "o.l.", "0l", "inf", "infinity", "∞", "--"})
JOINED_WORDS = frozenset({"b", "beep", "y", "yes"})

_MOST_CHARACTERS = 40
_SIGN = r"(?P<sign>[-+]?)"
_TIMES = {"": 0, "m": -3, "R": 0, "k": 3, "K": 3, "M": 6, "G": 9}  # powers of ten
_UNIT = re.compile(r"\s*(?:\u03a9|\u2126|ohms?)$", re.IGNORECASE)
_PLAIN = re.compile(
    rf"{_SIGN}(?P<figure>(?:\d+(?:[.,]\d*)?|[.,]\d+)(?:[eE][-+]?\d{{1,3}})?)\s*(?P<times>[mRkKMG]?)"
)
# A letter in the point's place, as on resistors: 2R2, R47, 4k7 (IEC 60062).
_LETTERED = re.compile(rf"{_SIGN}(?P<whole>\d*)(?P<times>[RkKM])(?P<part>\d+)")
_EXAMPLES = "Type a number in ohm such as 0.12 or 1.2k, o for open, or b if it only beeped."


class EntryError(ValueError):
    """What was typed is no reading: `what` is wrong and how to `mend` it."""

    def __init__(self, what: str, mend: str = _EXAMPLES) -> None:
        self.what, self.mend = what, mend
        super().__init__(f"{what}. {mend}")


@dataclass(frozen=True, slots=True)
class Entry:
    """One reading without its place: joined or not, and the figure as shown if there was one."""

    joined: bool
    ohm: float | None = None


OPEN = Entry(joined=False)
BEEP = Entry(joined=True)


def parse_entry(text: str) -> Entry:
    """Read what was typed; EntryError where it is no reading.

    A comma is a decimal point. From OPEN_FROM_OHM up a figure counts as open: that much is shown
    through fingers and damp, not through a joint.
    """
    typed = text.strip().replace(MINUS, "-")
    word = typed.casefold()
    if not typed:
        raise EntryError("nothing is typed")
    if word in OPEN_WORDS:
        return OPEN
    if word in JOINED_WORDS:
        return BEEP
    ohm = _ohm(typed)
    return OPEN if ohm >= OPEN_FROM_OHM else Entry(joined=True, ohm=ohm)


def _ohm(typed: str) -> float:
    """Return the figure in ohm; EntryError where there is none, or it is below zero."""
    bare = _UNIT.sub("", typed) if len(typed) <= _MOST_CHARACTERS else ""
    match = _PLAIN.fullmatch(bare)
    figure = match["figure"].replace(",", ".") if match else ""
    if match is None:
        match = _LETTERED.fullmatch(bare)
        if match is None:
            raise EntryError(f"{shown(typed)} is no reading")
        figure = f"{match['whole'] or '0'}.{match['part']}"
    ohm = float(Decimal(figure).scaleb(_TIMES[match["times"]]))
    if match["sign"] == "-" and ohm > 0:
        raise EntryError(
            f"{shown(typed)} is below zero, which no resistance is",
            "Null the meter with its probes together and measure again; "
            "if it only shows a little under zero, type 0.",
        )
    return ohm


def shown(typed: str) -> str:
    """Quote what was typed, of a long text the beginning."""
    return repr(typed if len(typed) <= _MOST_CHARACTERS else typed[: _MOST_CHARACTERS - 1] + "…")


def entry_text(entry: Entry) -> str:
    """Return what could have been typed for an entry, without loss of a figure."""
    if not entry.joined:
        return "open"
    if entry.ohm is None:
        return "beep"
    return repr(entry.ohm).removesuffix(".0")
