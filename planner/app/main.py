"""Open the window: light until it is shown, then furnished."""

import ctypes
import logging
import os
import sys
from pathlib import Path

from planner.app.system import missing_packages

NO_WINDOW = "check, connectors, diagnose, identify, layout, schema, sheet and sweep"


def why_no_window() -> str:
    """Say in one sentence why no window can open here, or return nothing.

    Asked before Qt is loaded, because Qt aborts the process where a display or a library lacks.
    """
    if not sys.platform.startswith("linux"):
        return ""
    platform = os.environ.get("QT_QPA_PLATFORM", "")
    has_x11 = bool(os.environ.get("DISPLAY"))
    has_wayland = bool(os.environ.get("WAYLAND_DISPLAY"))
    if not (platform or has_x11 or has_wayland):
        return f"There is no display to open a window on; {_commands()} need none."
    x11 = platform.startswith("xcb") or (not platform and has_x11 and not has_wayland)
    packages = missing_packages(x11=x11)
    if packages:
        return (
            "The window needs system libraries that are missing here: "
            f"sudo apt-get install {' '.join(packages)}"
        )
    if x11 and not x_server_answers():
        display = os.environ.get("DISPLAY", "")
        return f"The display {display!r} does not answer; {_commands()} need none."
    return ""


def x_server_answers() -> bool:
    """Tell whether the X server that DISPLAY names takes a connection; Qt aborts where not."""
    try:
        xcb = ctypes.CDLL("libxcb.so.1")
    except OSError:
        return True  # Qt brings or names what it needs itself
    xcb.xcb_connect.restype = ctypes.c_void_p
    connection = ctypes.c_void_p(xcb.xcb_connect(None, None))
    refused = bool(xcb.xcb_connection_has_error(connection))
    xcb.xcb_disconnect(connection)
    return not refused


def _commands() -> str:
    return f"the commands {NO_WINDOW}"


def _set_up_logging(*, debug: bool) -> None:
    level = logging.DEBUG if debug else logging.WARNING
    logging.basicConfig(level=level, format="%(levelname)s %(name)s: %(message)s")


def run(
    plan: Path | str | None = None,
    *,
    demo: bool = False,
    debug: bool = False,
    fresh_profile: bool = False,
) -> int:
    """Open the window on a plan file, the demo plan or nothing; return the exit status.

    2 where no window can open (one sentence on stderr says why). `fresh_profile` works on
    throw-away settings and data.
    """
    reason = why_no_window()
    if reason:
        sys.stderr.write(f"cupwright: {reason}\n")
        return 2
    _set_up_logging(debug=debug)
    if not fresh_profile:
        return _open_window(Path(plan) if plan else None, demo=demo)
    from planner.app.settings import use_fresh_profile  # noqa: PLC0415 - brings Qt

    with use_fresh_profile():
        return _open_window(Path(plan) if plan else None, demo=demo)


def _open_window(plan: Path | None, *, demo: bool) -> int:
    from planner.app.shell import Shell  # noqa: PLC0415 - brings Qt

    shell = Shell.start()
    shell.show()
    shell.furnish_soon(plan, demo=demo)
    return shell.exec()
