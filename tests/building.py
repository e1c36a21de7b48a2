"""Build small plans in a few words, with invented hardware whose terminals lie far apart."""

import math
from dataclasses import dataclass

from planner.model.cable import Cable, Core, Shield
from planner.model.connector import Barrel, Clamp, Connector, Contact, Shell, Terminal
from planner.model.pinout import PinoutRecord
from planner.model.plan import (
    Cap,
    Conductor,
    Definitions,
    End,
    Landing,
    Link,
    Plan,
    Run,
    Section,
    Split,
)
from planner.model.source import Source

POLE_NAMES = {
    "T": "tip",
    "R": "ring",
    "S": "sleeve",
    "R1": "ring 1",
    "R2": "ring 2",
    "R3": "ring 3",
}


def plug(name, contacts, *, gender="male", family="jack", takes=2, drawn_from="solder"):
    """Return a connector with a contact for each word, on a circle of 20 mm."""
    words = contacts.split()
    places = tuple(
        Contact(
            id=word, name=POLE_NAMES.get(word, ""), terminal=_terminal(index, len(words), takes)
        )
        for index, word in enumerate(words)
    )
    return Connector(
        id=name,
        title=name.replace("-", " "),
        family=family,
        gender=gender,
        drawn_from=drawn_from,
        shell=Shell(bore_mm=60),
        clamp=Clamp(min_mm=1, max_mm=50),
        barrel=Barrel(outside_mm=70, bore_mm=60, length_mm=80),
        contacts=places,
    )


def _terminal(index, count, takes):
    angle = 2 * math.pi * index / count
    return Terminal(
        kind="cup",
        x_mm=20 * math.cos(angle),
        y_mm=20 * math.sin(angle),
        bore_mm=3,
        depth_mm=4,
        takes=takes,
    )


def record(name, fits, signals, *, drive="load", use="", **more):
    """Return a confirmed pinout record; `signals` reads `T L+, S L- R-`."""
    rows = [row.split() for row in signals.split(",")]
    return PinoutRecord(
        id=name,
        title=name.replace("-", " "),
        fits=(fits,),
        use=use or name,
        drive=drive,
        signals={row[0]: tuple(row[1:]) for row in rows},
        source=more.pop("source", Source(kind="standard")),
        **more,
    )


@dataclass(frozen=True)
class Fitting:
    """A connector with a pinout record."""

    connector: Connector
    pinout: PinoutRecord


def fitting(connector, name, signals, **more):
    """Return a connector with a new record for it."""
    return Fitting(connector, record(name, connector.id, signals, **more))


JACK2 = plug("two-pole-jack", "T S")
JACK3 = plug("three-pole-jack", "T R S")
JACK4 = plug("four-pole-jack", "T R1 R2 S")
JACK5 = plug("five-pole-jack", "T R1 R2 R3 S")
XLR_F = plug("xlr-3-socket", "1 2 3", gender="female", family="xlr")
XLR_M = plug("xlr-3-plug", "1 2 3", family="xlr")
PHONO = plug("phono-plug", "P S", family="phono")

PHONES = fitting(JACK3, "phones-output", "T L+, R R+, S L- R-", drive="single-ended")
PHONES_IN = fitting(JACK3, "phones-inlet", "T L+, R R+, S L- R-")
BALANCED = fitting(
    JACK5, "balanced-output", "T L+, R1 L-, R2 R+, R3 R-, S chassis", drive="driven-balanced"
)
BALANCED_IN = fitting(JACK5, "balanced-inlet", "T L+, R1 L-, R2 R+, R3 R-, S chassis")
CUP = fitting(JACK2, "cup", "T +, S -")
LINE_OUT = fitting(XLR_F, "line-from-output", "1 shield, 2 +, 3 -", drive="line")
LINE_IN = fitting(XLR_M, "line-to-input", "1 shield, 2 +, 3 -", drive="line")
PHONO_OUT = fitting(PHONO, "phono-output", "P +, S -", drive="single-ended")
PHONO_IN = fitting(PHONO, "phono-input", "P +, S -")
HEADSET = fitting(
    JACK4, "headset-inlet", "T L+, R1 R+, R2 L- R- mic-, S mic+", drive="single-ended"
)


