"""Small leads of every shape (invented), each with its named mistakes written out by hand.

A mistake is a map from contact to contact. That it is counted from the mating side means: on a ring
of five or three contacts, one of which is the first, counted the other way round; on a ring of
four, left and right exchanged (plane geometry; the plugs of tests/building.py are such rings).
"""

import random
from dataclasses import dataclass

from tests.building import (
    BALANCED,
    BALANCED_IN,
    CUP,
    HEADSET,
    LINE_IN,
    LINE_OUT,
    PHONES,
    PHONES_IN,
    fitting,
    lead,
    plug,
)


@dataclass(frozen=True)
class Sample:
    """A lead, its mistakes, and how many faults are tried out in full."""

    plan: object
    mistakes: tuple
    deepest: int = 3


def cycles(end, *words):
    """Return the map of cycles at an end: `T R S` takes what is on T to R, R to S, S to T."""
    steps = {}
    for word in words:
        names = word.split()
        for one, other in zip(names, names[1:] + names[:1], strict=True):
            steps[end, one] = (end, other)
    return steps


def exchanged(one, other, names):
    """Return the map that exchanges what is on all contacts of two ends."""
    steps = {}
    for name in names:
        steps |= {(one, name): (other, name), (other, name): (one, name)}
    return steps


def shifted(end, names):
    """Return the maps of every core one contact too far, and one short."""
    words = names.split()
    return [cycles(end, names), cycles(end, " ".join(reversed(words)))]


_FIVE = "T R1 R2 R3 S"


def _five(end):
    """The mistakes at a five-pole plug: shifted, mirrored, all reversed, channels exchanged."""
    return [
        *shifted(end, _FIVE),
        cycles(end, "R1 S", "R2 R3"),
        cycles(end, "T R1", "R2 R3"),
        cycles(end, "T R2", "R1 R3"),
    ]


LINE = Sample(
    lead({"A": LINE_OUT, "B": LINE_IN}, ["SH A.1 B.1", "RD A.2 B.2", "BU A.3 B.3"]),
    (*shifted("A", "1 2 3"), *shifted("B", "1 2 3")),
    deepest=4,
)
FIVE = Sample(
    lead(
        {"A": BALANCED, "B": BALANCED_IN},
        ["WH A.T B.T", "BU A.R1 B.R1", "RD A.R2 B.R2", "GN A.R3 B.R3", "SH A.S B.S"],
    ),
    (*_five("A"), *_five("B")),
)
# Two returns on one contact at both ends: to exchange R with S takes three cores along.
JOINED_RETURNS = Sample(
    lead({"A": PHONES, "B": PHONES_IN}, ["WH A.T B.T", "RD A.R B.R", "BU A.S B.S", "GN A.S B.S"]),
    tuple(it for end in "AB" for it in (*shifted(end, "T R S"), cycles(end, "R S"))),
)
HEADPHONES = Sample(
    lead(
        {"A": PHONES, "L": (CUP, "L"), "R": (CUP, "R")},
        ["WH A.T L.T", "RD A.R R.T", "BU A.S L.S", "GN A.S R.S"],
    ),
    (*shifted("A", "T R S"), cycles("A", "R S"), exchanged("L", "R", "TS")),
)
BALANCED_HEADPHONES = Sample(
    lead(
        {"A": BALANCED, "L": (CUP, "L"), "R": (CUP, "R")},
        ["WH A.T L.T", "RD A.R2 R.T", "BU A.R1 L.S", "GN A.R3 R.S"],
    ),
    (*_five("A"), exchanged("L", "R", "TS")),
)
LINKED = Sample(
    lead(
        {"A": PHONES, "B": HEADSET},
        ["WH A.T B.T", "RD A.R B.R1", "BU A.S B.R2"],
        links=["B R2 S"],
    ),
    (*shifted("A", "T R S"), *shifted("B", "T R1 R2 S")),
)
ONE_TO_TWO = Sample(
    lead(
        {"A": LINE_OUT, "B": LINE_IN, "C": LINE_IN},
        ["SH A.1 B.1 C.1", "RD A.2 B.2 C.2", "BU A.3 B.3 C.3"],
    ),
    (
        *(it for end in "ABC" for it in shifted(end, "1 2 3")),
        exchanged("B", "C", "123"),
    ),
)
SHIELD_AT_ONE_END = Sample(
    lead({"A": PHONES, "B": HEADSET}, ["WH A.T B.T", "RD A.R B.R1", "BU A.S B.R2", "SH A.S"]),
    (*shifted("A", "T R S"), cycles("A", "R S"), *shifted("B", "T R1 R2 S")),
)
SAMPLES = {
    "line": LINE,
    "five": FIVE,
    "joined returns": JOINED_RETURNS,
    "headphones": HEADPHONES,
    "balanced headphones": BALANCED_HEADPHONES,
    "linked": LINKED,
    "one to two": ONE_TO_TWO,
    "shield at one end": SHIELD_AT_ONE_END,
}

_COLOURS = ("BK", "BN", "RD", "OG", "YE", "GN", "BU", "VT", "GY", "WH")


def straight(count):
    """Return a one-to-one lead of so many conductors between two plugs of as many contacts."""
    names = " ".join(str(number + 1) for number in range(count))
    one, other = (
        fitting(plug(f"{end}-{count}", names, family="dsub"), f"use-{end}", "1 L+, 2 L-")
        for end in ("from", "to")
    )
    wires = [f"{_COLOURS[it % 10]}{it} A.{it + 1} B.{it + 1}" for it in range(count)]
    return lead({"A": one, "B": other}, wires)


_JACKS = {
    count: fitting(plug(f"jack-{count}", names), f"jack-use-{count}", signals)
    for count, names, signals in (
        (2, "T S", "T L+,S L-"),
        (3, "T R S", "T L+,R R+,S L- R-"),
        (4, "T R1 R2 S", "T L+,R1 L-,R2 R+,S R-"),
    )
}


def any_lead(seed):
    """Return a small lead of two or three ends wired at random: empty, shared, linked contacts."""
    dice = random.Random(seed)
    ends = "ABC"[: dice.choice([2, 2, 3])]
    sizes = {end: dice.choice([2, 3, 4] if len(ends) == 2 else [2, 3]) for end in ends}
    names = {end: _JACKS[size].connector.by_id for end, size in sizes.items()}
    wires = []
    for core in dice.sample(["RD", "GN", "BU", "WH", "SH"], dice.randint(1, 4)):
        there = [end for end in ends if end == "A" or dice.random() < 0.8]
        wires.append(" ".join([core, *(f"{end}.{dice.choice(list(names[end]))}" for end in there)]))
    linked = [end for end in ends if dice.random() < 0.2]
    links = [" ".join([end, *dice.sample(list(names[end]), 2)]) for end in linked]
    return lead({end: _JACKS[size] for end, size in sizes.items()}, wires, links=links)
