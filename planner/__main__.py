"""Start Cupwright: a sub-command on the command line, or else the window."""

import sys
from collections.abc import Sequence
from pathlib import Path

from planner.cli.main import main as run_cli


def main(argv: Sequence[str] | None = None) -> int:
    """Run Cupwright and return the exit status."""
    return run_cli(argv, _open_window)


def _open_window(plan: Path | None, *, demo: bool, debug: bool, fresh_profile: bool) -> int:
    from planner.app.main import run  # noqa: PLC0415 - the command line starts without Qt

    return run(plan, demo=demo, debug=debug, fresh_profile=fresh_profile)


if __name__ == "__main__":
    sys.exit(main())
