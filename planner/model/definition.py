"""What the collection holds: the four kinds of definitions under one name."""

from typing import Literal

from planner.model.cable import Cable
from planner.model.connector import Connector
from planner.model.part import Part
from planner.model.pinout import PinoutRecord
from planner.model.source import Document

Definition = Connector | PinoutRecord | Cable | Part
DefinitionKind = Literal["connector", "pinout", "cable", "part"]
Shelf = Literal["connectors", "pinouts", "cables", "parts"]
# Under which name a plan keeps its copies of each kind.
SHELVES: dict[DefinitionKind, Shelf] = {
    "connector": "connectors",
    "pinout": "pinouts",
    "cable": "cables",
    "part": "parts",
}
_KIND_OF: dict[type, DefinitionKind] = {
    Connector: "connector",
    PinoutRecord: "pinout",
    Cable: "cable",
    Part: "part",
}


def kind_name(record: Definition) -> DefinitionKind:
    """Return the kind of a definition, as its file names it."""
    return _KIND_OF[type(record)]


def documents_of(record: Definition) -> tuple[Document, ...]:
    """Return the documents that a definition names; cables and parts name none."""
    return record.documents if isinstance(record, Connector | PinoutRecord) else ()


def is_retired(record: Definition) -> bool:
    """Tell whether a definition is to be used no more."""
    return isinstance(record, Connector | PinoutRecord) and record.retired is not None
