"""How a step is drawn in the list: stage over the first, number, words, the state of the iron."""

from dataclasses import dataclass

from planner.drawing.looks import Look
from planner.drawing.primitives import DrawList, Poly, Rect, Style, Text, centred_baseline
from planner.drawing.rich import Type, lines_of, rich_text
from planner.markup import unmarked

_SIZE, _PITCH, _PAD = 13.0, 18.0, 6.0
# Discs of 18 px: a figure of two digits is then 12 px.
_TYPE = Type(_SIZE, _PITCH, disc=9.0)
_STAGE, _NUMBER_RIGHT, _TEXT_X = 34.0, 34.0, 44.0
_BAR = 54.0
_HEATS = {"cold": "COLD", "hot": "HOT", "close": "CLOSE"}


@dataclass(frozen=True)
class StepRow:
    """One step: its number and words; `stage` where a stage begins, `heat` where a state does."""

    id: str
    number: int
    text: str
    heat: str
    stage: str = ""
    begins_heat: bool = False

    @property
    def said(self) -> str:
        """The row as it is read aloud."""
        heat = f", iron {_HEATS[self.heat].lower()}" if self.heat in _HEATS else ""
        begun = f"{self.stage}: " if self.stage else ""
        return f"{begun}{self.number}, {unmarked(self.text)}{heat}"


def row_high(row: StepRow, width: float) -> int:
    """Return how high a row is at a width, px."""
    count = max(len(lines_of(row.text, _room(width), _TYPE)), 1)
    return round(count * _PITCH + 2 * _PAD + (_STAGE if row.stage else 0))


def stage_high(row: StepRow) -> int:
    """Return how high the head of a stage over the row is, px."""
    return round(_STAGE) if row.stage else 0


def _room(width: float) -> float:
    return max(width - _TEXT_X - _BAR - 16, 60)


def step_items(row: StepRow, width: float, look: Look) -> DrawList:
    """Draw one row, `width` px wide."""
    top = _STAGE if row.stage else 0.0
    high = row_high(row, width)
    base = centred_baseline(top + _PAD + _PITCH / 2, _SIZE)
    return (
        *(_stage(row.stage, width, look) if row.stage else ()),
        Text((_NUMBER_RIGHT, base), str(row.number), 15.0, look.ink, bold=True, anchor="end"),
        *rich_text((_TEXT_X, base), row.text, _room(width), _TYPE, look)[0],
        *_heat(row, width, top, high, look),
    )


def _stage(words: str, width: float, look: Look) -> DrawList:
    line = Poly(((8, _STAGE - 2), (width - 8, _STAGE - 2)), Style(stroke=look.ink, width=1.5))
    return (Text((8, _STAGE - 10), words, 15.0, look.ink, bold=True), line)


def _heat(row: StepRow, width: float, top: float, high: float, look: Look) -> DrawList:
    """Draw the bar beside the words: hot is solid, so that it is told without its colour."""
    if row.heat not in _HEATS:
        return ()
    hot = row.heat == "hot"
    left, right = width - _BAR - 4, width - 4
    ground = Rect((left, top), right - left, high - top, Style(fill=look.ink))
    sides = Style(stroke=look.edge, width=1)
    bar: DrawList = (ground,) if hot else _sides(row, (left, right), (top, high), sides)
    if not row.begins_heat:
        return bar
    at = ((left + right) / 2, centred_baseline(top + _PAD + _PITCH / 2, 12.0))
    ink = look.paper if hot else look.ink
    return (*bar, Text(at, _HEATS[row.heat], 12.0, ink, bold=True, anchor="middle"))


def _sides(
    row: StepRow, across: tuple[float, float], down: tuple[float, float], pen: Style
) -> DrawList:
    """Draw the sides of an open bar, and its upper edge where it begins."""
    (left, right), (top, end) = across, down
    sides: DrawList = tuple(Poly(((x, top), (x, end)), pen) for x in across)
    return (*sides, Poly(((left, top), (right, top)), pen)) if row.begins_heat else sides
