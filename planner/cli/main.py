"""The entry point: choose the sub-command or the window, and turn every error into a sentence."""

import importlib
import logging
import re
import sys
import traceback
from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from planner.cli.output import NAME, complain, prepare_streams, remark
from planner.cli.parsing import WrongUseError
from planner.problem import InputError, Problem, did_you_mean

if TYPE_CHECKING:
    from planner.cli.window import OpenWindow

# The module of each is imported only when it is asked for; its first line is the help.
COMMANDS = {
    "check": "findings of a plan, as a table or JSON",
    "connectors": "list, show, validate, compare, export, import definitions",
    "diagnose": "what is wrong with a unit, from its readings, and where to look",
    "identify": "which contacts of a sample hold drivers, a return, a shell, a microphone",
    "layout": "the dry fit of every end: turn, gaps, order, sleeves, fits; --write keeps it",
    "schema": "JSON Schema of a plan, a connector, a pinout record, a cable, a part",
    "sheet": "the bench sheet of a plan, as SVG or PDF",
    "sweep": "what a sound lead shows to a meter, and how to probe it",
}
WRONG_USE, NOT_READ = 2, 3
INTERRUPTED = 130
_LOOKS_LIKE_A_COMMAND = re.compile(r"^[a-z][a-z-]*$")


def main(argv: Sequence[str] | None, open_window: "OpenWindow") -> int:
    """Run Cupwright and return the exit status: 0, 1 (a stop), 2 (wrong use), 3 (not read)."""
    words = list(sys.argv[1:] if argv is None else argv)
    prepare_streams()
    try:
        return _run(words, open_window)
    except WrongUseError as error:
        remark(f"{NAME}: {error}")
        return WRONG_USE
    except InputError as error:
        complain(error.problems)
        return NOT_READ
    except KeyboardInterrupt:
        return INTERRUPTED
    except Exception as error:  # noqa: BLE001 - the builder gets a sentence, never a traceback
        return _unforeseen(error, debug="--debug" in words)


def _run(words: list[str], open_window: "OpenWindow") -> int:
    if "--debug" in words:
        logging.basicConfig(level=logging.DEBUG, format="%(name)s: %(message)s")
    at = next((at for at, word in enumerate(words) if not word.startswith("-")), None)
    if at is not None and words[at] in COMMANDS:
        module = importlib.import_module(f"planner.cli.{words[at]}")
        status: int = module.run([*words[at + 1 :], *words[:at]])
        return status
    if at is not None:
        _refuse_misspelt(words[at])
    from planner.cli.window import run  # noqa: PLC0415 - the commands need none of it

    return run(words, open_window)


def _refuse_misspelt(word: str) -> None:
    if _LOOKS_LIKE_A_COMMAND.match(word) and not Path(word).exists():
        guess = did_you_mean(word, COMMANDS)
        raise WrongUseError(f"there is no command and no file {word!r}. {guess}")


def _unforeseen(error: Exception, *, debug: bool) -> int:
    if debug:
        traceback.print_exception(error)
    first = (str(error).splitlines() or [""])[0]
    what = f"an error that was not foreseen: {type(error).__name__}{': ' if first else ''}{first}"
    mend = "Run it again with --debug and report what it prints; no file was changed by this."
    complain([Problem(what, "inside Cupwright", mend)])
    return NOT_READ
