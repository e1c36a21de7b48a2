"""The bundled face, the only one in the window; sizes are pixels, the same on every screen."""

from PySide6.QtGui import QFont, QFontDatabase

from planner.data import data_dir

FAMILY = "Inter"
ANSWER, GUIDE, HEAD, BODY, SMALL = 28, 18, 15, 13, 12
_FILES = ("Inter-Regular.otf", "Inter-Bold.otf")


def load_fonts() -> None:
    """Give the bundled files to Qt; FileNotFoundError if one can't be used."""
    folder = data_dir("resources") / "fonts"
    for name in _FILES:
        if QFontDatabase.addApplicationFont(str(folder / name)) < 0:
            msg = f"the bundled font {name} can't be used: install Cupwright again"
            raise FileNotFoundError(msg)


def font(size: int = BODY, *, bold: bool = False) -> QFont:
    """Return the face at a size in pixels."""
    made = QFont(FAMILY)
    made.setPixelSize(size)
    made.setBold(bold)
    made.setHintingPreference(QFont.HintingPreference.PreferNoHinting)
    return made
