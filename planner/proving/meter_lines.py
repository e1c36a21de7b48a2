"""The meter in the `#` lines of a file of readings: its name, its zero, its error."""

from collections.abc import Iterable
from decimal import Decimal
from difflib import get_close_matches

from pydantic import ValidationError

from planner.proving.csv_table import Note, Slip
from planner.proving.reading import Meter
from planner.units import parse_figure

_FIGURES = ("zero_ohm", "percent", "offset_ohm")
_FIELDS = {"meter": "name"} | {key: key for key in _FIGURES}


def meter_of(notes: Iterable[Note], slips: list[Slip]) -> Meter:
    """Return the meter that the lines describe; what is wrong in them goes to `slips`.

    A line that is nothing of ours is a remark, but one that is nearly ours is a slip.
    """
    found: dict[str, object] = {}
    for note in notes:
        if note.key in found:
            what = f"the line '# {note.key}:' stands twice"
            slips.append(Slip(note.line, "", what, "Keep one of the two."))
        elif note.key in _FIELDS:
            found[note.key] = _value(note, slips)
        elif close := get_close_matches(note.key, _FIELDS, n=1, cutoff=0.8):
            what = f"the line '# {note.key}:' is not known here"
            slips.append(Slip(note.line, "", what, f"Did you mean '# {close[0]}:'?"))
    return Meter(**{_FIELDS[key]: value for key, value in found.items() if value is not None})


def _value(note: Note, slips: list[Slip]) -> object:
    """Return the value of a line, or None where it can't be one."""
    try:
        value = note.value if note.key == "meter" else parse_figure(note.value, "ohm", "Ω", "%")
        Meter(**{_FIELDS[note.key]: value})
    except ValidationError as error:
        reason = error.errors()[0]["msg"].removeprefix("Value error, ")
        what = f"{note.key} can't be {note.value[:40]!r}: {reason[:1].lower()}{reason[1:]}"
    except ValueError:
        what = f"{note.key} is {note.value[:40]!r}, which is no number"
    else:
        return value
    slips.append(Slip(note.line, "", what, f"Write '# {note.key}: {_EXAMPLES[note.key]}'."))
    return None


_EXAMPLES = {"meter": "bench meter 2", "zero_ohm": "0.2", "percent": "1", "offset_ohm": "0.1"}


def meter_text(meter: Meter) -> tuple[str, ...]:
    """Return the lines that describe a meter."""
    given = {"meter": meter.name} if meter.name else {}
    # Without an exponent, which no figure in these lines may have.
    figures = {key: f"{Decimal(str(getattr(meter, key))):f}" for key in _FIGURES}
    return tuple(f"# {key}: {value}" for key, value in (given | figures).items())
