"""What a check says: what, where, why it matters, how to mend it, and how much it weighs."""

from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Literal

from planner.model.place import Place
from planner.model.plan import Plan

Weight = Literal["stop", "caution", "note"]
Verdict = Literal["stop", "caution", "clear"]
WEIGHTS: tuple[Weight, ...] = ("stop", "caution", "note")


@dataclass(frozen=True, slots=True)
class Remedy:
    """A mend that is certain: a short imperative label and the edit that does it."""

    label: str
    edit: Callable[[Plan], Plan] = field(compare=False)


@dataclass(frozen=True, slots=True)
class Finding:
    """One result of a check. Its fields but `title`, `remedy` and `unfinished` are contract.

    `title` is a short headline for the window ("Right channel reversed"). `unfinished` marks what
    only says that a core is not landed yet; the window counts those apart, as "still to land".
    """

    code: str
    weight: Weight
    what: str
    why: str
    mend: str
    where: tuple[Place, ...]
    title: str = ""
    remedy: Remedy | None = None
    unfinished: bool = False

    @property
    def sort_key(self) -> tuple[int, str, tuple[Place, ...], str]:
        """Order by weight, code, place."""
        return (WEIGHTS.index(self.weight), self.code, self.where, self.what)

    @property
    def place_keys(self) -> tuple[str, ...]:
        """What an acceptance stores of the places."""
        return tuple(place.key for place in self.where)
