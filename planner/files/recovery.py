"""Copies kept while plans are open, and finding those that a killed process left behind."""

import datetime as dt
import os
import uuid
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from planner.files.atomic import write_atomic
from planner.files.folders import recovery_folder
from planner.files.json_text import json_text
from planner.files.plans import plan_from, plan_values
from planner.files.processes import is_running, started
from planner.files.syntax import read_json
from planner.model.plan import Plan
from planner.problem import InputError, reason_of

_FORMAT = "cupwright-recovery"


def _now() -> dt.datetime:
    return dt.datetime.now(dt.UTC)


@dataclass(frozen=True, slots=True)
class Snapshot:
    """One copy left behind: where it lies, the plan's own file (or None), when it was kept."""

    path: Path
    original: Path | None
    kept_at: dt.datetime
    title: str

    def plan(self) -> Plan:
        """Read the plan in it; InputError if it is not valid."""
        return plan_from(read_json(self.path)["plan"], self.path)

    def discard(self) -> None:
        """Delete the copy; one that is gone already is no error."""
        with suppress(OSError):
            self.path.unlink(missing_ok=True)


class Keeper:
    """Keep a copy of one open plan, so that a kill loses no more than since the last `keep`."""

    def __init__(self, folder: Path | None = None, clock: Callable[[], dt.datetime] = _now) -> None:
        self._pid = os.getpid()
        self._folder = folder or recovery_folder()
        self._path = self._folder / f"{self._pid}-{uuid.uuid4().hex[:8]}.json"
        self._clock = clock
        self._kept: tuple[Plan, Path | None] | None = None

    def keep(self, plan: Plan, original: Path | None = None) -> None:
        """Write a copy unless nothing changed since; InputError if it can't be written."""
        if self._kept == (plan, original):
            return
        try:
            self._folder.mkdir(parents=True, exist_ok=True, mode=0o700)
        except OSError as error:
            raise InputError.single(
                f"the folder can't be made: {reason_of(error)}",
                str(self._folder),
                "Save the plan by hand; no copy is kept.",
            ) from error
        write_atomic(self._path, self._bytes(plan, original))
        self._kept = (plan, original)

    def drop(self) -> None:
        """Delete the copy: the plan is saved or closed."""
        self._kept = None
        with suppress(OSError):
            self._path.unlink(missing_ok=True)

    def _bytes(self, plan: Plan, original: Path | None) -> bytes:
        values = {
            "format": _FORMAT,
            "version": 1,
            "pid": self._pid,
            "started": started(self._pid),
            "kept_at": self._clock().isoformat(timespec="seconds"),
            "original": str(original.absolute()) if original else "",
            "plan": plan_values(plan),
        }
        return json_text(values).encode()


def left_behind(folder: Path | None = None) -> tuple[Snapshot, ...]:
    """Return the copies whose process no longer runs, the latest first; unreadable ones stay."""
    place = folder or recovery_folder()
    found = [_snapshot(path) for path in sorted(place.glob("*.json"))]
    return tuple(
        sorted((one for one in found if one), key=lambda one: (one.kept_at, one.path), reverse=True)
    )


def _snapshot(path: Path) -> Snapshot | None:
    try:
        values = read_json(path)
        if values.get("format") != _FORMAT or is_running(values["pid"], values["started"]):
            return None
        return Snapshot(
            path=path,
            original=Path(values["original"]) if values["original"] else None,
            kept_at=dt.datetime.fromisoformat(values["kept_at"]),
            title=_title(values["plan"]),
        )
    except (InputError, KeyError, TypeError, ValueError):
        return None


def _title(plan: dict[str, Any]) -> str:
    title = plan.get("title", "")
    return title if isinstance(title, str) else ""
