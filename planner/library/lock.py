"""One writer at a time in a shared folder, also on a network drive, with no lock of the system.

A claim is a file `.lock/N`, made only if it is not there yet; the highest number holds, until
`.lock/N.free` stands beside it or the claim is stale. The highest claim is never deleted, so two
who find it free or stale race for one new file, and one of them loses.
"""

import json
import os
import platform
import time
import uuid
from contextlib import suppress
from dataclasses import asdict, dataclass
from datetime import UTC, datetime
from functools import cache
from pathlib import Path
from types import TracebackType
from typing import Self

from planner.files.folders import check_inside
from planner.files.processes import is_running, started
from planner.problem import InputError

LOCK_FOLDER = ".lock"
# A save takes well under a second, on a slow drive some; who holds longer has died or sleeps.
STALE_S = 60.0
WAIT_S = 15.0
# A claim says whose it is at once; one that does not was left by a kill.
NAMELESS_S = 5.0
_PAUSES_S = (0.002, 0.005, 0.01, 0.02, 0.05)


@dataclass(frozen=True, slots=True)
class Owner:
    """Who holds the folder: the person, the machine as shown and as told apart, the process."""

    who: str
    machine: str
    token: str
    pid: int
    began: str
    at: str


class FolderLock:
    """Hold a folder while a definition is saved; use it in a `with` statement."""

    def __init__(
        self, folder: Path, who: str = "", *, stale_s: float = STALE_S, wait_s: float = WAIT_S
    ) -> None:
        self._place = folder / LOCK_FOLDER
        self._who = who
        self._stale_s, self._wait_s = stale_s, wait_s
        self._number = 0

    def __enter__(self) -> Self:
        """Wait for the folder; InputError names who holds it. OSError if it can't be written."""
        self._prepare()
        until, tries = time.monotonic() + self._wait_s, 0
        while not self._claimed():
            if time.monotonic() > until:
                raise self._busy()
            time.sleep(_PAUSES_S[min(tries, len(_PAUSES_S) - 1)])
            tries += 1
        self._sweep()
        return self

    def __exit__(
        self,
        kind: type[BaseException] | None,
        error: BaseException | None,
        at: TracebackType | None,
    ) -> None:
        """Free the folder; if even that can't be written, the claim grows stale."""
        with suppress(OSError):
            os.close(os.open(self._freed(self._number), os.O_CREAT | os.O_WRONLY))

    def check(self) -> None:
        """Raise InputError if the claim was taken for stale meanwhile and somebody else holds."""
        if self._top() != self._number:
            what = "the folder was held too long, and somebody else saves into it now"
            raise InputError.single(what, str(self._place.parent), "Save again.")

    def _prepare(self) -> None:
        check_inside(self._place, self._place.parent)
        if not self._place.is_dir():
            self._place.mkdir(exist_ok=True)
            # In a checkout of a repository claims are nobody else's business.
            (self._place / ".gitignore").write_text("*\n", encoding="ascii")

    def _claimed(self) -> bool:
        """Try to put a claim above the highest one, if that does not hold any more."""
        top = self._top()
        if top and not self._freed(top).exists() and not self._is_stale(top):
            return False
        mine = self._place / str(top + 1)
        try:
            self._put(mine, json.dumps(asdict(_owner(self._who))))
        except FileExistsError:
            return False
        if self._top() != top + 1:  # the folder went on while this looked at an old claim
            mine.unlink(missing_ok=True)
            return False
        self._number = top + 1
        return True

    def _put(self, path: Path, text: str) -> None:
        """Make a file that was not there yet, whole at once where the drive can link files."""
        draft = self._probe()
        try:
            draft.write_text(text, encoding="utf-8")
            os.link(draft, path)
        except FileExistsError:
            raise
        except OSError:
            with os.fdopen(os.open(path, os.O_CREAT | os.O_EXCL | os.O_WRONLY), "w") as stream:
                stream.write(text)
        finally:
            draft.unlink(missing_ok=True)

    def _probe(self) -> Path:
        return self._place / f"probe-{uuid.uuid4().hex}"

    def _top(self) -> int:
        numbers = (int(it.name) for it in self._place.iterdir() if it.name.isdecimal())
        return max(numbers, default=0)

    def _freed(self, number: int) -> Path:
        return self._place / f"{number}.free"

    def _is_stale(self, number: int) -> bool:
        owner = self._owner_of(number)
        here = owner is not None and owner.token == _this_machine()
        if owner is not None and here and not is_running(owner.pid, owner.began):
            return True
        limit_s = self._stale_s if owner is not None else min(self._stale_s, NAMELESS_S)
        return self._age_s(number) > limit_s

    def _owner_of(self, number: int) -> Owner | None:
        try:
            return Owner(**json.loads((self._place / str(number)).read_text(encoding="utf-8")))
        except (OSError, ValueError, TypeError):
            return None  # just being written, or its writer was killed

    def _age_s(self, number: int) -> float:
        """Return a claim's age by the clock of the drive: clocks of two machines may differ."""
        probe = self._probe()
        try:
            probe.touch()
            return probe.stat().st_mtime - (self._place / str(number)).stat().st_mtime
        except FileNotFoundError:
            return 0.0  # somebody else took over meanwhile
        finally:
            probe.unlink(missing_ok=True)

    def _sweep(self) -> None:
        """Delete the claims below one's own, and probes that a kill has left."""
        for path in self._place.iterdir():
            number = path.name.partition(".")[0]
            below = number.isdecimal() and int(number) < self._number
            if below or path.name.startswith("probe-"):
                with suppress(OSError):
                    path.unlink()

    def _busy(self) -> InputError:
        owner = self._owner_of(self._top())
        told = f"{owner.who or 'somebody'} on {owner.machine}, {owner.at}" if owner else "somebody"
        what = f"another save is going on there ({told})"
        return InputError.single(what, str(self._place.parent), "Try again in a minute.")


def _owner(who: str) -> Owner:
    pid = os.getpid()
    at = datetime.now(UTC).isoformat(timespec="seconds")
    return Owner(who, platform.node(), _this_machine(), pid, started(pid), at)


@cache
def _this_machine() -> str:
    """Return what tells this run of this machine apart; a container counts as one."""
    try:
        boot = Path("/proc/sys/kernel/random/boot_id").read_text("ascii").strip()
        return f"{platform.node()} {boot} {Path('/proc/self/ns/pid').readlink()}"
    except OSError:
        return f"{platform.node()} {uuid.getnode():x}"
