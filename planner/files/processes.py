"""Tell whether the process that wrote something still runs, even if its number is used again."""

import os
import sys
from pathlib import Path


def started(pid: int) -> str:
    """Return a mark of when a process began, where the system tells; else empty."""
    try:
        fields = Path(f"/proc/{pid}/stat").read_text("ascii", "replace").rpartition(")")[2].split()
    except OSError:
        return ""
    return fields[19] if len(fields) > 19 else ""


def is_running(pid: int, began: str) -> bool:
    """Tell whether the process with this number, begun then, still runs."""
    return _exists(pid) and began in {"", started(pid)}


if sys.platform == "win32":

    def _exists(pid: int) -> bool:
        """Ask for a handle: a signal of 0 would end the process here."""
        import ctypes  # noqa: PLC0415 - used on one system only

        handle = ctypes.windll.kernel32.OpenProcess(0x1000, False, pid)
        if handle:
            ctypes.windll.kernel32.CloseHandle(handle)
        return bool(handle)

else:

    def _exists(pid: int) -> bool:
        """Send the signal that does nothing."""
        try:
            os.kill(pid, 0)
        except ProcessLookupError:
            return False
        except (PermissionError, OverflowError):
            return True
        return True
