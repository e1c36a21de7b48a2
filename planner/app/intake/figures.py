"""Fields for lengths, angles and counts of a draft: read in the builder's units, told if wrong."""

from collections.abc import Callable

from planner.app.panels.widgets.fields import Field
from planner.intake.shaping import DIGITS
from planner.units import number, parse_figure, parse_length_mm, rounded

NAMES = 128


class FigureField(Field):
    """A field of one figure; `take` gets it and returns why it was refused, or nothing."""

    def __init__(
        self, name: str, take: Callable[[float], str], *, unit: str = "mm", tip: str = ""
    ) -> None:
        self._unit, self._take = unit, take
        super().__init__(f"{name}, {unit}" if unit else name, self._read, tip, NAMES)
        self.line.setAccessibleName(name)

    def show_figure(self, value: float | None) -> None:
        """Show a figure; None shows nothing, for a choice that differs."""
        self.show_text("" if value is None else number(value, 3))

    def _read(self, typed: str) -> str:
        try:
            value = rounded(self._value(typed), DIGITS)
        except ValueError as error:
            return f"{error}."
        return self._take(value)

    def _value(self, typed: str) -> float:
        if self._unit == "mm":
            signed = typed.strip().replace("\u2212", "-")
            length = parse_length_mm(signed.lstrip("-"))
            return -length if signed.startswith("-") else length
        return parse_figure(typed, self._unit) if self._unit else parse_figure(typed)
