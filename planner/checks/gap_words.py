"""How a small gap is said: both bodies, the gap, the limit, and how much it weighs."""

from collections.abc import Callable

from planner.checks.finding import Weight
from planner.dryfit.bodies import Capsule
from planner.dryfit.gaps import Gap
from planner.model.place import Place
from planner.units import number

# A gap to watch is no fault yet: a note, so that the cautions left are those that want a mend.
GAP_WEIGHTS: dict[str, Weight] = {"touch": "stop", "sleeve": "caution", "watch": "note"}


def body_words(body: Capsule, named: Callable[[str], str]) -> str:
    """Name a body of a gap: `the joint on pin 3`, `the bare pigtail SH`, `the shell`."""
    contact = named(body.contact)
    words = {
        "terminal": contact,
        "joint": f"the joint on {contact}",
        "strands": f"the bare end of {body.conductor} on {contact}",
        "tail": f"the bare pigtail {body.conductor}",
        "shell": "the shell",
    }
    return words[body.kind]


def gap_words(gap: Gap, tolerance_mm: float, named: Callable[[str], str]) -> str:
    """Say a gap with both bodies, the limit and the tolerance; `named` says a contact."""
    one, other = body_words(gap.first, named), body_words(gap.second, named)
    if gap.grade == "touch":
        over = f" and reach {number(-gap.gap_mm)} mm into each other" if gap.gap_mm < 0 else ""
        said = f"{one} and {other} touch{over}"
    else:
        said = f"{one} and {other} are {number(gap.gap_mm)} mm apart"
    wander = f", leads taken {number(tolerance_mm)} mm thicker all round" if tolerance_mm else ""
    return f"{said}; the limit here is {number(gap.limit_mm)} mm{wander}."


def gap_places(end: str, gap: Gap) -> tuple[Place, ...]:
    """Return where the bodies of a gap are; the shell is not a place of its own."""
    return tuple(
        Place(end=end, contact=body.contact, conductor=body.conductor)
        for body in (gap.first, gap.second)
        if body.kind != "shell"
    )
