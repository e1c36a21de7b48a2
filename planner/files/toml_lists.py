"""Take items out of a list of TOML tables, or put some in, with the comments beside each kept.

A parser counts the comment above `[[contacts]]` to the table before it, so that deleting that one
would take the wrong comment along. Here a table is the lines from its comment to the next one's.
"""

import json
import re
import tomllib
from collections.abc import Callable
from itertools import pairwise
from typing import Any

Table = dict[str, Any]
# For each item of the new list: where it stands in the old one, or the item itself if it is new.
Order = list[int | Table]
_HEADER = re.compile(r"^\s*\[\[?\s*(?P<root>[A-Za-z0-9_-]+)[^\]]*\]\]?\s*(#.*)?$")
_NAMES = ("id", "digest", "figures")


def item_name(item: Table) -> str:
    """Return what tells an item of a list from the others: its id, or all that it says."""
    named = next((str(item[key]) for key in _NAMES if key in item), "")
    return named or json.dumps(item, sort_keys=True, default=str)


def are_told_apart(items: list[Table]) -> bool:
    """Tell whether no two items of a list go by one name."""
    names = [item_name(item) for item in items]
    return len(set(names)) == len(names)


def order_of(old: list[Table], new: list[Table]) -> Order:
    """Say where in the old list each item of the new one stands."""
    places = {item_name(item): at for at, item in enumerate(old)}
    return [places.get(item_name(item), item) for item in new]


def relisted(text: str, key: str, order: Order, write: Callable[[Table], str]) -> str | None:
    """Return the text with the tables `[[key]]` in another order, some gone and some new.

    `write` gives the text of a new table. None if the text is laid out so that this can't be done
    line by line; then nothing but a new list will do.
    """
    lines = text.splitlines(keepends=True)
    if lines and not lines[-1].endswith("\n"):
        lines[-1] += "\n"
    chunks = _chunks(lines, key)
    if not chunks or any(one[1] != other[0] for one, other in pairwise(chunks)):
        return None
    old = ["".join(lines[begin:end]) for begin, end in chunks]
    new = [_apart(old[item] if isinstance(item, int) else write(item)) for item in order]
    rest = lines[chunks[-1][1] :]
    result = "".join((*lines[: chunks[0][0]], *new, *rest)).rstrip("\n") + "\n"
    return result if _is_right(text, result, key, order, write) else None


def _apart(chunk: str) -> str:
    """End a table with one empty line, so that the next one's comment stays its own."""
    return chunk.rstrip("\n") + "\n\n"


def _chunks(lines: list[str], key: str) -> list[tuple[int, int]]:
    """Return from which line to which each table `[[key]]` goes, with the comment above it."""
    found: list[tuple[int, int]] = []
    begins = [(at, match) for at, line in enumerate(lines) if (match := _HEADER.match(line))]
    open_at: int | None = None
    for at, match in begins:
        is_item = match["root"] == key and lines[at].lstrip().startswith("[[")
        if match["root"] == key and not is_item:
            continue  # a table inside the item
        start = _with_comment(lines, at)
        if open_at is not None:
            found.append((open_at, start))
        open_at = start if is_item else None
    if open_at is not None:
        found.append((open_at, len(lines)))
    return found


def _with_comment(lines: list[str], header: int) -> int:
    """Return the first of the comment lines that stand right above a header."""
    while header and lines[header - 1].lstrip().startswith("#"):
        header -= 1
    return header


def _is_right(
    text: str, result: str, key: str, order: Order, write: Callable[[Table], str]
) -> bool:
    """Tell whether a new text says what it should: a header may have stood inside a text."""
    try:
        before, after = tomllib.loads(text), tomllib.loads(result)
    except tomllib.TOMLDecodeError:
        return False
    old = before.pop(key)
    new = after.pop(key, [])
    wanted = [
        old[item] if isinstance(item, int) else tomllib.loads(write(item))[key][0] for item in order
    ]
    return before == after and new == wanted
