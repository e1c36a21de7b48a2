"""The panels that are not an end: cable, pinouts and their sources, remarks, care, check bar."""

from collections.abc import Iterator

from planner.drawing.metrics import wrapped
from planner.drawing.primitives import DrawList, Rect, Style
from planner.model.pinout import PinoutRecord
from planner.model.plan import Plan, Section
from planner.sheet.badge import badge
from planner.sheet.block import Block
from planner.sheet.lettering import BODY, INK, PAPER, THIN, say, say_runs
from planner.sheet.paper import HALF_WIDTH, LIVE_WIDTH, MM
from planner.sheet.splits import split_lines
from planner.sheet.stack import Part, joined, sentences, stacked
from planner.units import length_text

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
CARE = (
    "Iron tip and joints: hot. Put the iron in its stand.",
    "Draw off the fumes. Keep your head clear.",
    "Solder may hold lead: wash hands, then eat.",
    "Unplug all ends, then test.",
    "Local rules and a competent person come first.",
)


def cable_blocks(plan: Plan, room: float) -> Iterator[Block]:
    """Say which cable runs where, how long each section is, and what is spliced in a split."""
    lines = [(text, False) for text in dict.fromkeys(map_sections(plan))]
    lines += [(text, True) for text in split_lines(plan)]
    parts = tuple(sentences(lines or [("No cable is chosen.", False)], HALF_WIDTH))
    yield from stacked("Cable", parts, room=room, goes_on="Cable, going on")


def map_sections(plan: Plan) -> Iterator[str]:
    """Yield a sentence on each section; alike legs give one sentence."""
    alike: dict[tuple[str, str, float], list[str]] = {}
    for section in plan.sections:
        words = _cable_words(plan, section)
        alike.setdefault((words, section.near, section.length_mm), []).append(section.far)
    for (words, near, length_mm), far in alike.items():
        reach = (
            f"{near} to {', '.join(far)}"
            if len(far) < 4
            else f"{near} to {far[0]} \u2026 {far[-1]}"
        )
        each = f" each of {len(far)}" if len(far) > 1 else ""
        yield f"{reach}: {length_text(length_mm)}{each}, {words}"


def _cable_words(plan: Plan, section: Section) -> str:
    cable = plan.cable_of(section.id)
    if section.fan_of:
        return "cores out of the jacket"
    if cable is None:
        return "no cable chosen"
    spool = f", {cable.spool}" if cable.spool else ""
    return f"{cable.title}{spool}"


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


def care_blocks(room: float) -> Iterator[Block]:
    """Say the usual cautions."""
    lines = tuple(sentences(((line, False) for line in CARE), HALF_WIDTH))
    yield from stacked("Take care", lines, room=room, goes_on="Take care, going on")


def check_bar() -> Block:
    """Draw a bar of exactly 100 mm, to tell a page that was scaled in printing."""
    x = LIVE_WIDTH - 100 * MM
    frame = Rect((x, 100), 100 * MM, 400, Style(fill=PAPER, stroke=INK, width=THIN))
    cells = tuple(
        Rect((x + 20 * MM * place, 100), 10 * MM, 400, Style(fill=INK)) for place in range(5)
    )
    runs = (("Check bar: measure it. Not ", False), ("100 mm", True), ("? Print again.", False))
    return Block((frame, *cells, *say_runs((0, 430), runs)), 500, full=True)
