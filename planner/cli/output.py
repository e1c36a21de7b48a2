"""What the command line prints: results on stdout, problems on stderr, never a traceback."""

import json
import os
import re
import sys
from collections.abc import Iterable
from typing import TextIO

from planner.problem import Problem
from planner.units import MINUS

NAME = "cupwright"
WIDTH = 80
MOST_PROBLEMS = 20

# For terminals that lack them.
_PLAIN = str.maketrans({MINUS: "-", "\u00b2": "2"})

_UNSEEN = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u200e\u200f\u202a-\u202e\u2066-\u2069]")


def prepare_streams() -> None:
    """Let a terminal that lacks a character show its escape instead of failing."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(errors="backslashreplace")


def say(text: str) -> None:
    """Print a result in one piece; a reader that has gone away is no error."""
    if not _can_print(sys.stdout, text):
        text = text.translate(_PLAIN)
    _write(sys.stdout, text + "\n")


def say_json(values: object) -> None:
    """Print values as JSON; what a terminal lacks comes as JSON's own escape."""
    _write(sys.stdout, json.dumps(values, indent=2, ensure_ascii=False) + "\n")


def complain(problems: Iterable[Problem]) -> None:
    """Print problems on stderr, each with file, place, what and mend."""
    listed = list(problems)
    lines = [
        f"{NAME}: {problem.where}: {problem.what}.\n  {problem.mend}"
        for problem in listed[:MOST_PROBLEMS]
    ]
    if len(listed) > MOST_PROBLEMS:
        lines.append(f"{NAME}: {len(listed) - MOST_PROBLEMS} more problems are not shown.")
    remark("\n".join(lines))


def remark(text: str) -> None:
    """Print a sentence on stderr."""
    if text:
        _write(sys.stderr, _UNSEEN.sub("?", text) + "\n")


def _can_print(stream: TextIO, text: str) -> bool:
    try:
        text.encode(getattr(stream, "encoding", None) or "utf-8")
    except UnicodeEncodeError:
        return False
    return True


def _write(stream: TextIO, text: str) -> None:
    try:
        stream.write(text)
        stream.flush()
    except BrokenPipeError:
        # The interpreter flushes once more at exit; let that go nowhere.
        os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())
