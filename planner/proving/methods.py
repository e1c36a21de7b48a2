"""The ways to measure isolation. A module of its own: the command line names them at once."""

from typing import Literal, get_args

Method = Literal["pairs", "against-the-rest", "gangs", "gangs-of-near"]
METHODS: tuple[Method, ...] = get_args(Method)
METHOD_WORDS: dict[str, str] = {
    "pairs": "Pairs, the nearest first",
    "against-the-rest": "Each against the rest",
    "gangs": "Gangs, clipped together",
    "gangs-of-near": "Gangs of those that are near",
}
