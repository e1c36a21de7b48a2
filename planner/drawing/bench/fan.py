"""The fan at a cut end: which core lies where, and its way to its contact."""

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace

from planner.drawing.bench.facts import CoreFact, EndFacts
from planner.drawing.primitives import Point
from planner.drawing.runs import curve
from planner.model.cable import Core

PLATE_PITCH_PX = 20.0
STUB_PX = 92.0
CAPPED_STUB_PX = 44.0


@dataclass(frozen=True, slots=True)
class Fan:
    """Where the cores leave the cable: `cut` is the middle of the cut, `pitch` between cores."""

    facing: int
    cut: Point
    pitch: float
    scale: float
    order: tuple[CoreFact, ...]

    def slot(self, conductor: str) -> Point:
        """Return where a conductor leaves the cable."""
        names = [core.conductor for core in self.order]
        middle = (len(names) - 1) / 2
        return (self.cut[0], self.cut[1] + (names.index(conductor) - middle) * self.pitch)


def core_width(core: CoreFact, scale: float) -> float:
    """Return the drawn width of a conductor in px."""
    material = core.material
    real = material.insulation_mm if isinstance(material, Core) else material.tail_mm
    return max(3.0, real * scale)


def _angle(point: Point, facing: int) -> float:
    """Return the angle round the face from the cable's direction, up positive, in degrees."""
    return math.degrees(math.atan2(-point[1], point[0] * facing))


def _smooth(value: float, low: float, high: float) -> float:
    share = min(1.0, max(0.0, (value - low) / (high - low)))
    return share * share * (3 - 2 * share)


def cut_gap(facts: EndFacts, half: float, zoom: float, *, plates: bool) -> float:
    """Return how far beside the shell the jacket is cut, in px: room for the plates to stagger."""
    count = len(facts.cores)
    gap = 30.0 + 15.0 * min(max(count - 2, 0), 4)
    pitch = 2 * half * 0.94 / max(count, 1)
    if plates and count > 1 and pitch < 0.7 * PLATE_PITCH_PX:
        columns = min(math.ceil(PLATE_PITCH_PX / max(pitch, 5.0)), count, 4)
        gap += 34.0 * (columns - 1)
    return gap * min(max(zoom, 0.35), 1.5)


@dataclass(frozen=True, slots=True)
class Approach:
    """How a core comes to its contact: its place in the fan, and how far it goes round."""

    key: float
    around: float
    turn: float = 0.0
    wide: float = 1.0


def _bend(joint: Point, facing: int) -> float:
    return _smooth(abs(_angle(joint, facing)), 55.0, 155.0)


def _candidates(joint: Point, cut: Point, facing: int) -> list[Approach]:
    """Return the ways to come to a contact: the natural one; for a far one, through or round."""
    angle = _angle(joint, facing)
    natural = Approach(-angle, _bend(joint, facing), math.copysign(1.0, angle))
    if abs(angle) < 110.0:
        return [natural]
    straight = math.degrees(math.atan2(joint[1] - cut[1], (cut[0] - joint[0]) * facing))
    side = math.copysign(1.0, angle)
    other = Approach((360.0 - abs(angle)) * side, 1.0, -side)
    return [
        natural,
        Approach(straight, 0.0),
        replace(natural, wide=1.5),
        other,
        replace(other, wide=1.5),
    ]


@dataclass(frozen=True)
class _Room:
    """The joints with their radii, and the width of the cores that pass between them."""

    joints: tuple[tuple[Point, float], ...]
    width: float

    def others(self, own: Point) -> list[tuple[Point, float]]:
        return [(joint, radius) for joint, radius in self.joints if joint != own]


def _crowding(way: tuple[Point, ...], own: Point, facts: _Room) -> float:
    """Return how far a core on this way lies over other joints, px."""
    total = 0.0
    for joint, radius in facts.others(own):
        nearest = min(math.dist(point, joint) for point in way)
        total += max(0.0, radius + facts.width / 2 + 3.0 - nearest)
    return total


