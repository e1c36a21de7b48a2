"""Make the pictures of the README and the guide anew: `python -m tests.tools.pictures`."""

import os
import tempfile
from pathlib import Path

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")

from PySide6.QtCore import QByteArray, QSize, Qt
from PySide6.QtGui import QImage, QPainter
from PySide6.QtSvg import QSvgRenderer
from PySide6.QtWidgets import QApplication, QWidget

from planner.app.proving_view.rows import ProbeRow
from planner.app.shell import Shell
from planner.data import data_dir
from planner.files.plans import read_plan
from planner.library.loading import load_library
from planner.services.checking import check_plan
from planner.services.sheets import write_sheet
from tests.tools.owner_pictures import owner_pictures

PICTURES = Path(__file__).parents[2] / "docs" / "pictures"
SIZE = (1440, 900)
SHEET_PX = (827, 1169)  # A4 at 100 dots an inch


def demo(name: str) -> Path:
    """Return the path of a demo plan."""
    return data_dir("resources") / "demo" / f"{name}.json"


def grab(window: QWidget, name: str) -> None:
    """Grab a window as it stands."""
    for _ in range(5):
        QApplication.processEvents()
    window.grab().save(str(PICTURES / f"{name}.png"))


def window(shell: Shell, name: str) -> None:
    """Grab the plan's window as it stands."""
    grab(shell.window, name)


def windows() -> None:
    """Grab the empty window, the cue-desk lead in its views, its spoiled copy in the dark look."""
    shell = Shell.start()
    shell.settings.choose("theme", "light")
    shell.window.resize(*SIZE)
    shell.window.show()
    shell.furnish()
    window(shell, "window-empty")
    shell.bench.begin(demo("cue-desk-headphone-lead"), demo=False)
    window(shell, "window")
    shell.window.acts["dry_fit"].trigger()
    window(shell, "dry-fit")
    shell.window.acts["work"].trigger()
    work = shell.bench.work.state
    while work.busy or not work.facts.steps:
        shell.app.processEvents()
    window(shell, "work")
    prove(shell)
    shell.window.acts["wire"].trigger()
    shell.settings.choose("theme", "dark")
    shell.bench.begin(demo("spoiled-cue-desk"), demo=False)
    window(shell, "window-stops")
    shell.settings.choose("theme", "light")
    owner_pictures(shell, grab)
    shell.take_down()


def prove(shell: Shell) -> None:
    """Read a unit in which the cores at the right cup are exchanged, and grab the diagnosis."""
    shell.window.acts["prove"].trigger()
    _settle(shell)
    proving = shell.bench.proving
    proving.state.begin()
    proving.readings.zero.line.setText("0.2")
    proving.readings.zero.line.setModified(True)
    proving.readings.zero.line.settle()
    places = [at for at, row in enumerate(proving.state.rows) if isinstance(row, ProbeRow)]
    for place, shown in zip(places, ("0.4", "0.5", "o", "o"), strict=False):
        proving.state.enter(place, shown)
    proving.state.go_to(places[4])
    _settle(shell)
    proving.show_page("Verdict")
    window(shell, "prove")


def _settle(shell: Shell) -> None:
    state = shell.bench.proving.state
    while state.busy or state.judge.busy:
        shell.app.processEvents()


def sheet() -> None:
    """Render the first page of the cue-desk lead's sheet."""
    plan = read_plan(demo("cue-desk-headphone-lead"))
    findings = check_plan(plan, load_library().pinouts())
    with tempfile.TemporaryDirectory() as folder:
        path, *_ = write_sheet(plan, findings, Path(folder) / "sheet.svg")
        renderer = QSvgRenderer(QByteArray(path.read_bytes()))
    image = QImage(QSize(*SHEET_PX), QImage.Format.Format_RGB32)
    image.fill(Qt.GlobalColor.white)
    painter = QPainter(image)
    renderer.render(painter)
    painter.end()
    image.save(str(PICTURES / "sheet.png"))


def main() -> None:
    """Make all pictures, on throw-away settings and data."""
    with tempfile.TemporaryDirectory() as folder:
        os.environ["CUPWRIGHT_SETTINGS"] = os.environ["CUPWRIGHT_DATA"] = folder
        windows()
        sheet()


if __name__ == "__main__":
    main()
