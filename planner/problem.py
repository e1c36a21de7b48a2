"""What can be wrong with an input: said in three parts, never as a traceback."""

from collections.abc import Iterable
from dataclasses import dataclass
from difflib import get_close_matches


@dataclass(frozen=True, slots=True)
class Problem:
    """One thing wrong: what (with the value), where (file, line or key), how to mend it."""

    what: str
    where: str
    mend: str

    def __str__(self) -> str:
        return f"{self.where}: {self.what}. {self.mend}"


class InputError(Exception):
    """An input that cannot be used; carries one or more problems."""

    def __init__(self, problems: Iterable[Problem]) -> None:
        self.problems = tuple(problems)
        super().__init__("\n".join(str(problem) for problem in self.problems))

    @classmethod
    def single(cls, what: str, where: str, mend: str) -> "InputError":
        """Make an error of one problem."""
        return cls([Problem(what, where, mend)])


def reason_of(error: OSError | ValueError) -> str:
    """Return in small letters why the system could not do something, to stand in a sentence."""
    return str(getattr(error, "strerror", None) or error).lower()


class EditRefused(Exception):  # noqa: N818 - it is an answer to the builder, not a fault
    """An edit that cannot be done, with a reason fit to show: `tip takes one core`."""

    def __init__(self, reason: str, mend: str = "") -> None:
        super().__init__(reason)
        self.reason = reason
        self.mend = mend

    def __str__(self) -> str:
        return f"{self.reason}. {self.mend}" if self.mend else f"{self.reason}."


def did_you_mean(name: str, known: Iterable[str]) -> str:
    """Say which known name was probably meant, or list what is known (at most eight)."""
    names = sorted(known)
    # Capitals are not what was mistyped.
    plain = {it.casefold(): it for it in reversed(names)}
    close = get_close_matches(name.casefold(), plain, n=1, cutoff=0.6)
    if close:
        return f"Did you mean {plain[close[0]]!r}?"
    if not names:
        return "Nothing is known here."
    shown = ", ".join(names[:8])
    return f"Known are {shown}{' and more' if len(names) > 8 else ''}."
