"""What `identify` prints: what was found, its rivals, what to read next, what can't be told."""

import textwrap
from collections.abc import Iterable

from planner.cli.output import WIDTH
from planner.proving.identifying import (
    METER_CAUTION,
    Identified,
    SampleReadings,
    cautions,
    sentences,
)
from planner.units import number

_HAND = 3  # rivals that are printed; --json has them all


def identify_text(name: str, sample: SampleReadings, identified: Identified) -> str:
    """Return the report as lines of at most 80 characters."""
    pairs = len(sample.contacts) * (len(sample.contacts) - 1) // 2
    head = f"{name}: {len(sample.contacts)} contacts, {len(sample.seen)} of {pairs} pairs read"
    care = (METER_CAUTION, *cautions(identified))
    blocks = [head, _list(sentences(identified)), _rivals(identified), _list(care)]
    return "\n\n".join(block for block in blocks if block)


def _list(lines: Iterable[str]) -> str:
    return "\n".join(
        textwrap.fill(line, WIDTH, initial_indent="- ", subsequent_indent="  ") for line in lines
    )


def _rivals(identified: Identified) -> str:
    if not identified.rivals or identified.verdict == "too-little":
        return ""
    lines = [
        f"{it.words} (chi-square worse by {number(it.margin, 1)})"
        for it in identified.rivals[:_HAND]
    ]
    more = max(identified.ways - 1, len(identified.rivals)) - len(lines)
    title = "Other ways to understand it:"
    return f"{title}\n{_list(lines)}" + (f"\n- and {more} more" if more else "")
