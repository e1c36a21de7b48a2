"""Signals as they are typed or stand in a letter: `L+`, `left plus`, `return`, `screen`."""

import re

from planner.model.signals import CHANNELS, sort_key
from planner.problem import EditRefused, did_you_mean
from planner.units import MINUS

_CHANNELS = {"left": "L", "right": "R", "l": "L", "r": "R", "mic": "mic", "microphone": "mic"} | {
    name: name for name in CHANNELS if name.isdigit()
}
_LEGS = {"+": "+", "plus": "+", "hot": "+", "-": "-", "minus": "-", "cold": "-"}
_GROUNDS = {
    "shield": "shield",
    "screen": "shield",
    "braid": "shield",
    "chassis": "chassis",
    "shell": "chassis",
}
_WHOLE = {"return": ("L-", "R-"), "common": ("L-", "R-"), "": (), "unused": (), "nothing": ()}
_RETURNS = frozenset({"return", "common"})
_SHORT = re.compile(r"^(l|r|mic|[1-8])?([+-])$")
_SPLIT = re.compile(r"[,;/]|\s+and\s+")


def signals_from(text: str) -> tuple[str, ...]:
    """Return the signals that a text names, in order; EditRefused with what may be written.

    Several are parted by commas or spaces. `return` is the joined return, L- and R-;
    after a channel, as in `mic return`, it is that channel's own.
    """
    found: set[str] = set()
    for piece in _SPLIT.split(text.replace(MINUS, "-").casefold()):
        found |= _of_piece(piece.strip())
    return tuple(sorted(found, key=sort_key))


def _of_piece(piece: str) -> set[str]:
    if piece in _WHOLE:
        return set(_WHOLE[piece])
    found: set[str] = set()
    words = piece.split()
    while words:
        found |= _take(words)
    return found


def _take(words: list[str]) -> set[str]:
    """Take one signal off the front of the words."""
    word = words.pop(0)
    short = _SHORT.match(word)
    if short:
        channel = _CHANNELS.get(short[1] or "", "")
        return {channel + short[2]}
    if word in _GROUNDS:
        return {_GROUNDS[word]}
    if word in _WHOLE:
        return set(_WHOLE[word])
    channel = _CHANNELS.get(word, "")
    if channel and words and words[0] in _RETURNS:
        words.pop(0)
        return {f"{channel}-"}
    leg = words[0] if words and words[0] in _LEGS else ""
    if channel and leg:
        return {channel + _LEGS[words.pop(0)]}
    if word in _LEGS:
        return {_LEGS[word]}
    if channel:
        raise EditRefused(
            f"{word!r} does not say which leg it is", f"Write {channel}+ or {channel}-."
        )
    known = [*_CHANNELS, *_GROUNDS, "return", "L+", "L-", "R+", "R-"]
    raise EditRefused(f"{word!r} is no signal", did_you_mean(word, known))
