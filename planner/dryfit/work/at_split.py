"""The steps at a split: join cores of several cables; close it when all there is metered."""

from collections.abc import Iterator
from dataclasses import replace

from planner.dryfit.splicing import SPLICE_MM
from planner.dryfit.work.closing import closing_needs, part_step, resting
from planner.dryfit.work.facts import WorkFacts
from planner.dryfit.work.starting import opened
from planner.dryfit.work.step import Heat, Step
from planner.model.plan import Conductor
from planner.units import number

_AFTER_SPLICE: tuple[tuple[str, Heat], ...] = (
    ("splice_look", "hot"),
    ("splice_push", "hot"),
    ("splice_meter", "close"),
)


def splicing_steps(facts: WorkFacts) -> Iterator[Step]:
    """Yield the steps that join cores inside splits, and close those splits."""
    for split in facts.plan.splits:
        joins = list(_joins(facts, split.id))
        if joins:
            yield from _splice(facts, split.id, joins)
            yield from _close(facts, split.id, _made(split.id))


def closing_steps(facts: WorkFacts) -> Iterator[Step]:
    """Yield the steps that close the splits where cores only leave their jacket."""
    for split in facts.plan.splits:
        if not any(_joins(facts, split.id)):
            needs = (*opened(facts, split.id), f"{split.id}/shield", f"{split.id}/twist")
            yield from _close(facts, split.id, needs)


def _made(split: str) -> tuple[str, ...]:
    return tuple(f"{split}/{act}" for act in ("splice", *(act for act, _ in _AFTER_SPLICE)))


def _splice(facts: WorkFacts, split: str, joins: list[str]) -> Iterator[Step]:
    owns = (f"{end.id}/thread/own" for end in facts.plan.ends)
    ready = (*opened(facts, split), *(queue.id for queue in facts.queues), *owns)
    prepared = tuple(f"{split}/{act}" for act in ("shield", "splice_tails", "splice_strip"))
    metal = f"{split}/splice"
    if _joins_shields(facts, split):
        yield Step(prepared[1], "splice_tails", split, split, "cold", (), ready)
    strip = (("mm", number(SPLICE_MM)),)
    yield Step(prepared[2], "splice_strip", split, split, "cold", strip, ready)
    told = (("joins", "; ".join(joins)),)
    yield Step(metal, "splice", split, split, "hot", told, (*ready, *prepared))
    before: tuple[str, ...] = (metal,)
    for act, heat in _AFTER_SPLICE:
        yield Step(f"{split}/{act}", act, split, split, heat, (), before)
        before = (*before, f"{split}/{act}")


def _joins_shields(facts: WorkFacts, split: str) -> bool:
    shields = [it for it in facts.plan.conductors if it.kind == "shield"]
    return any(len(list(_pieces(facts, it, split))) > 1 for it in shields)


def _joins(facts: WorkFacts, split: str) -> Iterator[str]:
    """Yield what is joined at a split: the core of each cable, with where that cable goes."""
    for conductor in facts.plan.conductors:
        pieces = list(_pieces(facts, conductor, split))
        if len(pieces) > 1:
            yield " + ".join(pieces)


def _pieces(facts: WorkFacts, conductor: Conductor, split: str) -> Iterator[str]:
    for run in conductor.runs:
        section = facts.plan.section_by_id.get(run.section)
        part = facts.plan.part_of(run)
        if section is None or part is None or section.fan_of:
            continue
        if split in {section.near, section.far}:
            other = section.far if section.near == split else section.near
            code = facts.section_codes(section.id)[conductor.id]
            yield f"*{other}*\u00a0{code}"


def _close(facts: WorkFacts, split: str, made: tuple[str, ...]) -> Iterator[Step]:
    before = (*made, *closing_needs(facts, split))
    steps = [part_step(facts, (route,), split, ()) for route in resting(facts, split)]
    bare = Step(f"{split}/close", "split_bare", split, split, "close")
    for step in steps or [bare]:
        yield replace(step, needs=(*before, *step.needs))
        before = (*before, step.id)
