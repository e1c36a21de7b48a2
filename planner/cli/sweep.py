"""`cupwright sweep PLAN`: what a sound lead shows to a meter, and how to probe it."""

from collections.abc import Sequence
from pathlib import Path

from planner.cli.output import NAME, say, say_json
from planner.cli.parsing import Parser, add_debug, add_folder
from planner.proving.methods import METHODS


def run(words: Sequence[str]) -> int:
    """Print the expected sweep and the probe plan; return 1 if the plan has a stop, else 0."""
    args = _parser().parse_args(words)
    # Imported only now: wrong use should be told at once.
    from planner.cli.sweep_text import sweep_text  # noqa: PLC0415
    from planner.cli.sweep_values import sweep_values  # noqa: PLC0415
    from planner.library.loading import load_library  # noqa: PLC0415
    from planner.proving.form import form_text  # noqa: PLC0415
    from planner.services.checking import check_plan, verdict  # noqa: PLC0415
    from planner.services.opening import open_plan  # noqa: PLC0415
    from planner.services.sweeping import sweep_plan  # noqa: PLC0415

    plan = open_plan(Path(args.plan))
    stopped = verdict(check_plan(plan, load_library(args.folder).pinouts())) == "stop"
    swept = sweep_plan(plan, args.method)
    if args.json:
        say_json(sweep_values(args.plan, swept))
    elif args.csv:
        say(form_text(swept.probes).rstrip("\n"))
    else:
        say(sweep_text(args.plan, swept, stopped=stopped))
    return 1 if stopped else 0


def _parser() -> Parser:
    parser = Parser(
        prog=f"{NAME} sweep",
        description="Print what a sound lead shows to a meter, contact by contact, and the fewest "
        "readings that prove it. Unplug every end first. Exit status 0: no stop in the plan; 1: at "
        "least one; 3: not readable.",
    )
    parser.add_argument("plan", metavar="PLAN", help="the build plan")
    shape = parser.add_mutually_exclusive_group()
    shape.add_argument("--json", action="store_true", help="print one JSON object")
    shape.add_argument(
        "--csv", action="store_true", help="print an empty form of the readings to fill in"
    )
    parser.add_argument(
        "--method",
        choices=METHODS,
        default=METHODS[0],
        help="how isolation is measured: pairs by risk of a bridge; each against the rest clipped "
        "together; gangs with clips; gangs that tell only neighbours apart (default: pairs)",
    )
    add_folder(parser)
    add_debug(parser)
    return parser
