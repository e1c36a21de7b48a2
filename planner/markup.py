"""Marks in the sheet's texts: `*bold*`, `[3]` the disc of a joint; a backslash before what is none.

Texts that come from a plan or a record go through `as_it_is` before they are put into others.
"""

import re

_MARKS = re.compile(r"[\\*\[]")
_KEPT = re.compile(r"\\(.)|\*")


def as_it_is(text: str) -> str:
    """Return a text whose signs are no marks."""
    return _MARKS.sub(r"\\\g<0>", text)


def unmarked(text: str) -> str:
    """Return the text without its marks, as it is read aloud."""
    return _KEPT.sub(lambda found: found[1] or "", text)
