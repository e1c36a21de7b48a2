"""Plug in and listen: left and right, polarity, the microphone; quietly first."""

from collections.abc import Iterator

from planner.drawing.looks import PRINT
from planner.drawing.marks import mark
from planner.model.signals import channel_of
from planner.sheet.block import Block, moved
from planner.sheet.end_page.rich import rich_lines
from planner.sheet.leaf import Making
from planner.sheet.lettering import HEAD, say, tick_box
from planner.sheet.paper import HALF_WIDTH
from planner.sheet.proving.panel import TICK, TOP, title
from planner.sheet.stack import Part, piled

_INDENT = 880.0


def listen_blocks(making: Making) -> Iterator[Block]:
    """Yield the tests by ear that suit the channels of the lead."""
    words = making.words
    caution, used = rich_lines((_INDENT, 400), words("proving.loud"), HALF_WIDTH - _INDENT)
    sign = mark("caution", (310, 310), 290, PRINT)
    parts: list[Part] = [((*sign, *caution), max(used + 130, 700))]
    parts += [_test(name, text) for name, text in _tests(making)]
    if _stereo(making):
        said, height = rich_lines((0, 380), words("proving.reversed"), HALF_WIDTH)
        parts.append((said, height + 60))
    items, height = piled(parts)
    head = title(making, "listen", HALF_WIDTH)
    yield Block((*head, *moved(items, (0, TOP))), TOP + height)


def channels(making: Making) -> frozenset[str]:
    """Return the channels that the lead carries; an unbound one is empty."""
    found = {channel_of(one) for signals in making.wiring.signals.values() for one in signals}
    legs = {one for signals in making.wiring.signals.values() for one in signals}
    return frozenset(found if legs & {"+", "-"} else found - {""})


def _stereo(making: Making) -> bool:
    return {"L", "R"} <= channels(making)


def _tests(making: Making) -> Iterator[tuple[str, str]]:
    words, found = making.words, channels(making)
    for channel, key in (("L", "left"), ("R", "right")):
        if channel in found and _stereo(making):
            at = _where(making, channel)
            yield words(f"proving.{key}"), words(f"proving.play_{key}", where=at)
    if "L" in found and not _stereo(making):
        yield words("proving.ear"), words("proving.play_ear")
    if "mic" in found:
        yield words("proving.mic"), words("proving.speak")
    numbered = sorted(channel for channel in found if channel.isdigit())
    if numbered:
        yield (
            words("proving.circuits"),
            words("proving.play_circuits", first=numbered[0], last=numbered[-1]),
        )
    if "" in found and not found - {""}:
        yield words("proving.line"), words("proving.play_line")
    text = "play_mono" if _stereo(making) else "play_polarity"
    yield words("proving.polarity"), words(f"proving.{text}")


def _where(making: Making, channel: str) -> str:
    """Name the end that a channel comes out of, or its side where one end has both."""
    ends = [end for end in making.plan.ends if end.channel == channel]
    if len(ends) == 1:
        return making.words("proving.out_of_end", end=ends[0].id)
    return making.words("proving.out_of_left" if channel == "L" else "proving.out_of_right")


def _test(name: str, text: str) -> Part:
    box = tick_box((0, 60), TICK)
    items = (box, say((_INDENT, 400), name, HEAD, bold=True))
    said, used = rich_lines((_INDENT, 880), text, HALF_WIDTH - _INDENT)
    return (*items, *said), 560 + used + 40
