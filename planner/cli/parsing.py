"""The argument parser: wrong use is told in the manner of all our messages."""

import argparse
import re
from collections.abc import Iterable
from pathlib import Path
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
        parsers: list[argparse.ArgumentParser] = [self]
        for action in self._actions:
            if isinstance(action, argparse._SubParsersAction):  # noqa: SLF001 - no public name
                parsers += action.choices.values()
        return [
            text
            for parser in parsers
            for action in parser._actions  # noqa: SLF001 - argparse has no public list of them
            for text in action.option_strings
        ]


def _plain(message: str, options: Iterable[str]) -> str:
    choice = _CHOICE.match(message)
    if choice:
        known = [word.strip(" '") for word in choice.group(2).split(",")]
        what = f"{choice.group(1)!r} is not one of {', '.join(known)}."
        return f"{what} {_guess(choice.group(1), known)}".rstrip()
    unknown = _UNKNOWN.match(message)
    if unknown:
        what = f"{unknown.group(1)!r} is not understood here."
        return f"{what} {_guess(unknown.group(1), options)}".rstrip()
    return f"{message[:1].lower()}{message[1:]}."


def _guess(word: str, known: Iterable[str]) -> str:
    guess = did_you_mean(word, known)
    return guess if guess.startswith("Did you mean") else ""


def add_debug(parser: argparse.ArgumentParser) -> None:
    """Add --debug, which may stand before or after a sub-command."""
    parser.add_argument(
        "--debug",
        action="store_true",
        default=argparse.SUPPRESS,
        help="log what is done, and show the traceback of an unforeseen error",
    )


def add_folder(parser: argparse.ArgumentParser) -> None:
    """Add --folder, for definitions besides the shipped ones and the user's own."""
    parser.add_argument(
        "--folder",
        type=Path,
        action="append",
        default=[],
        help="a folder of more definitions (may be given again)",
    )
