"""`cupwright check PLAN`: the findings of a plan, as a table or JSON."""

from collections.abc import Sequence
from pathlib import Path

from planner.cli.output import NAME, say, say_json
from planner.cli.parsing import Parser, add_debug, add_folder


def run(words: Sequence[str]) -> int:
    """Print the findings; return 1 if there is a stop, else 0."""
    args = _parser().parse_args(words)
    # Imported only now: wrong use should be told at once.
    from planner.cli.findings_text import findings_table, findings_values  # noqa: PLC0415
    from planner.library.loading import load_library  # noqa: PLC0415
    from planner.services.checking import check_plan, verdict  # noqa: PLC0415
    from planner.services.opening import open_plan  # noqa: PLC0415

    plan = open_plan(Path(args.plan))
    found = check_plan(plan, load_library(args.folder).pinouts())
    if args.json:
        say_json(findings_values(args.plan, found))
    else:
        say(findings_table(args.plan, plan, found))
    return 1 if verdict(found) == "stop" else 0


def _parser() -> Parser:
    parser = Parser(
        prog=f"{NAME} check",
        description="Check a plan. Exit status 0: no stop; 1: at least one; 3: not readable.",
    )
    parser.add_argument("plan", metavar="PLAN", help="the build plan")
    parser.add_argument("--json", action="store_true", help="print one JSON object")
    add_folder(parser)
    add_debug(parser)
    return parser
