"""The names and flags beside a face: their sizes, and which joint stands on which side."""

from dataclasses import dataclass

from planner.drawing.face import contact_point
from planner.drawing.metrics import text_width
from planner.model.connector import Connector
from planner.sheet.facts import EndFacts, Joint
from planner.sheet.flags import flag_width
from planner.sheet.lettering import BIG, BODY, cap

GAP = 260.0


@dataclass(frozen=True, slots=True)
class Sizes:
    """How large a face panel's parts are, in 0.01 mm."""

    width: float
    face: float
    name: float
    flag: float
    bar: float
    shown: int = 3  # flags of a joint beside the face; the table has them all


WIDE = Sizes(width=11800, face=6350, name=BIG, flag=700, bar=900)


@dataclass(frozen=True, slots=True)
class Side:
    """The names and flags that stand left or right of the face, from the top down."""

    joints: tuple[Joint, ...]
    height: float


def share_sides(facts: EndFacts, connector: Connector, sizes: Sizes) -> tuple[Side, Side]:
    """Share the joints between left and right by their place, middle ones to the emptier."""
    spots = {
        joint.contact.id: contact_point(
            connector, joint.contact.id, centre=(0, 0), scale=1, turn_deg=facts.turn_deg
        )
        for joint in facts.joints
    }
    lean = 0.12 * connector.shell.narrowest_mm / 2
    sides: tuple[list[Joint], list[Joint]] = ([], [])
    middle = []
    for joint in facts.joints:
        x = spots[joint.contact.id][0]
        if abs(x) <= lean:
            middle.append(joint)
        else:
            sides[int(x > 0)].append(joint)
    for joint in sorted(middle, key=lambda joint: spots[joint.contact.id][1], reverse=True):
        # Of two sides with as many, a low one stands right: left below is the mating key.
        more, low = len(sides[0]) - len(sides[1]), spots[joint.contact.id][1] > 0
        sides[int(more > 0 or (more == 0 and low))].append(joint)
    ordered = [tuple(sorted(side, key=lambda joint: spots[joint.contact.id][1])) for side in sides]
    heights = [sum(block_height(joint, sizes) + GAP for joint in side) for side in ordered]
    return Side(ordered[0], heights[0]), Side(ordered[1], heights[1])


def block_height(joint: Joint, sizes: Sizes) -> float:
    """Return how high a joint's name and flags are."""
    flags = min(max(len(joint.flags), 1), sizes.shown)
    more = cap(BODY) + 60 if len(joint.flags) > sizes.shown else 0
    return cap(sizes.name) + 200 + flags * (sizes.flag + 80) + more


def column_width(facts: EndFacts, sizes: Sizes) -> float:
    """Return how wide the names and flags beside the face are, with their margins."""
    flags = [flag_width(flag, sizes.flag) for joint in facts.joints for flag in joint.flags]
    names = [
        text_width(joint.contact.id, sizes.name, bold=True) + 0.3 * sizes.name + _carried(joint)
        for joint in facts.joints
    ]
    more = [
        text_width(facts.words("end.more_in_table", count=len(joint.flags)), BODY)
        for joint in facts.joints
        if len(joint.flags) > sizes.shown
    ]
    return min(max([*flags, *names, *more, 0.0]) + 400, 0.36 * sizes.width)


def _carried(joint: Joint) -> float:
    return text_width(joint.carries, BODY)
