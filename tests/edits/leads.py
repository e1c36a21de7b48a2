"""Small invented hardware and leads that the tests of the edits share."""

from planner.edits.cables import choose_cable
from planner.edits.ends import choose_connector, rename_end
from planner.edits.shapes import one_to_many, one_to_one, one_to_two
from planner.model.cable import Cable, Core, Shield
from planner.model.connector import Barrel, Clamp, Connector, Contact, Shell, Terminal
from planner.model.pinout import PinoutRecord
from planner.model.plan import Plan
from planner.model.source import Source


def connector(
    name: str, contacts: str, *, takes: int = 1, gender: str = "male", family: str = "test"
) -> Connector:
    """Make a connector with contacts in a row, named by the words of `contacts`."""
    return Connector(
        id=name,
        title=name,
        family=family,
        gender=gender,
        shell=Shell(bore_mm=10),
        clamp=Clamp(min_mm=2, max_mm=8),
        barrel=Barrel(outside_mm=12, bore_mm=9, length_mm=20),
        contacts=tuple(
            Contact(
                id=label,
                terminal=Terminal(
                    kind="cup", x_mm=2.0 * place, y_mm=0, bore_mm=1.5, depth_mm=3, takes=takes
                ),
            )
            for place, label in enumerate(contacts.split())
        ),
    )


def pinout(name: str, fits: str, drive: str = "line", **signals: str) -> PinoutRecord:
    """Make a record; `T="L+ R+"` puts two signals on contact T, `_1` means contact 1."""
    return PinoutRecord(
        id=name,
        title=name,
        fits=tuple(fits.split()),
        use="test",
        drive=drive,
        signals={contact.lstrip("_"): tuple(it.split()) for contact, it in signals.items()},
        source=Source(kind="memory"),
    )


def cable(name: str, cores: str, *, shields: tuple[Shield, ...] = (), pairs: bool = False) -> Cable:
    """Make a cable; each word is a core's id and colour; `pairs` groups them two by two."""
    made = []
    for place, code in enumerate(cores.split()):
        colours = tuple(code[at : at + 2] for at in range(0, len(code), 2))
        group = str(place // 2 + 1) if pairs else ""
        made.append(
            Core(
                id=code,
                colours=colours,
                strands=7,
                strand_mm=0.1,
                insulation_mm=0.8,
                x_mm=place,
                y_mm=0,
                group=group,
            )
        )
    return Cable(id=name, title=name, jacket_mm=4, cores=tuple(made), shields=shields)


BRAID = Shield(id="SH", kind="braid", tail_mm=0.8)
QUAD = cable("quad", "WH BU RD GN", shields=(BRAID,))
TWO_PAIRS = cable(
    "two-pairs",
    "WH BU RD GN",
    pairs=True,
    shields=(
        Shield(id="s1", kind="foil", around=("WH", "BU"), tail_mm=0.6),
        Shield(id="s2", kind="foil", around=("RD", "GN"), tail_mm=0.6),
    ),
)

FIVE = connector("five", "T R1 R2 R3 S")
CUP = connector("cup", "T S")
THREE = connector("three", "T R S", takes=2)
LINE = connector("line", "1 2 3", takes=2, gender="female", family="xlr")
FIVE_OUT = pinout(
    "five-out", "five", "driven-balanced", T="L+", R1="L-", R2="R+", R3="R-", S="shield"
)
CUP_IN = pinout("cup-in", "cup", "load", T="+", S="-")
THREE_OUT = pinout("three-out", "three", "single-ended", T="L+", R="R+", S="L- R-")
LINE_PINS = pinout("line-pins", "line line-male", "line", _1="shield", _2="+", _3="-")
LINE_MALE = LINE.evolve(id="line-male", gender="male")


def cue_lead() -> Plan:
    """A five-pole plug to two cups through a split, four cores and a braid, nothing landed."""
    plan = one_to_two(title="Cue desk")
    plan = choose_connector(plan, end="A", connector=FIVE, pinout=FIVE_OUT)
    for end in ("L", "R"):
        plan = choose_connector(plan, end=end, connector=CUP, pinout=CUP_IN)
    return choose_cable(plan, section="trunk", cable=QUAD)


def line_lead() -> Plan:
    """A balanced line from A to B; B's plug is male."""
    plan = one_to_one(policy="both-ends")
    plan = choose_connector(plan, end="A", connector=LINE, pinout=LINE_PINS)
    plan = choose_connector(plan, end="B", connector=LINE_MALE, pinout=LINE_PINS)
    return choose_cable(plan, section="trunk", cable=cable("pair", "RD BK", shields=(BRAID,)))


def pair_loom() -> Plan:
    """Two pairs, each in foil, from a seven-way plug to two lines."""
    plan = rename_end(one_to_many(2), end="A", name="rack")
    seven = connector("seven", "1 2 3 4 5 6 7")
    ways = pinout("ways", "seven", _1="1+", _2="1-", _3="shield", _4="2+", _5="2-", _6="shield")
    plan = choose_connector(plan, end="A", connector=seven, pinout=ways)
    for end in ("B1", "B2"):
        plan = choose_connector(plan, end=end, connector=LINE_MALE, pinout=LINE_PINS)
    return choose_cable(plan, section="trunk", cable=TWO_PAIRS)


def landed(plan: Plan) -> set[str]:
    """Return all landings as `end:conductor>contact`."""
    return {f"{it.end}:{it.conductor}>{it.contact}" for it in plan.landings}


def ways(plan: Plan) -> dict[str, str]:
    """Return the sections of each conductor, joined by spaces."""
    return {it.id: " ".join(run.section for run in it.runs) for it in plan.conductors}
