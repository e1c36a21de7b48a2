"""`cupwright identify READINGS.csv`: which contacts hold drivers, a return, a shell."""

from collections.abc import Sequence
from pathlib import Path

from planner.cli.output import NAME, say, say_json
from planner.cli.parsing import Parser, add_debug


def run(words: Sequence[str]) -> int:
    """Print what was found; return 0 if the readings settle it, else 1."""
    args = _parser().parse_args(words)
    # Imported only now: wrong use should be told at once.
    from planner.cli.identify_text import identify_text  # noqa: PLC0415
    from planner.cli.identify_values import identify_values  # noqa: PLC0415
    from planner.proving.identifying import identify  # noqa: PLC0415
    from planner.proving.identifying.sample_csv import read_sample  # noqa: PLC0415

    sample = read_sample(Path(args.readings))
    identified = identify(sample)
    if args.json:
        say_json(identify_values(args.readings, sample, identified))
    else:
        say(identify_text(args.readings, sample, identified))
    return 0 if identified.certain else 1


def _parser() -> Parser:
    parser = Parser(
        prog=f"{NAME} identify",
        description="Tell from the resistance between the contacts of a socket, a lead or a "
        "headphone where its drivers, common return, shell and microphone are. Unplug it from "
        "everything first. Left or right and polarity are not in the resistance. Exit status 0: "
        "settled; 1: more than one way to understand the readings, or none; 3: not readable.",
    )
    parser.add_argument(
        "readings", metavar="READINGS.csv", help="rows of from,to,reading: see docs/formats/sample"
    )
    parser.add_argument("--json", action="store_true", help="print one JSON object")
    add_debug(parser)
    return parser
