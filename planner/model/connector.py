"""A connector's hardware: contacts and terminals, shell, clamp, barrel. No signals here.

All positions in a record are mm on the solder side: x right, y up, z towards the cable, origin on
the plug's axis. A file drawn from the mating side is mirrored on reading (see planner.files).
"""

from functools import cached_property
from typing import Literal

from pydantic import Field, ValidationInfo, field_validator, model_validator
from pydantic_core import PydanticKnownError

from planner.model.base import Ident, Line, Paragraph, Record, Revision
from planner.model.source import MOST_DOCUMENTS, Document, Retired
from planner.model.tracing import Tracing

Side = Literal["solder", "mating", "unstated"]
TerminalKind = Literal["cup", "lug", "post"]
FigureGroup = Literal["numbering", "positions", "terminals", "shell", "clamp", "barrel"]
FigureKind = Literal["standard", "computed", "measured", "memory"]


class Terminal(Record):
    """Where a conductor is soldered.

    `bore_mm` is the inside diameter of a cup; `width_mm` the width of a lug or post. `depth_mm`
    is a cup's depth, or the length of a lug along its direction. `opening_deg` is the direction,
    counter-clockwise from x, in which a cup's cut-away faces or a lug points from its root.
    """

    kind: TerminalKind
    x_mm: float = Field(ge=-100, le=100)
    y_mm: float = Field(ge=-100, le=100)
    z_mm: float = Field(default=0.0, ge=-100, le=100)
    bore_mm: float = Field(default=0.0, ge=0, le=20)
    width_mm: float = Field(default=0.0, ge=0, le=30)
    depth_mm: float = Field(gt=0, le=50)
    opening_deg: float = Field(default=90.0, ge=-360, le=360)
    takes: int = Field(default=1, ge=1, le=12)

    @property
    def across_mm(self) -> float:
        """The bore of a cup, the width of a lug or post, in mm."""
        return self.bore_mm if self.kind == "cup" else self.width_mm

    @model_validator(mode="after")
    def _has_a_width(self) -> "Terminal":
        if self.across_mm <= 0:
            field = "bore_mm" if self.kind == "cup" else "width_mm"
            msg = f"a {self.kind} needs {field} above zero"
            raise ValueError(msg)
        return self


class Contact(Record):
    """One contact: `id` is short (T, R1, 3), `name` as spoken (tip), `moulded` as on the part."""

    id: Ident
    name: Line = ""
    moulded: Line = ""
    terminal: Terminal

    @property
    def spoken(self) -> str:
        """The name as spoken: `ring 1`, or `pin 3` where there is only a number."""
        return self.name or f"pin {self.id}"


class Shell(Record):
    """The shell's inside: a round bore, or a D (or oblong) of `width_mm` by `height_mm`.

    A round shell needs `bore_mm`; a D has none, and one that is given plays no part.
    """

    shape: Literal["round", "d"] = "round"
    bore_mm: float = Field(default=0.0, le=100, json_schema_extra={"minimum": 0})
    width_mm: float = Field(default=0.0, ge=0, le=200)
    height_mm: float = Field(default=0.0, ge=0, le=200)

    @field_validator("bore_mm")
    @classmethod
    def _bore_above_zero(cls, bore_mm: float, info: ValidationInfo) -> float:
        # Not `gt` on the field: a D that is read again brings the 0 that it was given by default.
        if bore_mm < 0 or (bore_mm == 0 and info.data.get("shape") != "d"):
            raise PydanticKnownError("greater_than", {"gt": 0})
        return bore_mm

    @model_validator(mode="after")
    def _has_sizes(self) -> "Shell":
        if self.shape == "round" and self.bore_mm <= 0:
            msg = "a round shell needs bore_mm above zero"
            raise ValueError(msg)
        if self.shape == "d" and (self.width_mm <= 0 or self.height_mm <= 0):
            msg = "a D shell needs width_mm and height_mm above zero"
            raise ValueError(msg)
        return self

    @property
    def narrowest_mm(self) -> float:
        """How far across it is where it is narrowest: the bore, or the lesser side of a D, mm."""
        return self.bore_mm if self.shape == "round" else min(self.width_mm, self.height_mm)


class Clamp(Record):
    """Which jacket diameters the clamp grips, mm."""

    min_mm: float = Field(gt=0, le=100)
    max_mm: float = Field(gt=0, le=100)

    @model_validator(mode="after")
    def _in_order(self) -> "Clamp":
        if self.min_mm > self.max_mm:
            msg = f"the clamp's min_mm {self.min_mm} is above its max_mm {self.max_mm}"
            raise ValueError(msg)
        return self


class Barrel(Record):
    """The barrel: outside diameter, the bore that the cores pass, length, mm."""

    outside_mm: float = Field(gt=0, le=200)
    bore_mm: float = Field(gt=0, le=200)
    length_mm: float = Field(gt=0, le=300)


class FigureBasis(Record):
    """What a group of figures rests on; `memory` means: measure it on the part in hand."""

    figures: FigureGroup
    kind: FigureKind
    reference: Line = ""


class Connector(Record):
    """One connector's hardware."""

    id: Ident
    revision: Revision = 1
    title: Line = Field(min_length=1)
    family: Ident
    gender: Literal["male", "female"]
    size: Line = ""
    maker: Line = ""
    remarks: Paragraph = ""
    drawn_from: Side = "unstated"
    mating: Literal["through", "concentric"] = "through"
    shell: Shell
    clamp: Clamp
    barrel: Barrel
    contacts: tuple[Contact, ...] = Field(min_length=1, max_length=256)
    basis: tuple[FigureBasis, ...] = ()
    tracing: Tracing | None = None
    documents: tuple[Document, ...] = Field(default=(), max_length=MOST_DOCUMENTS)
    retired: Retired | None = None

    @model_validator(mode="after")
    def _contacts_are_unique(self) -> "Connector":
        seen: set[str] = set()
        for contact in self.contacts:
            if contact.id.lower() in seen:
                msg = f"contact {contact.id!r} stands twice"
                raise ValueError(msg)
            seen.add(contact.id.lower())
        return self

    @property
    def poles(self) -> int:
        """How many contacts there are."""
        return len(self.contacts)

    @cached_property
    def by_id(self) -> dict[str, Contact]:
        """Contacts by id."""
        return {contact.id: contact for contact in self.contacts}

    def find(self, typed: str) -> Contact | None:
        """Find a contact by what a person types: id, moulded mark or name, in any case."""
        wanted = typed.strip().lower()
        for contact in self.contacts:
            names = {contact.id, contact.moulded, contact.name, contact.name.replace(" ", "")}
            if wanted and wanted in {name.lower() for name in names}:
                return contact
        return None

    def to_measure(self) -> tuple[FigureGroup, ...]:
        """Which figures come from memory and are to be measured on the part."""
        return tuple(basis.figures for basis in self.basis if basis.kind == "memory")
