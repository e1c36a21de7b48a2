"""Sets that share a member, put together."""

from collections.abc import Iterable
from typing import TypeVar

Member = TypeVar("Member")


def hanging_together(parts: Iterable[set[Member]]) -> list[set[Member]]:
    """Return the sets that parts make when those that share a member are one."""
    sets: list[set[Member]] = []
    for part in parts:
        touching = [each for each in sets if each & part]
        sets = [each for each in sets if not each & part]
        sets.append(part.union(*touching))
    return sets
