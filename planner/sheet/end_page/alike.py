"""Ends that are built alike share a page: which they are, and one end that stands for all."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from planner.dryfit.work.alike import alike_ends
from planner.sheet.facts import EndFacts, Flag, Joint
from planner.sheet.leaf import Making

_MOST_FLAGGED = 3  # so many ends have their flags beside the face; more are told by the table
_MOST_CELLS = 6


@dataclass(frozen=True, slots=True)
class Shared:
    """Ends on one page, and what its face shows: the first end, with the leads of no colour."""

    ends: tuple[EndFacts, ...]
    shown: EndFacts

    @property
    def ids(self) -> tuple[str, ...]:
        """The ids of the ends."""
        return tuple(one.end.id for one in self.ends)


def shared_pages(making: Making) -> Iterator[Shared]:
    """Yield the ends page by page, in the plan's order; most are alone.

    Those that share their steps share the page too where one face shows them all.
    """
    known = {facts.end.id: facts for facts in making.facts}
    for group in alike_ends(making.plan, making.threading.routes):
        pictures: dict[object, list[EndFacts]] = {}
        for name in group:
            pictures.setdefault(_picture(known[name]), []).append(known[name])
        for ends in pictures.values():
            yield Shared(tuple(ends), ends[0] if len(ends) == 1 else _shown(ends))


def _picture(facts: EndFacts) -> object:
    """Return what of an end is drawn, but for colours and signals.

    An end with something left over, or with very many joints, looks like no other.
    """
    landed = sum(len(joint.flags) for joint in facts.joints)
    odd = facts.connector is None or facts.capped or facts.loose or landed > _MOST_CELLS
    if odd or not landed:
        return facts.end.id
    return facts.turn_deg, tuple(
        (joint.contact.id, joint.number, tuple(_kind(flag) for flag in joint.flags))
        for joint in facts.joints
    )


def _kind(flag: Flag) -> tuple[object, ...]:
    """Return what of a flag is the same on ends that are alike."""
    return (bool(flag.colours), flag.sleeved, flag.dabbed, flag.bare_mm, flag.strands)


def _shown(ends: Sequence[EndFacts]) -> EndFacts:
    """Return the end that stands for all on the face: cut as the longest, without colours."""
    one = ends[0]
    joints = tuple(
        _joint([end.joints[place] for end in ends], ends) for place in range(len(one.joints))
    )
    return replace(one, joints=joints, plain=True)


def _joint(joints: Sequence[Joint], ends: Sequence[EndFacts]) -> Joint:
    one = joints[0]
    if not one.flags:
        return replace(one, carries=common(joint.carries for joint in joints))
    flags: list[Flag] = []
    for end, joint in zip(ends, joints, strict=True):
        flags += [replace(flag, code=f"{end.end.id}: {flag.code}") for flag in joint.flags]
    longest = max(flag.cut_mm for flag in flags)
    flags = [replace(flag, cut_mm=longest) for flag in flags]
    many = len(ends) > _MOST_FLAGGED or len(one.flags) > 1
    instead = ends[0].words("end.see_table") if many else ""
    carries = common(joint.carries for joint in joints)
    return replace(one, carries=carries, flags=tuple(flags), instead=instead)


def common(signals: Iterator[str] | Sequence[str]) -> str:
    """Return the signal that all carry, or the leg that their signals end in: `1+`, `2+` are `+`.

    Nothing where they have nothing in common.
    """
    said = list(dict.fromkeys(signals))
    if len(said) == 1:
        return said[0]
    legs = {text[-1:] for text in said}
    return legs.pop() if len(legs) == 1 and legs <= {"+", "\u2212"} else ""
