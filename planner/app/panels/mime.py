"""What travels when a definition is dragged off the shelf."""

from dataclasses import dataclass
from typing import get_args

from PySide6.QtCore import QMimeData

from planner.model.definition import DefinitionKind

MIME = "application/x-cupwright-definition"


@dataclass(frozen=True, slots=True)
class Dragged:
    """The kind and id of a definition."""

    kind: DefinitionKind
    record_id: str


def make_mime(kind: DefinitionKind, record_id: str) -> QMimeData:
    """Pack the kind and id of a definition."""
    mime = QMimeData()
    mime.setData(MIME, f"{kind}/{record_id}".encode())
    return mime


def read_mime(mime: QMimeData) -> Dragged | None:
    """Unpack a definition's kind and id; None for anything else that is dragged in."""
    if not mime.hasFormat(MIME):
        return None
    kind, _, record_id = bytes(mime.data(MIME).data()).decode(errors="replace").partition("/")
    kinds = [known for known in get_args(DefinitionKind) if known == kind]
    return Dragged(kinds[0], record_id) if kinds and record_id else None
