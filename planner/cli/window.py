"""Open the window: `cupwright [PLAN]`, `--demo`, `--fresh-profile`."""

from collections.abc import Sequence
from pathlib import Path
from typing import Protocol

from planner import __version__
from planner.cli.output import NAME
from planner.cli.parsing import Parser, WrongUseError, add_debug
from planner.problem import InputError

_WINDOW_PACKAGES = "libegl1 libgl1 libxkbcommon0 libdbus-1-3 libfontconfig1 libglib2.0-0"
_X11_PACKAGES = (
    "libxcb-cursor0 libxcb-icccm4 libxcb-keysyms1 libxcb-shape0 libxcb-xkb1 libxkbcommon-x11-0"
)


class OpenWindow(Protocol):
    """What opens the window and returns the exit status."""

    def __call__(self, plan: Path | None, *, demo: bool, debug: bool, fresh_profile: bool) -> int:
        """Open the window on a plan file, the demo plan or nothing."""


def run(words: Sequence[str], open_window: OpenWindow) -> int:
    """Open the window on a plan, on the demo plan, or empty; return the exit status."""
    args = _parser().parse_args(words)
    plan = Path(args.plan) if args.plan else None
    if plan and args.demo:
        raise WrongUseError("name a plan or --demo, not both.")
    if plan and not plan.exists():
        raise InputError.single(
            "there is no such file", str(plan), "Check the name and the folder."
        )
    try:
        return open_window(
            plan, demo=args.demo, debug="debug" in args, fresh_profile=args.fresh_profile
        )
    except ImportError as error:
        raise WrongUseError(_why_no_window(error)) from error


def _why_no_window(error: ImportError) -> str:
    missing = error.name or ""
    if missing.startswith(("PySide6", "shiboken6")):
        cause, mend = "PySide6 is not installed", "run pip install 'PySide6-Essentials>=6.10,<6.12'"
    else:
        cause = f"a system library is missing ({error})"
        mend = f"on Debian or Ubuntu run apt-get install {_WINDOW_PACKAGES} {_X11_PACKAGES}"
    return f"the window can't open because {cause}: {mend}; {_without_a_window()} need no window."


def _without_a_window() -> str:
    from planner.cli.main import COMMANDS  # noqa: PLC0415 - main imports this module

    names = [f"{NAME} {name}" for name in COMMANDS]
    return f"{', '.join(names[:-1])} and {names[-1]}"


def _parser() -> Parser:
    from planner.cli.main import COMMANDS  # noqa: PLC0415 - main imports this module

    listed = "\n".join(f"  {name:<12} {text}" for name, text in COMMANDS.items())
    parser = Parser(
        prog=NAME,
        usage=f"{NAME} [PLAN | --demo] [--fresh-profile] [--debug]\n       {NAME} COMMAND ...",
        description="Plan the wiring of a hand-built audio lead before the iron is hot.",
        epilog=f"commands that need no window (each has --help):\n{listed}",
    )
    parser.add_argument("plan", nargs="?", metavar="PLAN", help="a build plan to open")
    parser.add_argument("--demo", action="store_true", help="open the demo plan")
    parser.add_argument(
        "--fresh-profile", action="store_true", help="start with throw-away settings"
    )
    parser.add_argument("--version", action="version", version=f"Cupwright {__version__}")
    add_debug(parser)
    return parser
