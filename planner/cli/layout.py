"""`cupwright layout PLAN`: the dry fit of every end, as text or JSON; `--write` keeps it."""

import sys
from collections.abc import Callable, Sequence
from pathlib import Path

from planner.cli.output import NAME, say, say_json
from planner.cli.parsing import Parser, WrongUseError, add_debug, add_folder
from planner.problem import did_you_mean

_BAR = 32


def run(words: Sequence[str]) -> int:
    """Print the layout, or keep it in the plan; return 1 if the plan has a stop, else 0."""
    args = _parser().parse_args(words)
    # Imported only now: wrong use should be told at once.
    from planner.cli.layout_text import layout_text  # noqa: PLC0415
    from planner.cli.layout_values import layout_values  # noqa: PLC0415
    from planner.library.loading import load_library  # noqa: PLC0415
    from planner.services.checking import check_plan, verdict  # noqa: PLC0415
    from planner.services.laying_out import lay_out, taken  # noqa: PLC0415
    from planner.services.opening import open_plan, save_plan  # noqa: PLC0415

    path = Path(args.plan)
    plan = open_plan(path)
    for end in args.end:
        if end not in plan.end_by_id:
            raise WrongUseError(f"there is no end {end!r}. {did_you_mean(end, plan.end_by_id)}")
    bar = _progress_bar()
    if args.write:
        plan = taken(plan, only=args.end, free=args.any_core, progress=bar)
        save_plan(path, plan)
    laid = lay_out(plan, only=args.end, free=args.any_core, progress=bar)
    if bar is not None:
        sys.stderr.write("\r" + " " * (_BAR + 8) + "\r")
    if args.json:
        say_json(layout_values(args.plan, laid, written=args.write))
    else:
        say(layout_text(args.plan, laid, written=args.write))
    found = check_plan(plan, load_library(args.folder).pinouts())
    return 1 if verdict(found) == "stop" else 0


def _progress_bar() -> Callable[[float], None] | None:
    """Return what draws a bar on a terminal; nothing where the output goes to a pipe."""
    if not (sys.stderr.isatty() and sys.stdout.isatty()):
        return None

    def draw(share: float) -> None:
        done = round(share * _BAR)
        sys.stderr.write(f"\r[{'#' * done}{'.' * (_BAR - done)}] {share:4.0%}")
        sys.stderr.flush()

    return draw


def _parser() -> Parser:
    parser = Parser(
        prog=f"{NAME} layout",
        description="Compute the dry fit of every end: turn, gaps, order of soldering, sleeves, "
        "fits, resistances. Exit status 0: no stop; 1: at least one; 3: not readable.",
    )
    parser.add_argument("plan", metavar="PLAN", help="the build plan")
    parser.add_argument(
        "--end", action="append", default=[], help="only this end (may be repeated)"
    )
    parser.add_argument("--json", action="store_true", help="print one JSON object")
    parser.add_argument(
        "--write",
        action="store_true",
        help="keep it in the plan: best turn, order of soldering, sleeves and dabs",
    )
    parser.add_argument(
        "--any-core",
        action="store_true",
        help="cores of one make may take each other's part in the whole lead, whatever the colour",
    )
    add_folder(parser)
    add_debug(parser)
    return parser
