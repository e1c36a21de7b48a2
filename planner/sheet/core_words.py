"""Colours of cores and kinds of shields in the words of the sheet's language."""

from planner.sheet.facts import Flag
from planner.sheet.words import Words


def core_words(words: Words, flag: Flag) -> str:
    """Say a core's colours, or what a shield is made of."""
    if not flag.colours:
        return words(f"colours.{flag.shield}")
    body = words(f"colours.{flag.colours[0]}")
    if len(flag.colours) == 1:
        return body
    return words("colours.striped", body=body, stripe=words(f"colours.{flag.colours[1]}"))
