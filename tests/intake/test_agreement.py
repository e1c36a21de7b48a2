"""Hold a measured sample against a record; the record is invented."""

import pytest

from planner.intake.agreement import agreement
from planner.intake.pinout_draft import PinoutDraft
from planner.model.pinout import PinoutRecord
from planner.model.source import Source

RECORD = PinoutRecord(
    id="odd-headset",
    title="Odd headset",
    fits=("xlr-5-female",),
    use="headset",
    drive="load",
    signals={"1": ("shield",), "2": ("L-", "R-"), "4": ("R+",), "5": ("L+",)},
    source=Source(kind="letter"),
)
HEARD = {"2": ("R-", "L-"), "4": ("R+",), "5": ("L+",)}


@pytest.mark.parametrize(
    ("measured", "same", "unseen"),
    [
        (HEARD | {"1": ("shield",)}, True, ()),
        (HEARD, True, ("1",)),  # nothing hangs on the shield
        (HEARD | {"1": ("chassis",)}, False, ()),
        (HEARD | {"3": ("shield",)}, False, ()),
        ({"2": ("L-", "R-"), "4": ("L+",), "5": ("R+",)}, False, ()),
        ({"2": ("L-", "R-"), "4": ("R+",)}, False, ()),  # a driver that is missing
    ],
)
def test_what_was_measured_agrees_or_not(measured, same, unseen):
    found = agreement(PinoutDraft(signals=measured), RECORD)

    assert (found.same, found.unseen) == (same, unseen)
    assert ("nothing hangs on 1" in found.told("read")) == bool(unseen)
