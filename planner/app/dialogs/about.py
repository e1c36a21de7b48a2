"""What the window says of itself."""

import platform
from importlib.metadata import PackageNotFoundError, version

import PySide6


def about_text() -> str:
    """Return version, what it is for, licence, and what it runs on."""
    try:
        own = version("cupwright")
    except PackageNotFoundError:
        own = "from a checkout"
    return (
        f"Version {own}. A pinout and solder-layout planner for hand-built audio leads. "
        "MIT licence; the face is Inter, under the SIL Open Font License. "
        f"Qt {PySide6.__version__}, Python {platform.python_version()}."
    )
