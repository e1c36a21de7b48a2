"""`cupwright schema KIND`: print the JSON Schema of a kind of file."""

from collections.abc import Sequence

from planner.cli.output import NAME, say_json
from planner.cli.parsing import Parser, add_debug

KINDS = ("plan", "connector", "pinout", "cable", "part")


def run(words: Sequence[str]) -> int:
    """Print the schema and return 0."""
    parser = Parser(prog=f"{NAME} schema", description="Print the JSON Schema of a kind of file.")
    parser.add_argument("kind", choices=KINDS, help="the kind of file")
    add_debug(parser)
    kind = parser.parse_args(words).kind
    from planner.files.schema import schema  # noqa: PLC0415 - only after wrong use is told

    say_json(schema(kind))
    return 0
