"""Which units the builder reads first; lengths and sizes are printed by it."""

from dataclasses import dataclass

from planner.units import length_text, number, size_text


@dataclass(slots=True)
class ShownUnits:
    """`gauge` is `mm2` or `awg`; `length` is `mm` or `inch`."""

    gauge: str = "mm2"
    length: str = "mm"

    def size(self, area_mm2: float) -> str:
        """Print a conductor's size in both units, the preferred one first."""
        return size_text(area_mm2, self.gauge)

    def length_of(self, length_mm: float) -> str:
        """Print a cable length."""
        return length_text(length_mm, self.length)

    def small(self, figure_mm: float) -> str:
        """Print a figure of a part: mm, with inches behind where those are read first."""
        text = f"{number(figure_mm)} mm"
        return f"{text} ({length_text(figure_mm, 'inch')})" if self.length == "inch" else text
