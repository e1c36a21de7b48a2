"""Contacts in running text."""

from collections.abc import Iterable

from planner.markup import as_it_is
from planner.proving.reading import Contact

MOST_LISTED = 12


def spot(contact: Contact) -> str:
    """Return a contact in running text, end first: `A T`."""
    return f"*{as_it_is(contact[0])}\u00a0{as_it_is(contact[1])}*"


def listed(texts: Iterable[str]) -> str:
    """Return texts with commas between; of many only the first, then dots."""
    every = list(texts)
    shown = ", ".join(every[:MOST_LISTED])
    return shown if len(every) <= MOST_LISTED else f"{shown}, \u2026"
