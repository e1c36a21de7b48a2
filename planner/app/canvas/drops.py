"""What is dropped on the canvas from the shelf or from a folder."""

import math
from dataclasses import dataclass
from pathlib import Path

from PySide6.QtCore import QMimeData

from planner.app.panels.choosing import choosing, targets
from planner.app.panels.mime import read_mime
from planner.app.workbench import Workbench
from planner.drawing.bench import Bench
from planner.drawing.bench.shapes import Box
from planner.drawing.primitives import Point
from planner.model.cable import Cable
from planner.model.definition import Definition
from planner.model.place import Place


@dataclass(frozen=True, slots=True)
class DropPlace:
    """The end or the section that a record would go to, with its box on the bench."""

    key: str
    box: Box


def dropped_file(mime: QMimeData) -> Path | None:
    """Return the first local file among what is dragged in, or None."""
    files = (
        [url.toLocalFile() for url in mime.urls() if url.isLocalFile()] if mime.hasUrls() else []
    )
    return Path(files[0]) if files else None


def record_of(workbench: Workbench, mime: QMimeData) -> Definition | None:
    """Return the connector, pinout or cable that is dragged off the shelf."""
    dragged = read_mime(mime)
    if dragged is None or dragged.kind == "part":
        return None
    find = {
        "connector": workbench.library.connector,
        "pinout": workbench.library.pinout,
        "cable": workbench.library.cable,
    }[dragged.kind]
    found: Definition | None = find(dragged.record_id)
    return found


def _distance(box: Box, point: Point) -> float:
    x = min(max(point[0], box[0]), box[2])
    y = min(max(point[1], box[1]), box[3])
    return math.dist((x, y), point)


def place_for(
    workbench: Workbench, bench: Bench, record: Definition, at: Point
) -> DropPlace | None:
    """Return the end (for a cable: the section) nearest to a point that a record may go to."""
    boxes = {end: placed.box for end, placed in bench.ends.items()}
    if isinstance(record, Cable):
        boxes = {name: run.box for name, run in bench.sections.items()}
    open_to = {target.key for target in targets(workbench.plan, record)} & boxes.keys()
    best = min(open_to, key=lambda key: (_distance(boxes[key], at), key), default=None)
    return DropPlace(best, boxes[best]) if best is not None else None


def put(workbench: Workbench, record: Definition, key: str) -> bool:
    """Choose a record for an end or a section, as one undo step, and select that."""
    known = {target.key: target for target in targets(workbench.plan, record)}
    edit = choosing(workbench.plan, workbench.library, record, known[key])
    if not workbench.do(f"Choose {record.title} for {known[key].words}", edit):
        return False
    if isinstance(record, Cable):
        workbench.select(Place(), key)
    else:
        workbench.select(Place(end=key))
    return True
