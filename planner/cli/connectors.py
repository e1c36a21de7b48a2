"""`cupwright connectors`: list, show, validate and compare definitions and pinout records."""

from collections.abc import Sequence
from pathlib import Path

from planner.cli.output import NAME
from planner.cli.parsing import Parser, add_debug, add_folder

_ACTS = ("list", "show", "validate", "compare")


def run(words: Sequence[str]) -> int:
    """Do what is asked, `list` if nothing is; return 0, or 3 if a file is not valid."""
    args = _parser().parse_args(_with_list(words))
    from planner.cli import definitions_acts  # noqa: PLC0415 - only after wrong use is told

    acts = {
        "list": definitions_acts.list_all,
        "show": definitions_acts.show,
        "validate": definitions_acts.validate,
        "compare": definitions_acts.compare,
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
        description="List, show, validate and compare connectors, pinout records, cables, parts.",
    )
    acts = parser.add_subparsers(dest="act", required=True, metavar="|".join(_ACTS))
    listing = acts.add_parser("list", help="list them; WORDS narrow it, such as 3.5 two")
    listing.add_argument("words", nargs="*", metavar="WORDS", help="size, poles, family, signals")
    showing = acts.add_parser("show", help="show one")
    showing.add_argument("id", metavar="ID")
    validating = acts.add_parser("validate", help="read files, or folders of them, and say why not")
    validating.add_argument("paths", nargs="+", type=Path, metavar="PATH")
    comparing = acts.add_parser("compare", help="say in what two of a kind differ")
    comparing.add_argument("first", metavar="ID")
    comparing.add_argument("second", metavar="ID")
    for act in (listing, showing, validating, comparing):
        act.add_argument("--json", action="store_true", help="print JSON")
        add_debug(act)
    for act in (listing, showing, comparing):
        add_folder(act)
    add_debug(parser)
    return parser
