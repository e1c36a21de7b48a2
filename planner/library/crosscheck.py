"""Check definitions against each other: a pinout record may name only contacts that exist."""

from collections.abc import Iterator

from planner.library.collection import Library
from planner.problem import Problem, did_you_mean


def crosscheck(library: Library) -> Iterator[Problem]:
    """Say which pinout records name a contact that a connector they fit does not have."""
    for record in library.pinouts():
        for connector in filter(None, map(library.connector, record.fits)):
            for contact in record.signals:
                if contact not in connector.by_id:
                    yield Problem(
                        f"{connector.id} has no contact {contact!r}",
                        f"pinout record {record.id}: signals.{contact}",
                        did_you_mean(contact, connector.by_id),
                    )
