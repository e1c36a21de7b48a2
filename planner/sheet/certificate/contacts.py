"""Contacts in running text."""

from collections.abc import Iterable, Sequence

from planner.markup import as_it_is
from planner.proving.reading import Contact

MOST_LISTED = 12


def spot(contact: Contact) -> str:
    """Return a contact in running text, end first: `A T`."""
    return f"*{as_it_is(' '.join(contact))}*"


def between(one: Contact, other: Contact) -> str:
    """Return a path in running text: `A T – L T`."""
    return f"*{as_it_is(' '.join(one))} \u2013 {as_it_is(' '.join(other))}*"


def listed(texts: Iterable[str]) -> str:
    """Return texts with commas between; of many only the first, then dots."""
    every = list(texts)
    shown = ", ".join(every[:MOST_LISTED])
    return shown if len(every) <= MOST_LISTED else f"{shown}, \u2026"


def in_ranges(names: Sequence[str]) -> list[str]:
    """Return names of contacts, three and more whole numbers in a row as `4–9`."""
    runs: list[list[str]] = []
    for name in names:
        follows = runs and _whole(name) is not None and _whole(runs[-1][-1]) == int(name) - 1
        if follows:
            runs[-1].append(name)
        else:
            runs.append([name])
    return [one for run in runs for one in _told(run)]


def _told(run: list[str]) -> list[str]:
    return run if len(run) < 3 else [f"{run[0]}\u2013{run[-1]}"]


def _whole(name: str) -> int | None:
    """Return a plain whole number; None for any other name, such as 01."""
    return int(name) if name.isascii() and name.isdigit() and str(int(name)) == name else None
