"""Parts that are threaded or shrunk on: boots, barrels, shells, sleeves, heat-shrink, covers."""

from typing import Literal

from pydantic import Field

from planner.model.base import Ident, Line, Paragraph, Record, Revision


class Part(Record):
    """One part from the bins. Heat-shrink: `bore_mm` as supplied, `recovered_mm` after heating."""

    id: Ident
    revision: Revision = 1
    title: Line = Field(min_length=1)
    kind: Literal["boot", "shell", "liner", "clamp", "cover", "sleeve", "heat-shrink", "label"]
    maker: Line = ""
    bore_mm: float = Field(gt=0, le=100)
    recovered_mm: float = Field(default=0.0, ge=0, le=100)
    outside_mm: float = Field(gt=0, le=200)
    length_mm: float = Field(gt=0, le=500)
    opens: bool = False
    remarks: Paragraph = ""

    @property
    def ratio(self) -> float:
        """Bore as supplied over bore as recovered, 2 for 2:1; 0 for what does not shrink."""
        return self.bore_mm / self.recovered_mm if self.recovered_mm else 0.0
