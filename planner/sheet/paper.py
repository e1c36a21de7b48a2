"""Paper sizes and the grid of a page, in 0.01 mm."""

from dataclasses import dataclass
from typing import Literal

PaperName = Literal["a4", "letter"]
MM = 100.0
LIVE_WIDTH = 190 * MM
COLUMN_GAP = 6 * MM
HALF_WIDTH = (LIVE_WIDTH - COLUMN_GAP) / 2


@dataclass(frozen=True, slots=True)
class Paper:
    """One size of paper; the columns are the same on each, only margins and height differ."""

    name: str
    width: float
    height: float

    @property
    def left(self) -> float:
        """The left edge of the live width."""
        return (self.width - LIVE_WIDTH) / 2

    @property
    def right(self) -> float:
        """The right edge of the live width."""
        return self.left + LIVE_WIDTH

    @property
    def body_top(self) -> float:
        """Where the body starts, under the way bar."""
        return 42 * MM

    @property
    def body_bottom(self) -> float:
        """Where the body ends, above the foot."""
        return self.height - 12 * MM

    @property
    def foot_rule(self) -> float:
        """The level of the rule over the foot."""
        return self.height - 10.4 * MM

    @property
    def foot_line(self) -> float:
        """The baseline of the foot."""
        return self.height - 7 * MM


# A4: ISO 216. Letter: ANSI/ASME Y14.1 size A, 8.5 by 11 inches.
PAPERS: dict[str, Paper] = {
    "a4": Paper("A4", 210 * MM, 297 * MM),
    "letter": Paper("Letter", 215.9 * MM, 279.4 * MM),
}
