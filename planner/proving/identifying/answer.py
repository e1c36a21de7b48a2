"""What was found on a sample's contacts, how sure it is, and what it can't tell."""

from dataclasses import dataclass, field
from typing import Literal

Verdict = Literal["identified", "ambiguous", "contradictory", "too-little"]
Contacts = tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Driver:
    """A driver between two sets of joined contacts, its resistance and how far that may be off.

    `cold` is the common return where there is one; empty where the other end is brought out
    nowhere. Which leg is plus is not known. `measured` says that the figures come from the readings
    alone; else they are what is usual, as far as the readings don't say.
    """

    hot: Contacts
    cold: Contacts
    ohm: float
    plus_minus_ohm: float
    measured: bool = True

    @property
    def contacts(self) -> Contacts:
        """The contacts of both its legs."""
        return (*self.hot, *self.cold)


@dataclass(frozen=True, slots=True)
class Microphone(Driver):
    """A microphone; `shown` says that it reads differently each way round, else it is a guess."""

    shown: bool = False


@dataclass(frozen=True, slots=True)
class CommonReturn:
    """A return that drivers share, and the resistance of its own wire.

    `below_reach` says that the meter can't tell that resistance from none.
    """

    contacts: Contacts
    series_ohm: float
    plus_minus_ohm: float
    below_reach: bool
    measured: bool = True


@dataclass(frozen=True, slots=True)
class ShellState:
    """A shell: the contacts it is joined to, and whether nothing at all hangs on it."""

    contact: str
    joined_to: Contacts
    floating: bool


@dataclass(frozen=True, slots=True)
class Found:
    """One way in which the readings can be understood.

    `groups` are contacts joined without resistance, single ones left out.
    """

    groups: tuple[Contacts, ...] = ()
    drivers: tuple[Driver, ...] = ()
    returns: tuple[CommonReturn, ...] = ()
    microphone: Microphone | None = None
    shell: tuple[ShellState, ...] = ()
    unused: Contacts = ()
    in_a_row: bool = False

    @property
    def elements(self) -> tuple[Driver, ...]:
        """The drivers, and after them the microphone if there seems to be one."""
        return self.drivers if self.microphone is None else (*self.drivers, self.microphone)


@dataclass(frozen=True, slots=True)
class Rival:
    """Another way to understand the readings; `margin` is how much worse, as chi-square."""

    found: Found
    words: str
    margin: float
    share: float


@dataclass(frozen=True, slots=True)
class NextReading:
    """The pair to read next, plus probe on `one`; `gain_bits` is what it is expected to tell."""

    one: str
    other: str
    gain_bits: float
    words: str


@dataclass(frozen=True, slots=True)
class Link:
    """One resistor of a network that fits any readings."""

    one: str
    other: str
    ohm: float


@dataclass(frozen=True, slots=True)
class Identified:
    """The best understanding of a sample's readings, and its rivals.

    `margin` is the chi-square to the runner-up, infinite without one; `ways` counts the best and
    all that are near it, of which `rivals` are the first. `doubtful` are contacts whose part is not
    settled. `suspects` are readings to take again, `mesh` is given where nothing simpler fits.
    """

    verdict: Verdict
    contacts: Contacts
    found: Found = field(default_factory=Found)
    margin: float = 0.0
    share: float = 0.0
    chi_square: float = 0.0
    chi_square_limit: float = 0.0
    rivals: tuple[Rival, ...] = ()
    ways: int = 0
    doubtful: Contacts = ()
    next_reading: NextReading | None = None
    suspects: tuple[tuple[str, str], ...] = ()
    mesh: tuple[Link, ...] = ()

    @property
    def certain(self) -> bool:
        """Tell whether the readings leave no real doubt."""
        return self.verdict == "identified"

    @property
    def groups(self) -> tuple[Contacts, ...]:
        """Contacts joined without resistance."""
        return self.found.groups

    @property
    def drivers(self) -> tuple[Driver, ...]:
        """The drivers."""
        return self.found.drivers

    @property
    def returns(self) -> tuple[CommonReturn, ...]:
        """The common returns."""
        return self.found.returns

    @property
    def shell(self) -> tuple[ShellState, ...]:
        """What the shell is joined to."""
        return self.found.shell

    @property
    def unused(self) -> Contacts:
        """Contacts on which nothing hangs."""
        return self.found.unused

    @property
    def microphone(self) -> Microphone | None:
        """The microphone, if there seems to be one."""
        return self.found.microphone
