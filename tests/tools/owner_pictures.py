"""The pictures of the owner's guide: an invented letter is taken in, compared and confirmed."""

from collections.abc import Callable

from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget

from planner.app.intake.window import LibraryWindow
from planner.app.shell import Shell
from planner.geometry.placing import Ring
from planner.intake import shaping
from planner.intake.connector_draft import ConnectorDraft
from planner.intake.pinout_draft import PinoutDraft

SIZE = (1180, 780)
Grab = Callable[[QWidget, str], None]
ODD = PinoutDraft(
    connector="xlr-5-female",
    fits_also=("xlr-5-male",),
    seen_from="mating",
    use="Beacon headset",
    maker="Tarn & Wicket",
    drive="load",
    signals={
        "1": ("mic-",),
        "2": ("mic+",),
        "3": ("L-", "R-"),
        "4": ("R+",),
        "5": ("L+",),
    },
    source_kind="letter",
    reference="letter about the Beacon station, page 1",
    date="3 May 2009",
    recorded_by="Saltmarsh Playhouse",
)
# What a meter shows of such a headset: two ears of 64 ohm to contact 3, a microphone of 1.2 k.
READINGS = {
    frozenset("34"): "64.1",
    frozenset("35"): "63.8",
    frozenset("45"): "127.9",
    frozenset("12"): "1.2k",
}


def owner_pictures(shell: Shell, grab: Grab) -> None:
    """Grab the library, a pinout beside its nearest record, a sample, a connector being drawn."""
    shell.settings.bench_name = "Saltmarsh Playhouse"
    shell.bench.library.open()
    window = shell.bench.library.window
    assert window is not None
    window.resize(*SIZE)
    window.pinout.begin(ODD)
    window._show(window.pinout)
    likeness = window.pinout.likeness
    names = [it.record.id for it in likeness.found]
    likeness.list.setCurrentRow(names.index("xlr-5-intercom-headset"))
    grab(window, "take-in-pinout")
    window.pinout.save()
    grab(window, "library")
    window.measure()
    _read(window)
    grab(window, "measure-sample")
    draft = shaping.place_by_rule(ConnectorDraft(seen_from="solder"), Ring(5, 7.0, 90.0))
    window.connector.begin(
        draft.evolve(id="odd-five", title="Odd five-pole", gender="male", family="odd")
    )
    window._show(window.connector)
    window.connector.choose(("2",))
    grab(window, "draw-connector")


def _read(window: LibraryWindow) -> None:
    sample = window.sample.sample
    while sample.identified is None or not sample.identified.certain:
        sample.read(READINGS.get(frozenset(sample.pair), "o"))
        while sample._errands.busy:
            QTest.qWait(5)
