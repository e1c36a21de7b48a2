"""Signals: a channel and a leg (`L+`, `3-`, `mic+`), or `shield`, or `chassis`.

A one-channel connector's record says `+` and `-`; the end it is used at binds the channel.
"""

import re
from collections.abc import Iterable
from typing import Annotated

from pydantic import AfterValidator, WithJsonSchema

from planner.units import MINUS

CHANNELS = ("L", "R", *"12345678", "mic")
GROUNDS = frozenset({"shield", "chassis"})
_SHAPE = re.compile(r"^(?:(?:L|R|[1-8]|mic)?[+-]|shield|chassis)$")


def _check(text: str) -> str:
    if not _SHAPE.match(text):
        known = "L+, L-, R+, R-, 1+ to 8-, mic+, +, -, shield or chassis"
        msg = f"{text!r} is not a signal: write {known}"
        raise ValueError(msg)
    return text


Signal = Annotated[
    str, AfterValidator(_check), WithJsonSchema({"type": "string", "pattern": _SHAPE.pattern})
]


def channel_of(signal: str) -> str:
    """Return the channel of a signal: empty for an unbound leg and for grounds."""
    return "" if signal in GROUNDS else signal[:-1]


def leg_of(signal: str) -> str:
    """Return `+`, `-`, or empty for a ground."""
    return "" if signal in GROUNDS else signal[-1]


def is_ground(signal: str) -> bool:
    """Tell whether a signal is `shield` or `chassis`."""
    return signal in GROUNDS


def bind(signals: Iterable[str], channel: str) -> frozenset[str]:
    """Give unbound legs (`+`, `-`) the channel of the end they are used at."""
    return frozenset(channel + signal if signal in {"+", "-"} else signal for signal in signals)


def sort_key(signal: str) -> tuple[int, str]:
    """Order signals by channel, plus before minus, grounds last."""
    if signal in GROUNDS:
        return (1000, signal)
    channel = channel_of(signal)
    place = CHANNELS.index(channel) if channel in CHANNELS else -1
    return (place * 2 + (leg_of(signal) == "-"), signal)


def signal_text(signal: str) -> str:
    """Print one signal with a real minus: `L-` becomes `L−`."""
    return signal.replace("-", MINUS)


def signals_text(signals: Iterable[str]) -> str:
    """Print a set of signals in order, such as `L− R−`."""
    return " ".join(signal_text(signal) for signal in sorted(signals, key=sort_key))