def lead(ends, wires, *, policy=None, links=(), **more):
    """Build a lead; `ends` is {"A": fitting, "L": (fitting, channel)}, the first one is the hub.

    Each wire reads `RD A.T L.T`: a core (SH, SH1... are shields) and where it goes. `L.` comes out
    at L and is loose there; `L.!` is capped. Two ends have one section; more have a split.
    """
    given = {name: each if isinstance(each, tuple) else (each, "") for name, each in ends.items()}
    hub, *others = given
    threads = [_thread(wire, hub, others) for wire in wires]
    return Plan(
        ends=tuple(_end(name, *each) for name, each in given.items()),
        splits=(Split(id="Y"),) if len(others) > 1 else (),
        sections=_sections(hub, others, policy),
        conductors=tuple(thread.conductor for thread in threads),
        landings=tuple(it for thread in threads for it in thread.landings),
        caps=tuple(it for thread in threads for it in thread.caps),
        links=tuple(_link(text) for text in links),
        definitions=Definitions(
            connectors=_once(each.connector for each, _ in given.values()),
            pinouts=_once(each.pinout for each, _ in given.values()),
            cables=(cable([wire.split()[0] for wire in wires]),),
        ),
        **more,
    )


def _once(records):
    return tuple({each.id: each for each in records}.values())


def _end(name, each, channel):
    return End(id=name, connector=each.connector.id, pinout=each.pinout.id, channel=channel)


def _sections(hub, others, policy):
    far = "Y" if len(others) > 1 else others[0]
    trunk = Section(
        id="trunk", near=hub, far=far, cable="cable", length_mm=900, shield_policy=policy
    )
    legs = [
        Section(id=f"leg-{end}", near="Y", far=end, fan_of="trunk", length_mm=300) for end in others
    ]
    return (trunk, *legs) if len(others) > 1 else (trunk,)


@dataclass(frozen=True)
class _Thread:
    conductor: Conductor
    landings: tuple[Landing, ...]
    caps: tuple[Cap, ...]


def _thread(wire, hub, others):
    name, *stops = wire.split()
    at = [stop.split(".") for stop in stops]
    legs = [end for end in others if end in {end for end, _ in at}] if len(others) > 1 else []
    runs = [Run(section=each, core=name) for each in ("trunk", *(f"leg-{end}" for end in legs))]
    return _Thread(
        Conductor(id=name, kind="shield" if name.startswith("SH") else "core", runs=tuple(runs)),
        tuple(Landing(end=e, conductor=name, contact=c) for e, c in at if c not in {"", "!"}),
        tuple(Cap(end=end, conductor=name) for end, contact in at if contact == "!"),
    )


def _link(text):
    end, *contacts = text.split()
    return Link(end=end, contacts=tuple(contacts))


def cable(names):
    """Return a cable with a core or shield (SH...) for each name."""
    cores = [name for name in names if not name.startswith("SH")] or ["BK"]
    return Cable(
        id="cable",
        title="bench cable",
        jacket_mm=6,
        cores=tuple(_core(name, index, len(cores)) for index, name in enumerate(cores)),
        shields=tuple(
            Shield(id=name, kind="spiral", tail_mm=0.6) for name in names if name.startswith("SH")
        ),
    )


def _core(name, index, count):
    angle = 2 * math.pi * index / count
    colour = name.rstrip("0123456789")
    return Core(
        id=name,
        colours=(colour[:2], colour[2:]) if colour[2:] else (colour,),
        strands=7,
        strand_mm=0.1,
        insulation_mm=0.8,
        x_mm=2 * math.cos(angle),
        y_mm=2 * math.sin(angle),
    )
