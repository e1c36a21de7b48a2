"""What the sheet says of a finding: the rules' own words, or those of the sheet's language."""

import tomllib
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache

from planner.checks.finding import Finding
from planner.data import data_dir
from planner.model.place import Place
from planner.sheet.words import Language, Words


@dataclass(frozen=True, slots=True)
class Told:
    """A finding in words: its code with the ends, what is, why it matters, how to mend it."""

    headline: str
    what: tuple[str, ...]
    why: str
    mend: str


def told(words: Words, finding: Finding) -> Told:
    """Return the words for a finding.

    In a language that is not the rules' own, what is wrong is said in general with its places; the
    rule's own sentence, with the figures, follows as a quotation.
    """
    headline = _headline(words, finding)
    texts = _texts(words.language).get(finding.code)
    if texts is None:
        return Told(headline, (finding.what,), finding.why, finding.mend)
    spots = ", ".join(dict.fromkeys(filter(None, (_spot(each) for each in finding.where))))
    what = f"{texts['title']}: {spots}." if spots else f"{texts['title']}."
    quoted = words("findings.in_full", what=finding.what)
    return Told(headline, (what, quoted), texts["why"], texts["mend"])


def stop_lines(words: Words, finding: Finding) -> Sequence[tuple[str, bool]]:
    """Return the lines of a stop, each with whether it is bold."""
    said = told(words, finding)
    return (
        (said.headline, True),
        *((line, False) for line in said.what),
        (words("findings.why", why=said.why), False),
        (words("findings.mend", mend=said.mend), True),
    )


def _headline(words: Words, finding: Finding) -> str:
    ends = sorted({place.end for place in finding.where if place.end})
    if not ends:
        return finding.code
    key = "findings.at_end" if len(ends) == 1 else "findings.at_ends"
    return words(key, code=finding.code, ends=", ".join(ends))


def _spot(place: Place) -> str:
    """Name a place: `A R1`, `A RD`."""
    return " ".join(
        part for part in (place.end, place.contact, place.conductor, place.part) if part
    )


@cache
def _texts(language: Language) -> dict[str, dict[str, str]]:
    """Return title, why and mend by code; nothing in the rules' own language."""
    path = data_dir("resources") / "words" / f"findings-{language}.toml"
    return tomllib.loads(path.read_text(encoding="utf-8")) if path.is_file() else {}
