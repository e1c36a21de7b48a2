"""Small valid files of each kind, with invented hardware, to read, spoil and write."""

from planner.files.definitions import parse_definition
from planner.model.plan import (
    Acceptance,
    Cap,
    Conductor,
    Definitions,
    End,
    Landing,
    Link,
    PartUse,
    Plan,
    Run,
    Section,
    Split,
)

CONNECTOR = """\
# taken from a letter
format = "cupwright-connector"
version = 1
id = "bench-three"  # ours
title = "Bench three-pole"
family = "jack"
gender = "male"
size = "3.5"
maker = "Ferrow & Pell"
view = "solder"

[shell]
bore_mm = 7

[clamp]
min_mm = 2
max_mm = 5

[barrel]
outside_mm = 9
bore_mm = 5.2
length_mm = 26

[[contacts]]
id = "T"
name = "tip"
terminal = { kind = "lug", x_mm = 1.5, y_mm = 2, width_mm = 1.5, depth_mm = 2, opening_deg = 30 }

[[contacts]]  # the ring's lug is short
id = "R"
name = "ring"
terminal = { kind = "lug", x_mm = -1.5, y_mm = 2, width_mm = 1.5, depth_mm = 2, opening_deg = 150 }

[[contacts]]
id = "S"
name = "sleeve"
terminal = { kind = "lug", x_mm = 0, y_mm = -2.5, z_mm = 6, width_mm = 2.5, depth_mm = 1, takes=2 }
"""

PINOUT = """\
format = "cupwright-pinout"
version = 1
id = "bench-three-phones"
title = "Headphones on the bench three-pole"
fits = ["bench-three"]
use = "headphone"
drive = "load"

[signals]
T = ["L+"]
R = ["R+"]
S = ["L-", "R-"]

[source]
kind = "letter"
reference = "letter from the maker"
date = 1996-03-04
"""

CABLE = """\
format = "cupwright-cable"
version = 1
id = "bench-two"
title = "Two cores, braid"
jacket_mm = 3.2

[[cores]]
id = "RD"
colours = ["RD"]
strands = 7
awg = 28  # as the maker says
insulation_mm = 0.8
x_mm = -0.5
y_mm = 0

[[cores]]
id = "WHBU"
colours = ["WH", "BU"]
strands = 7
strand_mm = 0.12
insulation_mm = 0.8
x_mm = 0.5
y_mm = 0

[[shields]]
id = "SH"
kind = "braid"
tail_mm = 0.9
"""

PART = """\
format = "cupwright-part"
version = 1
id = "bench-boot"
title = "Bench boot"
kind = "boot"
bore_mm = 3.5
outside_mm = 8
length_mm = 22
"""

DEFINITIONS = {"connector": CONNECTOR, "pinout": PINOUT, "cable": CABLE, "part": PART}


def records(tmp_path):
    """Return the four records."""
    return {kind: parse_definition(text, tmp_path) for kind, text in DEFINITIONS.items()}


def split_plan(tmp_path):
    """Return a plan that uses every kind of record: one end, a split, two ends."""
    made = records(tmp_path)
    return Plan(
        title="Pit lead",
        order="SP-1",
        remarks="first line\nsecond line",
        ends=(
            End(id="A", connector="bench-three", pinout="bench-three-phones", turn_deg=12.5),
            End(id="L", connector="bench-three", solder_order=("S", "T")),
            End(id="R", connector="bench-three"),
        ),
        splits=(Split(id="Y", name="at the neck"),),
        sections=(
            Section(
                id="trunk",
                near="A",
                far="Y",
                cable="bench-two",
                length_mm=1200,
                shield_policy="source-end",
            ),
            Section(id="left", near="Y", far="L", fan_of="trunk", length_mm=300),
            Section(id="right", near="Y", far="R", cable="bench-two", length_mm=300.5),
        ),
        conductors=(
            Conductor(
                id="red", runs=(Run(section="trunk", core="RD"), Run(section="left", core="RD"))
            ),
            Conductor(
                id="white",
                runs=(Run(section="trunk", core="WHBU"), Run(section="right", core="WHBU")),
            ),
            Conductor(id="screen", kind="shield", runs=(Run(section="trunk", core="SH"),)),
        ),
        landings=(
            Landing(end="A", conductor="red", contact="T"),
            Landing(end="A", conductor="screen", contact="S", sleeved=True),
            Landing(end="L", conductor="red", contact="T"),
        ),
        caps=(Cap(end="R", conductor="white"),),
        links=(Link(end="L", contacts=("R", "S")),),
        parts=(PartUse(id="boot-A", part="bench-boot", at="A", comes_from="L"),),
        acceptances=(Acceptance(code="shield-floating", places=("A///",), reason="short lead"),),
        definitions=Definitions(
            connectors=(made["connector"],),
            pinouts=(made["pinout"],),
            cables=(made["cable"],),
            parts=(made["part"],),
        ),
    )
