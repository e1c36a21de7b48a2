"""Two readings of one pair of contacts: whether they agree, and which one counts."""

from planner.proving.csv_table import Slip
from planner.proving.entries import Entry, entry_text
from planner.proving.reading import Contact, Meter, Pair, Reading


class Gathering:
    """Readings by pair as rows bring them in. Each further one is held against the first.

    Where they agree within the meter's error the later one counts; a mere beep does not
    take the place of a figure.
    """

    def __init__(self, meter: Meter) -> None:
        self._meter = meter
        self._first: dict[Pair, tuple[int, Reading]] = {}
        self._kept: dict[Pair, Reading] = {}
        self.slips: list[Slip] = []

    @property
    def readings(self) -> tuple[Reading, ...]:
        """What counts, one reading a pair, in the order in which the pairs came."""
        return tuple(self._kept.values())

    def take(self, line: int, reading: Reading) -> None:
        """Take the reading of a row, or note that it contradicts an earlier one."""
        pair = reading.pair
        if pair not in self._first:
            self._first[pair] = (line, reading)
            self._kept[pair] = reading
            return
        earlier_line, earlier = self._first[pair]
        if not agree(earlier, reading, self._meter):
            self.slips.append(self._contradiction(earlier_line, earlier, line, reading))
        elif reading.ohm is not None or self._kept[pair].ohm is None:
            self._kept[pair] = reading

    def _contradiction(
        self, earlier_line: int, earlier: Reading, line: int, reading: Reading
    ) -> Slip:
        shown = [entry_text(Entry(one.joined, one.ohm)) for one in (earlier, reading)]
        one, other = _spoken(earlier.one), _spoken(earlier.other)
        if earlier.one == reading.one:
            what = f"{one} to {other} is {shown[0]} in row {earlier_line} and {shown[1]} here"
        else:
            what = (
                f"{one} to {other} is {shown[0]} in row {earlier_line}, and the other way round "
                f"it is {shown[1]} here; a lead has no direction"
            )
        return Slip(line, "reading", what, "Measure again, and keep the row that is right.")


def agree(one: Reading, other: Reading, meter: Meter) -> bool:
    """Tell whether two readings of a pair can both be right, each off by the meter's error."""
    if one.joined != other.joined:
        return False
    if one.ohm is None or other.ohm is None:
        return True
    error = meter.error_ohm(one.ohm) + meter.error_ohm(other.ohm)
    return abs(one.ohm - other.ohm) <= error * (1 + 1e-9)


def _spoken(contact: Contact) -> str:
    return f"{contact[1]} at {contact[0]}"
