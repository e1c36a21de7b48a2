"""`cupwright sheet PLAN --unit N -o FILE`: what is kept of built units, on paper or as tables."""

import re
from argparse import Namespace

from planner.cli.output import complain, say
from planner.cli.parsing import WrongUseError

ALL = "all"


def check_use(args: Namespace) -> None:
    """Raise WrongUseError where unit and ending don't go together."""
    kind = args.output.suffix.lower()
    if args.unit == ALL:
        if kind != ".csv":
            raise WrongUseError("--unit all writes a table: end the file's name in .csv.")
    elif not re.fullmatch(r"[1-9]\d{0,5}", args.unit, re.ASCII):
        raise WrongUseError(f"--unit takes a unit's number or {ALL}, not {args.unit!r}.")


def run_unit(args: Namespace) -> int:
    """Write pages or readings of a unit, or the summary of all; return 1 if one has not passed.

    Else 0. What of the file of units could not be read is told besides.
    """
    from planner.proving.judging import Judging  # noqa: PLC0415
    from planner.proving.unit_file import load_units  # noqa: PLC0415
    from planner.services.opening import open_plan  # noqa: PLC0415
    from planner.services.units import (  # noqa: PLC0415
        latest_of,
        write_certificate,
        write_summary,
        write_unit_readings,
    )

    plan, units = open_plan(args.plan), load_units(args.plan)
    complain(units.dropped)
    if args.unit == ALL:
        records, paths = list(units.latest.values()), write_summary(plan, units, args.output)
    elif args.output.suffix.lower() == ".csv":
        records = [latest_of(units, int(args.unit), args.plan)]
        paths = write_unit_readings(args.plan, int(args.unit), args.output)
    else:
        records = [latest_of(units, int(args.unit), args.plan)]
        paths = write_certificate(
            plan,
            args.plan,
            int(args.unit),
            args.output,
            paper=args.paper,
            language=args.language,
            one_file=args.one_file,
            outlines=args.outlines,
        )
    say("\n".join(str(path) for path in paths))
    judging = Judging(plan)
    return 0 if all(judging.judged(it).verdict == "passed" for it in records) else 1
