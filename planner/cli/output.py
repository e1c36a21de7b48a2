"""What the command line prints: results on stdout, problems on stderr, never a traceback."""

import os
import re
import sys
from collections.abc import Iterable
from typing import TextIO

from planner.problem import Problem

NAME = "cupwright"
WIDTH = 80
MOST_PROBLEMS = 20

_UNSEEN = re.compile("[\x00-\x08\x0b-\x1f\x7f-\x9f\u200e\u200f\u202a-\u202e\u2066-\u2069]")


def prepare_streams() -> None:
    """Let a terminal that lacks a character show its escape instead of failing."""
    for stream in (sys.stdout, sys.stderr):
        reconfigure = getattr(stream, "reconfigure", None)
        if reconfigure is not None:
            reconfigure(errors="backslashreplace")


def say(text: str) -> None:
    """Print a result in one piece; a reader that has gone away is no error."""
    _write(sys.stdout, text if text.endswith("\n") else text + "\n")


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


def _write(stream: TextIO, text: str) -> None:
    try:
        stream.write(text)
        stream.flush()
    except BrokenPipeError:
        # The interpreter flushes once more at exit; let that go nowhere.
        os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())
