"""What a diagnosis says: verdict, smallest explanations, the next reading, what stays unseen."""

from dataclasses import dataclass
from typing import Literal

from planner.proving.reading import Contact

FaultKind = Literal[
    "exchange", "moved", "mirrored", "shifted", "channels", "ends", "polarity", "open",
    "shield-open", "link-open", "bridge", "high-joint",
]  # fmt: skip
Verdict = Literal["sound", "faulty", "incomplete"]


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing that went wrong.

    `end` is where to look first; `ends` are all ends at which it may be, no meter can tell which.
    `contacts` are those to look at; `look` says where to look or to put the iron. `moves` are, at
    `end`, the contact where something belongs and the contact where it stands; `figure` is what a
    high joint has.
    """

    kind: FaultKind
    end: str
    contacts: tuple[Contact, ...]
    words: str
    look: str
    ends: tuple[str, ...] = ()
    cost: int = 1
    moves: tuple[tuple[Contact, Contact], ...] = ()
    figure: str = ""


@dataclass(frozen=True, slots=True)
class Explanation:
    """Faults that together explain all readings. `likelihood` is a share among the rivals."""

    cost: int
    faults: tuple[Fault, ...]
    likelihood: float = 1.0

    @property
    def words(self) -> str:
        """The faults in one line."""
        return "; ".join(fault.words for fault in self.faults)


@dataclass(frozen=True, slots=True)
class HighJoint:
    """A joined pair that reads more than its wire, its meter and its siblings account for, ohm.

    `expected_ohm` is None where the wire is not known: then it is above the limit, and `sigmas` 0.
    """

    one: Contact
    other: Contact
    ohm: float
    expected_ohm: float | None
    sigmas: float
    fault: Fault


@dataclass(frozen=True, slots=True)
class Contradiction:
    """Readings that can't all be right. They count as unread until `repeat` is read again."""

    repeat: tuple[Contact, Contact]
    pairs: tuple[tuple[Contact, Contact], ...]
    words: str


@dataclass(frozen=True, slots=True)
class NextProbe:
    """The pair of contacts to read next, and why."""

    pair: tuple[Contact, Contact]
    words: str


@dataclass(frozen=True, slots=True)
class Diagnosis:
    """What the readings of one unit say.

    `explanations` are all smallest ones, likeliest first, as far as they were listed; `more` is how
    many there are besides, `counted` whether that number is all. `proved` tells whether no smaller
    one exists. `look` is what to look at where no reading can tell the rivals apart.
    """

    verdict: Verdict
    explanations: tuple[Explanation, ...] = ()
    more: int = 0
    counted: bool = True
    proved: bool = True
    high_joints: tuple[HighJoint, ...] = ()
    contradictions: tuple[Contradiction, ...] = ()
    next_probe: NextProbe | None = None
    look: str = ""
    unseen: tuple[str, ...] = ()
    remarks: tuple[str, ...] = ()
    unread_continuity: int = 0
    unread_isolation: int = 0

    @property
    def best(self) -> Explanation | None:
        """The likeliest of the smallest explanations."""
        return self.explanations[0] if self.explanations else None

    @property
    def cost(self) -> int:
        """How many faults the smallest explanations have."""
        return self.explanations[0].cost if self.explanations else 0

    @property
    def faults(self) -> tuple[Fault, ...]:
        """The faults of the likeliest explanation and the high joints, for marking on faces."""
        high = tuple(joint.fault for joint in self.high_joints)
        return (*(self.best.faults if self.best else ()), *high)
