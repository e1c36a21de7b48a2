"""`cupwright connectors`: list, show, validate, compare, send and take in definitions."""

from collections.abc import Sequence
from pathlib import Path
from typing import TYPE_CHECKING

from planner.cli.output import NAME
from planner.cli.parsing import Parser, add_debug, add_folder

if TYPE_CHECKING:
    from argparse import _SubParsersAction

_ACTS = ("list", "show", "validate", "compare", "export", "import", "used", "newer")
RUNGS = ("hearsay", "documented", "confirmed", "confirmed-by-two")


def run(words: Sequence[str]) -> int:
    """Do what is asked, `list` if nothing is; return 0, or 3 if a file is not valid."""
    args = _parser().parse_args(_with_list(words))
    # Only after wrong use is told.
    from planner.cli import (  # noqa: PLC0415
        definitions_acts,
        definitions_parcels,
        definitions_plans,
    )

    acts = {
        "list": definitions_acts.list_all,
        "show": definitions_acts.show,
        "validate": definitions_acts.validate,
        "compare": definitions_acts.compare,
        "export": definitions_parcels.export,
        "import": definitions_parcels.take,
        "used": definitions_plans.find_used,
        "newer": definitions_plans.find_newer,
    }
    return acts[args.act](args)


def _with_list(words: Sequence[str]) -> list[str]:
    """Put `list` first where no act is named, so that `connectors --json` lists."""
    given = [word for word in words if word != "--debug"]
    asks_for_help = bool(given) and given[0] in {"-h", "--help"}
    names_no_act = not given or given[0].startswith("-")
    return ["list", *words] if names_no_act and not asks_for_help else list(words)


def _parser() -> Parser:
    parser = Parser(
        prog=f"{NAME} connectors",
        description="List, show, validate, compare, send and take in connectors, pinout records, "
        "cables, parts.",
    )
    acts = parser.add_subparsers(dest="act", required=True, metavar="|".join(_ACTS))
    listing = acts.add_parser("list", help="list them; WORDS narrow it, such as 3.5 two")
    listing.add_argument("words", nargs="*", metavar="WORDS", help="size, poles, family, signals")
    listing.add_argument("--trust", choices=RUNGS, help="pinout records on that rung only")
    showing = acts.add_parser("show", help="show one")
    showing.add_argument("id", metavar="ID")
    validating = acts.add_parser("validate", help="read files, or folders of them, and say why not")
    validating.add_argument("paths", nargs="+", type=Path, metavar="PATH")
    comparing = acts.add_parser("compare", help="say in what two of a kind differ")
    comparing.add_argument("first", metavar="ID")
    comparing.add_argument("second", metavar="ID")
    sending = acts.add_parser("export", help="write one with its sources and documents to a file")
    sending.add_argument("id", metavar="ID")
    sending.add_argument("-o", "--output", type=Path, metavar="FILE", help="else ID.parcel.json")
    taking = _add_import(acts)
    using, updating = _add_plans(acts)
    for act in (listing, showing, validating, comparing, taking, using, updating):
        act.add_argument("--json", action="store_true", help="print JSON")
    for act in (listing, showing, validating, comparing, sending, taking, using, updating):
        add_debug(act)
    for act in (listing, showing, comparing, sending, taking, using, updating):
        add_folder(act)
    add_debug(parser)
    return parser


def _add_plans(acts: "_SubParsersAction[Parser]") -> tuple[Parser, Parser]:
    using = acts.add_parser("used", help="list the plans that use one")
    using.add_argument("id", metavar="ID")
    using.add_argument(
        "paths", nargs="+", type=Path, metavar="PATH", help="plans, or folders of them"
    )
    updating = acts.add_parser("newer", help="say what of a plan is newer here, and what it means")
    updating.add_argument("path", type=Path, metavar="PLAN")
    updating.add_argument("--write", action="store_true", help="take it into the plan")
    return using, updating


def _add_import(acts: "_SubParsersAction[Parser]") -> Parser:
    taking = acts.add_parser("import", help="show what such a file holds; with --save, take it in")
    taking.add_argument("path", type=Path, metavar="FILE")
    taking.add_argument("--save", action="store_true", help="save what is new into your folder")
    taking.add_argument(
        "--next", action="append", default=[], metavar="ID", help="take theirs as the next revision"
    )
    taking.add_argument(
        "--beside", action="append", default=[], metavar="ID", help="keep both, theirs by a new id"
    )
    taking.add_argument("--into", type=Path, metavar="FOLDER", help="else your own folder")
    taking.add_argument("--who", default="", metavar="NAME", help="who takes it in, for the log")
    return taking
