"""Whether the parts that are on before a joint find room on the cable while it is soldered."""

from collections.abc import Sequence
from dataclasses import dataclass

from planner.dryfit.routes import Resting

# Heat-shrink nearer to the iron begins to shrink. Common practice, no source.
FROM_IRON_MM = 50.0


@dataclass(frozen=True, slots=True)
class Parking:
    """The row in which parts wait on a section while the joints of an end are made.

    `uses` are the parts of the row, the nearest to the end first; `needs_mm` is how far it reaches
    from the cable's end, heat-shrink clear of the iron; `has_mm` is the section's length.
    """

    end: str
    section: str
    uses: tuple[str, ...]
    needs_mm: float
    has_mm: float

    @property
    def fits(self) -> bool:
        """Whether the row is no longer than the section."""
        return self.needs_mm <= self.has_mm


def row_mm(row: Sequence[Resting]) -> float:
    """Return how far parts in a row reach from the cable's end, the nearest first, mm."""
    reach = 0.0
    for it in row:
        start = max(reach, FROM_IRON_MM) if it.part.kind == "heat-shrink" else reach
        reach = start + it.length_mm
    return reach
