"""The argument parser: wrong use is told in the manner of all our messages."""

import argparse
import re
from collections.abc import Iterable
from typing import NoReturn

from planner.problem import did_you_mean

_CHOICE = re.compile(r"^argument .*: invalid choice: '(.*?)' \(choose from (.*)\)$", re.DOTALL)
_UNKNOWN = re.compile(r"^unrecognized arguments: (\S+)")


class WrongUseError(Exception):
    """The command line can't be understood; the message says why and what to write instead."""


class Parser(argparse.ArgumentParser):
    """A parser that takes no abbreviations and raises WrongUseError instead of leaving."""

    def __init__(self, **options: object) -> None:
        options.setdefault("formatter_class", argparse.RawDescriptionHelpFormatter)
        super().__init__(allow_abbrev=False, **options)  # type: ignore[arg-type] # passed through

    def error(self, message: str) -> NoReturn:
        """Raise what argparse found wrong, with a guess at what was meant."""
        raise WrongUseError(f"{_plain(message, self._options())}\n  See {self.prog} --help.")

    def _options(self) -> list[str]:
        return [text for action in self._actions for text in action.option_strings]


def _plain(message: str, options: Iterable[str]) -> str:
    choice = _CHOICE.match(message)
    if choice:
        known = [word.strip(" '") for word in choice.group(2).split(",")]
        return f"{choice.group(1)!r} is not one of {', '.join(known)}. " + did_you_mean(
            choice.group(1), known
        )
    unknown = _UNKNOWN.match(message)
    if unknown:
        guess = did_you_mean(unknown.group(1), options)
        mend = guess if guess.startswith("Did you mean") else ""
        return f"{unknown.group(1)!r} is not understood here. {mend}".rstrip()
    return f"{message[:1].lower()}{message[1:]}."


def add_debug(parser: argparse.ArgumentParser) -> None:
    """Add --debug, which may stand before or after a sub-command."""
    parser.add_argument(
        "--debug",
        action="store_true",
        default=argparse.SUPPRESS,
        help="log what is done, and show the traceback of an unforeseen error",
    )
