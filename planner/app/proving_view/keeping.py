"""The unit under way on disk, so that a kill loses no reading; it goes with the record."""

import hashlib
import logging
from contextlib import suppress
from pathlib import Path
from typing import TYPE_CHECKING

from planner.app.proving_view.under_way import UnderWay
from planner.files.atomic import write_atomic
from planner.files.definitions import validated
from planner.files.folders import recovery_folder
from planner.files.limits import PLAN_BYTES, read_text
from planner.files.plans import plan_digest
from planner.files.syntax import parse_json
from planner.problem import InputError

if TYPE_CHECKING:
    from planner.model.plan import Plan

log = logging.getLogger(__name__)


def key_of(plan: "Plan", path: Path | None) -> str:
    """Return what the readings of a plan are kept under: its file, else what is in it."""
    return f"file {path.absolute()}" if path is not None else f"plan {plan_digest(plan)}"


def kept_path(key: str) -> Path:
    """Return where a unit under way is kept."""
    name = hashlib.sha256(key.encode()).hexdigest()[:32]
    return recovery_folder() / "units" / f"{name}.json"


def keep(key: str, unit: UnderWay) -> str:
    """Keep a unit; return why it could not be, or nothing."""
    path = kept_path(key)
    try:
        path.parent.mkdir(parents=True, exist_ok=True, mode=0o700)
        write_atomic(path, unit.model_dump_json(exclude_defaults=True).encode())
    except (InputError, OSError) as error:
        log.info("a unit under way was not kept: %s", error)
        return "The readings can\u2019t be kept for recovery: finish the unit soon."
    return ""


def kept(key: str) -> UnderWay | None:
    """Return the unit that was under way; None where there is none, or it can't be read."""
    path = kept_path(key)
    if not path.is_file():
        return None
    try:
        return validated(UnderWay, parse_json(read_text(path, PLAN_BYTES), path), path)
    except InputError as error:
        log.info("a unit under way was not read: %s", error)
        return None


def drop(key: str) -> None:
    """Forget the unit that was under way."""
    with suppress(OSError):
        kept_path(key).unlink(missing_ok=True)
