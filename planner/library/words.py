"""Rank a record against typed words: by size, poles, family, maker, signals, title."""

import re
from functools import singledispatch

from planner.model.cable import Cable
from planner.model.connector import Connector
from planner.model.part import Part
from planner.model.pinout import PinoutRecord

_NUMBERS = tuple(
    "zero one two three four five six seven eight nine ten eleven twelve".split()  # noqa: SIM905
)
_WORD = re.compile(r"[\w.+-]+")
_EXACT, _START, _INSIDE = 4, 2, 1
_TITLE_BONUS = 2


def rank(text: str, record: Connector | PinoutRecord | Cable | Part) -> tuple[int, int]:
    """Return how well the words meet the record, to be sorted by; (0, 0) if one is not found.

    A whole word counts more than its beginning, that more than its inside; in the title more. Of
    two alike, the one whose title says less besides is the better.
    """
    title, others = _words(record.title), _words(" ".join((record.id, *_facts(record))))
    scores = [
        max(_met(word, title) * _TITLE_BONUS, _met(word, others))
        for word in _words(text.replace(",", "."))
    ]
    return (sum(scores), -len(title)) if all(scores) else (0, 0)


def _met(word: str, among: list[str]) -> int:
    if word in among:
        return _EXACT
    if any(other.startswith(word) for other in among):
        return _START
    return _INSIDE if len(word) > 2 and any(word in other for other in among) else 0


def _words(text: str) -> list[str]:
    """Split into lower-case words; `two-pole` is met by `two` and by `pole` too."""
    words = [word.strip(".") for word in _WORD.findall(text.casefold())]
    pieces = [piece for word in words if "-" in word.strip("-") for piece in word.split("-")]
    return [word for word in (*words, *pieces) if word]


def _pole_words(poles: int) -> tuple[str, ...]:
    spelt = _NUMBERS[poles] if poles < len(_NUMBERS) else str(poles)
    return (str(poles), spelt, f"{spelt}-pole", f"{poles}-pole", f"{poles}-pin")


@singledispatch
def _facts(record: object) -> tuple[str, ...]:
    raise TypeError(type(record).__name__)


@_facts.register
def _(record: Connector) -> tuple[str, ...]:
    poles = _pole_words(record.poles)
    return (record.family, record.size, record.maker, record.gender, *poles)


@_facts.register
def _(record: PinoutRecord) -> tuple[str, ...]:
    signals = [signal for carried in record.signals.values() for signal in carried]
    return (record.use, record.maker, record.drive, record.source.kind, *record.fits, *signals)


@_facts.register
def _(record: Cable) -> tuple[str, ...]:
    cores = f"{len(record.cores)}-core"
    kinds = ("shielded", *{shield.kind for shield in record.shields}) if record.shields else ()
    spelt = _pole_words(len(record.cores))[:2]
    return (record.maker, record.spool, cores, *spelt, *kinds, record.jacket_colour)


@_facts.register
def _(record: Part) -> tuple[str, ...]:
    return (record.kind, record.maker)
