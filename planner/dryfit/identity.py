"""Records as cache keys."""

from dataclasses import dataclass
from typing import Generic, TypeVar

R = TypeVar("R")


@dataclass(frozen=True, slots=True, eq=False)
class ById(Generic[R]):
    """A record as a cache key: compared by identity, since hashing one costs more than a fit.

    It holds the record, so that no other can come to stand where it stood.
    """

    record: R

    def __hash__(self) -> int:
        return id(self.record)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, ById) and other.record is self.record
