"""Play a test tone by what the system has, without holding up the window.

The tone is a temporary file that one of the system's own programs plays; stopping ends the program.
"""

import os
import shutil
import sys
import tempfile
from contextlib import suppress
from pathlib import Path

from PySide6.QtCore import QObject, QProcess, Signal

from planner.problem import InputError
from planner.proving.tones import Segment, tone_bytes

# By system: the programs that play a file, in the order in which they are tried.
_PROGRAMS = {"linux": ("pw-play", "paplay", "aplay"), "darwin": ("afplay",)}
_WINDOWS = "import sys, winsound; winsound.PlaySound(sys.argv[1], winsound.SND_FILENAME)"
_END_MS = 2000
_MOST_SAID = 160


def commands(platform: str = sys.platform) -> tuple[tuple[str, ...], ...]:
    """Return the commands that can play a file on this system, the first to be tried first."""
    if platform == "win32":
        return ((sys.executable, "-c", _WINDOWS),)
    found = (shutil.which(name) for name in _PROGRAMS.get(platform, ()))
    return tuple((path,) for path in found if path)


class Sounding(QProcess):
    """A program that plays a file; the file goes when it ends."""

    ended = Signal(object, str)  # itself; why it failed, or nothing

    def __init__(self, command: tuple[str, ...], path: Path, parent: QObject) -> None:
        super().__init__(parent)
        self._path = path
        self.finished.connect(self._on_finished)
        self.errorOccurred.connect(self._on_error)
        program, *rest = command
        self.setProgram(program)
        self.setArguments([*rest, str(path)])

    def _on_error(self, error: QProcess.ProcessError) -> None:
        if error == QProcess.ProcessError.FailedToStart:
            self._end(self.errorString())

    def _on_finished(self, code: int, status: QProcess.ExitStatus) -> None:
        said = bytes(self.readAllStandardError().data()).decode(errors="replace").splitlines()
        last = next((it.strip() for it in reversed(said) if it.strip()), "it ended early")
        good = code == 0 and status == QProcess.ExitStatus.NormalExit
        self._end("" if good else last)

    def _end(self, why: str) -> None:
        with suppress(OSError):
            self._path.unlink()
        self.ended.emit(self, why)
        self.deleteLater()


class Player(QObject):
    """Play one tone at a time. Nothing is played but on `play`, and never over the ceiling."""

    changed = Signal()  # another tone sounds, or none
    failed = Signal(str)

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.commands = commands()
        self.playing: Segment | None = None
        self._sounding: Sounding | None = None

    def play(self, segment: Segment, level_dbfs: float) -> None:
        """Play a tone, in place of the one that sounds; what goes wrong is said by `failed`."""
        self.stop()
        if not self.commands:
            return
        try:
            path = _written(tone_bytes((segment,), level_dbfs))
        except InputError as error:
            self.failed.emit(str(error))
            return
        except OSError as error:
            self.failed.emit(f"The tone can\u2019t be written to be played: {error.strerror}.")
            return
        self.playing = segment
        self._sounding = Sounding(self.commands[0], path, self)
        self._sounding.ended.connect(self._on_ended)
        self._sounding.start()
        self.changed.emit()

    def stop(self) -> None:
        """End the tone that sounds."""
        sounding, self._sounding = self._sounding, None
        if sounding is not None:
            self.playing = None
            sounding.kill()
            self.changed.emit()

    def let_go(self) -> None:
        """End the tone and wait until its program is gone."""
        self.stop()
        for sounding in self.findChildren(Sounding):
            sounding.waitForFinished(_END_MS)

    def _on_ended(self, sounding: Sounding, why: str) -> None:
        """Say what went wrong; Play tries the next program, but no sound starts by itself."""
        if sounding is not self._sounding:
            return  # it was stopped
        self._sounding = self.playing = None
        self.changed.emit()
        if why:
            self.failed.emit(self._next_program(why[:_MOST_SAID].rstrip(".")))

    def _next_program(self, why: str) -> str:
        failed, *others = self.commands
        self.commands = (*others, failed)
        mend = f"Play tries {_name(others[0])} next." if others else "Write the tones as a file."
        return f"{_name(failed)} can\u2019t play the tone: {why}. {mend}"


def _name(command: tuple[str, ...]) -> str:
    return Path(command[0]).name


def _written(data: bytes) -> Path:
    handle, name = tempfile.mkstemp(prefix="tone-", suffix=".wav")
    with os.fdopen(handle, "wb") as stream:
        stream.write(data)
    return Path(name)
