"""Which system libraries a window needs on Linux, and the Debian packages that bring them.

Imports no Qt: it is asked before Qt is loaded, because Qt aborts the process where they lack.
"""

import ctypes
import sys

OFFSCREEN = {
    "libEGL.so.1": "libegl1",
    "libGL.so.1": "libgl1",
    "libxkbcommon.so.0": "libxkbcommon0",
    "libdbus-1.so.3": "libdbus-1-3",
    "libfontconfig.so.1": "libfontconfig1",
    "libglib-2.0.so.0": "libglib2.0-0",
}
X11 = {
    "libxcb-cursor.so.0": "libxcb-cursor0",
    "libxcb-icccm.so.4": "libxcb-icccm4",
    "libxcb-keysyms.so.1": "libxcb-keysyms1",
    "libxcb-shape.so.0": "libxcb-shape0",
    "libxcb-xkb.so.1": "libxcb-xkb1",
    "libxkbcommon-x11.so.0": "libxkbcommon-x11-0",
}


def _loads(library: str) -> bool:
    try:
        ctypes.CDLL(library)
    except OSError:
        return False
    return True


def missing_packages(*, x11: bool) -> tuple[str, ...]:
    """Return the Debian packages to install before a window can open; empty off Linux."""
    if not sys.platform.startswith("linux"):
        return ()
    wanted = OFFSCREEN | X11 if x11 else OFFSCREEN
    return tuple(package for library, package in wanted.items() if not _loads(library))


if __name__ == "__main__":
    print(*missing_packages(x11="x11" in sys.argv[1:]))  # noqa: T201 - asked by the setup script