def approaches(
    facts: EndFacts,
    joints: Mapping[str, Point],
    radii: Mapping[str, float],
    cut: Point,
    half: float,
) -> dict[str, Approach]:
    """Choose for each contact the way that lies least over the other joints."""
    widest = max((core_width(core, facts.scale) for core in facts.cores), default=6.0)
    room = _Room(tuple((joints[name], radii[name]) for name in joints), widest)
    xs = [point[0] for point in joints.values()] or [0.0]
    ys = [point[1] for point in joints.values()] or [0.0]
    if len(joints) > 6 and max(ys) - min(ys) > 1.5 * (max(xs) - min(xs)):
        return {name: Approach(point[1], 0.0) for name, point in joints.items()}
    found = {}
    for name, joint in joints.items():
        choice = _candidates(joint, cut, facts.facing)
        if len(choice) == 1 or len(joints) > 9:
            found[name] = choice[0]
            continue
        costs = []
        for place, approach in enumerate(choice):
            level = max(-1.0, min(1.0, approach.key / 90.0)) * half * 0.8
            way = way_to((cut[0], cut[1] + level), joint, facts.facing, approach)
            costs.append((round(_crowding(way, joint, room)), place))
        found[name] = choice[min(costs)[1]]
    return found


def _place_key(core: CoreFact, facts: EndFacts, ways: Mapping[str, Approach]) -> float:
    """Return what orders the fan from top to bottom."""
    approach = ways.get(core.contact or core.wanted)
    if approach is not None:
        return approach.key
    material = core.material
    if isinstance(material, Core):
        return -60.0 * material.y_mm / max(facts.jacket_mm / 2, 0.1)
    return 200.0


def make_fan(
    facts: EndFacts, ways: Mapping[str, Approach], cut: Point, half: float, *, plates: bool
) -> Fan:
    """Order the cores by where they land, so that none needs to cross another."""
    order = sorted(facts.cores, key=lambda core: (_place_key(core, facts, ways), core.conductor))
    count = max(len(order), 1)
    widest = max((core_width(core, facts.scale) for core in order), default=6.0)
    wanted = max(widest + 3.0, PLATE_PITCH_PX if plates else 0.0)
    pitch = min(wanted, 2 * half * 0.94 / count) if count > 1 else wanted
    return Fan(facts.facing, cut, pitch, facts.scale, tuple(order))


def _arrival(joint: Point, facing: int, approach: Approach) -> Point:
    """Return the unit direction from which a core comes to its contact."""
    size = math.hypot(*joint) or 1.0
    radial = (joint[0] / size, joint[1] / size)
    around = approach.around
    if approach.turn and radial[1] * approach.turn > 0:
        # Round the other way: come over the far edge, from above or from below.
        radial = (radial[0], -radial[1])
    lift = -approach.turn * 0.35 * around if abs(radial[1]) < 0.35 else 0.0
    ways = (
        radial[0] * 0.55 * around + facing * (1 - 0.5 * around),
        radial[1] * 0.75 * around + lift,
    )
    length = math.hypot(*ways) or 1.0
    return (ways[0] / length, ways[1] / length)


def way_to(slot: Point, joint: Point, facing: int, approach: Approach) -> tuple[Point, ...]:
    """Return the curve from the cut to a contact, round the others where it lies beyond them."""
    distance = math.dist(slot, joint)
    unit = _arrival(joint, facing, approach)
    reach = distance * (0.30 + 0.12 * approach.around) * approach.wide
    leaving = (slot[0] - facing * distance * 0.34, slot[1])
    arriving = (joint[0] + unit[0] * reach, joint[1] + unit[1] * reach)
    return curve(slot, leaving, arriving, joint, 26)


def stub_length(zoom: float, *, capped: bool) -> float:
    """Return how far a loose core stands out of the cable, px."""
    return (CAPPED_STUB_PX if capped else STUB_PX) * min(max(zoom, 0.25), 1.4)


def drift_to(slot: Point, towards: Point | None, zoom: float) -> float:
    """Return how far up or down a loose core turns to where it should go, px."""
    if towards is None:
        return 0.0
    return max(-16.0, min(16.0, (towards[1] - slot[1]) * 0.25)) * min(zoom, 1.0)


def stub(slot: Point, facing: int, length: float, drift: float) -> tuple[Point, ...]:
    """Return the short way of a core that lies loose."""
    end = (slot[0] - facing * length, slot[1] + drift)
    leaving = (slot[0] - facing * length * 0.4, slot[1] + drift * 0.1)
    arriving = (end[0] + facing * length * 0.3, slot[1] + drift * 0.7)
    return curve(slot, leaving, arriving, end, 14)
