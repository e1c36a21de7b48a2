"""`cupwright diagnose PLAN READINGS.csv`: what is wrong with a unit, and where to put the iron."""

from collections.abc import Sequence
from pathlib import Path

from planner.cli.output import NAME, say, say_json
from planner.cli.parsing import Parser, add_debug


def run(words: Sequence[str]) -> int:
    """Print the diagnosis; return 1 if a fault was found, else 0."""
    args = _parser().parse_args(words)
    # Imported only now: wrong use should be told at once.
    from planner.cli.diagnose_text import diagnosis_text  # noqa: PLC0415
    from planner.cli.diagnose_values import diagnosis_values  # noqa: PLC0415
    from planner.proving.diagnosing import diagnose  # noqa: PLC0415
    from planner.proving.probing import probe_plan  # noqa: PLC0415
    from planner.proving.reading_csv import read_readings  # noqa: PLC0415
    from planner.services.opening import open_plan  # noqa: PLC0415
    from planner.wiring.graph import Wiring  # noqa: PLC0415

    plan = open_plan(args.plan)
    wiring = Wiring(plan)
    readings = read_readings(args.readings, plan)
    stated = None if args.every_pair else probe_plan(plan, wiring).isolation
    found = diagnose(plan, wiring, readings, asked=stated.pairs if stated is not None else None)
    if args.json:
        say_json(diagnosis_values(str(args.plan), str(args.readings), found))
    else:
        reach = stated.unseen if stated is not None and stated.stop_after is not None else ()
        say(diagnosis_text(plan.title or str(args.plan), readings, found, reach))
    return 1 if found.verdict == "faulty" else 0


def _parser() -> Parser:
    parser = Parser(
        prog=f"{NAME} diagnose",
        description="Compare readings with a plan and say what is most likely wrong. What was not "
        "read is unknown, not open. Exit status 0: no fault found; 1: a fault; 3: not readable.",
    )
    parser.add_argument("plan", metavar="PLAN", type=Path, help="the build plan")
    parser.add_argument(
        "readings", metavar="READINGS.csv", type=Path, help="what the meter showed, pair by pair"
    )
    parser.add_argument(
        "--every-pair",
        action="store_true",
        help="ask for the isolation of every two nets, not only for the pairs that `sweep` names",
    )
    parser.add_argument("--json", action="store_true", help="print one JSON object")
    add_debug(parser)
    return parser
