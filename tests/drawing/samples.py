"""Invented connectors and cores for the drawing tests."""

from planner.model.cable import Core, Shield
from planner.model.connector import Barrel, Clamp, Connector, Contact, Shell, Terminal


def cup(ident, x, y, opening=90.0, bore=1.0):
    terminal = Terminal(kind="cup", x_mm=x, y_mm=y, bore_mm=bore, depth_mm=2, opening_deg=opening)
    return Contact(id=ident, terminal=terminal)


def lug(ident, x, y, opening=0.0):
    terminal = Terminal(kind="lug", x_mm=x, y_mm=y, width_mm=1.2, depth_mm=2, opening_deg=opening)
    return Contact(id=ident, terminal=terminal)


def post(ident, x, y):
    return Contact(id=ident, terminal=Terminal(kind="post", x_mm=x, y_mm=y, width_mm=1, depth_mm=2))


def connector(*contacts, **changes):
    fields = {
        "id": "sample",
        "title": "Sample plug",
        "family": "sample",
        "gender": "male",
        "drawn_from": "solder",
        "shell": Shell(bore_mm=8),
        "clamp": Clamp(min_mm=2, max_mm=5),
        "barrel": Barrel(outside_mm=9, bore_mm=6, length_mm=30),
        "contacts": contacts or (cup("1", -2, 1), lug("2", 2, 1), post("3", 0, -2)),
    }
    return Connector(**(fields | changes))


def d_connector():
    shell = Shell(shape="d", width_mm=20, height_mm=8)
    return connector(cup("1", 6, 1), cup("2", -6, -1), shell=shell)


def core(*codes, insulation_mm=0.8):
    colours = codes or ("RD",)
    return Core(
        id="".join(colours),
        colours=colours,
        strands=7,
        strand_mm=0.1,
        insulation_mm=insulation_mm,
        x_mm=0,
        y_mm=0,
    )


BRAID = Shield(id="SH", kind="braid", tail_mm=0.7)
