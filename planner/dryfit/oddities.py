"""Figures of a connector or cable with which a dry fit means nothing."""

import math
from dataclasses import dataclass
from functools import lru_cache
from itertools import combinations
from typing import Literal

from planner.dryfit.gaps import own_gaps_mm, own_wall_gaps_mm
from planner.dryfit.identity import ById
from planner.model.cable import Cable
from planner.model.connector import Connector, Terminal

# What is less is rounding, or a drawing's own.
SLACK_MM = 0.005


@dataclass(frozen=True, slots=True)
class Oddity:
    """Two figures in mm that do not go together, and the contacts or cores that have them.

    `terminals-overlap`: middles apart, and how far they reach into each other. `outside-shell`:
    how far a terminal reaches out of the shell, and the shell's narrowest inside. `cores-overlap`:
    middles apart, and the apart that their insulation needs. `outside-jacket`: how far the
    middle of a core is from that of the cable, and half the jacket's diameter.
    """

    kind: Literal["terminals-overlap", "outside-shell", "cores-overlap", "outside-jacket"]
    names: tuple[str, ...]
    has_mm: float
    needs_mm: float


@lru_cache(maxsize=64)
def connector_oddities(kept: ById[Connector]) -> tuple[Oddity, ...]:
    """Return what is odd about a connector's terminals and shell."""
    connector = kept.record
    found = []
    for (one, other), gap_mm in own_gaps_mm(connector).items():
        if gap_mm < SLACK_MM:
            terminals = (connector.by_id[one].terminal, connector.by_id[other].terminal)
            apart = _apart_mm(*terminals)
            found.append(Oddity("terminals-overlap", (one, other), apart, max(-gap_mm, 0.0)))
    for contact, gap_mm in own_wall_gaps_mm(connector).items():
        if gap_mm < -SLACK_MM:
            narrowest = connector.shell.narrowest_mm
            found.append(Oddity("outside-shell", (contact,), -gap_mm, narrowest))
    return tuple(found)


def _apart_mm(one: Terminal, other: Terminal) -> float:
    return math.hypot(one.x_mm - other.x_mm, one.y_mm - other.y_mm)


@lru_cache(maxsize=64)
def cable_oddities(kept: ById[Cable]) -> tuple[Oddity, ...]:
    """Return what is odd about the places of a cable's cores.

    Cores may be drawn a little into each other, since insulation gives and a lay is seldom
    measured; not by more than half of the thinner one.
    """
    cable, found = kept.record, []
    for core in cable.cores:
        reach = math.hypot(core.x_mm, core.y_mm)
        if reach > cable.jacket_mm / 2 + SLACK_MM:
            found.append(Oddity("outside-jacket", (core.id,), reach, cable.jacket_mm / 2))
    for one, other in combinations(cable.cores, 2):
        apart = math.hypot(one.x_mm - other.x_mm, one.y_mm - other.y_mm)
        if apart < min(one.insulation_mm, other.insulation_mm) / 2:
            needs = (one.insulation_mm + other.insulation_mm) / 2
            found.append(Oddity("cores-overlap", (one.id, other.id), apart, needs))
    return tuple(found)
