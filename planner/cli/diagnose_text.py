"""A diagnosis as text of 80 columns: what is wrong, where to look, what to read next."""

import textwrap
from collections.abc import Iterable, Iterator

from planner.cli.output import WIDTH
from planner.proving.diagnosing import Diagnosis, Explanation
from planner.proving.reading import Readings

_LEFT = 9
_VERDICTS = {
    "sound": "SOUND: everything that was to be read was read, and all of it is as planned.",
    "faulty": "FAULT FOUND.",
    "incomplete": "NOT DONE YET: what was read is as planned, but not all was read.",
}
_CAUTION = (
    "Unplug every end before you measure or mend. The iron is hot: keep out of its fumes, wash "
    "your hands after solder with lead; local rules and a competent person come first."
)


def diagnosis_text(
    title: str, readings: Readings, found: Diagnosis, reach: Iterable[str] = ()
) -> str:
    """Return a diagnosis, no line wider than 80 columns; `reach` is what its pairs don't see."""
    count = len(readings.by_pair)
    unseen = dict.fromkeys((*found.unseen, *reach))
    lines = [
        *textwrap.wrap(title, WIDTH),
        f"{count} reading{'s' * (count != 1)}. Unread: {_unread(found)}.",
        "",
        *textwrap.wrap(_VERDICTS[found.verdict], WIDTH),
        *_explanations(found),
        *_high_joints(found),
        *_section("contradiction", (it.words for it in found.contradictions)),
        *_section("remark", found.remarks),
    ]
    if found.next_probe is not None:
        lines += ["", *_row("next", found.next_probe.words)]
    if found.look:
        lines += ["", *_row("look", found.look)]
    if found.verdict != "sound":
        lines += ["", *_row("care", _CAUTION)]
    lines += ["", "A meter cannot see:", *(line for it in unseen for line in _row("", it))]
    return "\n".join(lines)


def _unread(found: Diagnosis) -> str:
    if not (found.unread_continuity or found.unread_isolation):
        return "nothing"
    return f"{found.unread_continuity} for continuity, {found.unread_isolation} for isolation"


def _explanations(found: Diagnosis) -> Iterator[str]:
    if not found.explanations:
        return
    yield ""
    yield from textwrap.wrap(_how_many(found), WIDTH)
    for explanation in found.explanations:
        yield ""
        yield from _explanation(explanation)
    if found.more:
        least = "" if found.counted else "at least "
        yield ""
        yield f"and {least}{found.more} more of {found.cost} fault{'s' * (found.cost != 1)}."


def _how_many(found: Diagnosis) -> str:
    faults = f"{found.cost} fault{'s' * (found.cost != 1)}"
    if found.proved:
        return f"The readings take {faults} at least; likeliest first:"
    return f"{faults} explain the readings; whether fewer do is not proved. Likeliest first:"


def _explanation(explanation: Explanation) -> Iterator[str]:
    head = f"{explanation.likelihood:.0%}"
    for fault in explanation.faults:
        yield from _row(head, fault.words[:1].upper() + fault.words[1:] + ".")
        yield from _row("", fault.look)
        head = "and"


def _high_joints(found: Diagnosis) -> Iterator[str]:
    for joint in found.high_joints:
        yield ""
        words = joint.fault.words
        yield from _row("high", f"{words[:1].upper()}{words[1:]}.")
        yield from _row("", joint.fault.look)


def _section(head: str, texts: Iterator[str] | tuple[str, ...]) -> Iterator[str]:
    for text in texts:
        yield ""
        yield from textwrap.wrap(f"{head}: {text}", WIDTH, subsequent_indent=" " * _LEFT)


def _row(head: str, text: str) -> list[str]:
    return textwrap.wrap(
        text, WIDTH, initial_indent=f"{head:>{_LEFT - 2}}  ", subsequent_indent=" " * _LEFT
    )
