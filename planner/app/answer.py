"""The answer to "may I heat the iron?" in a word and a sentence, worked out without any widget."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Literal, Protocol


class Found(Protocol):
    """What is read of a finding here."""

    @property
    def weight(self) -> str:
        """stop, caution or note."""

    @property
    def what(self) -> str:
        """One sentence."""

    @property
    def title(self) -> str:
        """A short headline."""

    @property
    def unfinished(self) -> bool:
        """Whether it only says that a core is not landed yet."""


Kind = Literal["stop", "caution", "clear", "empty", "nothing"]


@dataclass(frozen=True, slots=True)
class Answer:
    """What the answer band says. `kind` is the mark's shape; `tone` colours the title."""

    kind: Kind
    title: str
    sentence: str
    cautions: int = 0
    landed: int = 0
    to_land: int = 0

    @property
    def tone(self) -> str:
        """The colour of the title: stop, caution, clear or none."""
        return self.kind if self.kind in {"stop", "caution", "clear"} else ""

    @property
    def landed_words(self) -> str:
        """`7 of 9 landed`."""
        return f"{self.landed} of {self.landed + self.to_land} landed"


NEW_PLAN = Answer("nothing", "New plan", "Nothing to check yet: choose the ends and the cable.")


def counted(number: int, word: str) -> str:
    """Return `1 stop`, `2 stops`."""
    return f"{number} {word}" if number == 1 else f"{number} {word}s"


def _lowered(title: str) -> str:
    """Begin a headline in lower case, but leave names such as `R+` or `XLR` as they are."""
    first = title.split(" ", 1)[0]
    return title[:1].lower() + title[1:] if first[1:].islower() else title


def _sentence_of_stops(stops: Sequence[Found]) -> str:
    first = _lowered(stops[0].title or stops[0].what).rstrip(".")
    more = len(stops) - 1
    also = f", and {more} more" if more else ""
    return f"Don\u2019t heat the iron: {first}{also}."


def answer_of(
    findings: Sequence[Found],
    *,
    landed: int,
    to_land: int,
    is_accepted: Callable[[Found], bool] = lambda _finding: False,
) -> Answer:
    """Return the answer for a plan that has something in it.

    Findings that only say "not landed yet" are told by `to_land`; should none be left to land, they
    weigh like any other, so that the band never says clear while `check` has a stop.
    """
    counted_apart = to_land > 0
    real = [found for found in findings if not (found.unfinished and counted_apart)]
    stops = [found for found in real if found.weight == "stop"]
    cautions = [found for found in real if found.weight == "caution" and not is_accepted(found)]
    accepted = sum(found.weight == "caution" for found in real) - len(cautions)
    counts = {"cautions": len(cautions), "landed": landed, "to_land": to_land}
    if stops:
        return Answer("stop", counted(len(stops), "stop"), _sentence_of_stops(stops), **counts)
    if to_land:
        sentence = "Nothing is wrong so far: land what is left, or cap what stays spare."
        return Answer("empty", f"{to_land} to land", sentence, **counts)
    if cautions:
        sentence = "Nothing stops the iron: mend each caution, or accept it with a reason."
        return Answer("caution", counted(len(cautions), "caution"), sentence, **counts)
    sentence = "Every core is landed, and every check passes."
    if accepted:
        sentence = f"Every core is landed; {counted(accepted, 'caution')} accepted with a reason."
    return Answer("clear", "Clear to solder", sentence, **counts)
