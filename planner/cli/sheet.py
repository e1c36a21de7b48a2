"""`cupwright sheet PLAN -o FILE`: the bench sheet as SVG or PDF, or its cut list as CSV; units."""

from collections.abc import Sequence
from pathlib import Path

from planner.cli.output import NAME, say
from planner.cli.parsing import Parser, WrongUseError, add_debug, add_folder
from planner.cli.unit_pages import check_use, run_unit

_MOST_DATE_CHARACTERS = 40
_MOST_LEADS = 10_000


def run(words: Sequence[str]) -> int:
    """Write the sheet and name its files; return 1 if the plan has a stop, else 0."""
    args = _parser().parse_args(words)
    kind = args.output.suffix.lower()
    if kind not in {".svg", ".pdf", ".csv"}:
        raise WrongUseError(f"{str(args.output)!r} must end in .svg, .pdf or .csv.")
    if not 1 <= args.leads <= _MOST_LEADS:
        raise WrongUseError(f"--leads takes 1 to {_MOST_LEADS} leads, not {args.leads}.")
    if len(args.date) > _MOST_DATE_CHARACTERS or not args.date.isprintable():
        raise WrongUseError(f"--date takes at most {_MOST_DATE_CHARACTERS} plain characters.")
    if args.unit is not None:
        check_use(args)
        return run_unit(args)
    # Imported only now: wrong use should be told at once.
    from planner.library.loading import load_library  # noqa: PLC0415
    from planner.services.checking import check_plan, verdict  # noqa: PLC0415
    from planner.services.cutting import write_cut_list  # noqa: PLC0415
    from planner.services.opening import open_plan  # noqa: PLC0415
    from planner.services.sheets import write_sheet  # noqa: PLC0415

    plan = open_plan(args.plan)
    found = check_plan(plan, load_library(args.folder).pinouts())
    if kind == ".csv":
        paths = write_cut_list(plan, found, args.output, leads=args.leads)
    else:
        paths = write_sheet(
            plan,
            found,
            args.output,
            paper=args.paper,
            date=args.date,
            one_file=args.one_file,
            leads=args.leads,
            language=args.language,
            outlines=args.outlines,
        )
    say("\n".join(str(path) for path in paths))
    return 1 if verdict(found) == "stop" else 0


def _parser() -> Parser:
    parser = Parser(
        prog=f"{NAME} sheet",
        description="Write the bench sheet, or its cut list as .csv; with --unit what is kept of "
        "built units. Exit status 1: written, but the plan has a stop, or a unit has not passed.",
    )
    parser.add_argument("plan", metavar="PLAN", type=Path, help="the build plan")
    parser.add_argument(
        "-o",
        "--output",
        metavar="FILE",
        type=Path,
        required=True,
        help="where to: .pdf, .svg (NAME-1.svg, NAME-2.svg where it has several pages), or .csv",
    )
    parser.add_argument("--paper", choices=("a4", "letter"), default="a4", help="a4 if not given")
    parser.add_argument("--date", default="", help="a date to print; none if not given")
    parser.add_argument(
        "--language", choices=("en", "de"), default="en", help="of the sheet's words; en"
    )
    parser.add_argument(
        "--outlines", action="store_true", help="text of an .svg as outlines: no font is needed"
    )
    parser.add_argument("--one-file", action="store_true", help="put all pages in one tall .svg")
    parser.add_argument(
        "--leads", type=int, default=1, metavar="N", help="how many are built in a run; 1"
    )
    parser.add_argument(
        "--unit",
        metavar="N",
        help="instead, the certificate of a unit, or as .csv its readings; all: a summary as .csv",
    )
    add_folder(parser)
    add_debug(parser)
    return parser
