"""Contacts in running text."""

from collections.abc import Iterable

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
