"""The panels that are not an end: cable, pinouts and their sources, remarks, care, check bar."""

from collections.abc import Iterator

from planner.drawing.metrics import wrapped
from planner.drawing.primitives import DrawList
from planner.model.pinout import PinoutRecord
from planner.model.plan import Plan
from planner.sheet.badge import badge
from planner.sheet.block import Block
from planner.sheet.lettering import BODY, say
from planner.sheet.paper import HALF_WIDTH
from planner.sheet.stack import Part, joined, sentences, stacked

SOURCE_WORDS = {
    "standard": "Standard",
    "drawing": "Maker's drawing",
    "letter": "Letter",
    "measured": "Measured",
    "practice": "Common practice, no standard",
    "hearsay": "Hearsay",
    "memory": "From memory",
}
TRUST_WORDS = {
    "hearsay": "only told",
    "documented": "written down",
    "confirmed": "confirmed on the part",
    "confirmed-by-two": "confirmed on the part by two",
}


def pinout_blocks(plan: Plan, room: float) -> Iterator[Block]:
    """Say for each pinout whose word it rests on, and how far it is confirmed."""
    parts = [_pinout(record, ends) for record, ends in _records(plan)]
    parts = parts or list(sentences([("No pinout is chosen.", False)], HALF_WIDTH))
    yield from stacked(
        "Pinouts: who says so", parts, room=room, goes_on="Pinouts: who says so, going on"
    )


def _records(plan: Plan) -> list[tuple[PinoutRecord, list[str]]]:
    found: dict[str, tuple[PinoutRecord, list[str]]] = {}
    for end in plan.ends:
        record = plan.pinout_of(end.id)
        if record is not None:
            found.setdefault(record.id, (record, []))[1].append(end.id)
    return list(found.values())


def _pinout(record: PinoutRecord, ends: list[str]) -> Part:
    shown = ends if len(ends) <= 3 else [ends[0], "\u2026", ends[-1]]
    items: list[DrawList] = []
    x = 0.0
    for name in shown:
        drawn, width = badge(name, (x, 0), 460)
        items.append(drawn)
        x += width + 80
    x += 70
    lines = [(line, True) for line in wrapped(record.title, BODY, HALF_WIDTH - x, bold=True)]
    lines += [(line, False) for line in wrapped(_source(record), BODY, HALF_WIDTH - x)]
    trust = TRUST_WORDS[record.trust]
    sure = (
        f"So far {trust}."
        if record.confirmed
        else f"NOT CONFIRMED, only {trust.removeprefix('only ')}. Measure the part."
    )
    lines += [
        (line, not record.confirmed) for line in wrapped(sure, BODY, HALF_WIDTH - x, bold=True)
    ]
    for place, (text, bold) in enumerate(lines):
        items.append((say((x, 360 + 450 * place), text, bold=bold),))
    height = 450 * len(lines) + 200
    return joined(items), height


def _source(record: PinoutRecord) -> str:
    words = SOURCE_WORDS[record.source.kind]
    parts = [part for part in (record.source.reference, record.source.date) if part]
    by = f"recorded by {record.source.recorded_by}" if record.source.recorded_by else ""
    parts += [by] if by else []
    return f"{words}: {', '.join(parts)}" if parts else words


def remarks_blocks(plan: Plan, room: float) -> Iterator[Block]:
    """Print the plan's remarks, if there are any."""
    lines = (
        (line, False)
        for text in plan.remarks.splitlines()
        for line in wrapped(text, BODY, HALF_WIDTH)
    )
    yield from stacked(
        "Remarks", tuple(sentences(lines, HALF_WIDTH)), room=room, goes_on="Remarks, going on"
    )
