"""The steps at a split: join cores of several cables; close it when all there is metered."""

from collections.abc import Iterator

from planner.dryfit.cut_lengths import SPLICE_MM
from planner.dryfit.work.closing import closing_needs, split_parts
from planner.dryfit.work.facts import WorkFacts
from planner.dryfit.work.starting import queues
from planner.dryfit.work.step import Step
from planner.model.plan import Conductor
from planner.units import number


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
            opened = [it for it in facts.lengths.openings if it.split == split.id]
            needs = [f"{split.id}/open/{it.section}" for it in opened]
            yield from _close(facts, split.id, (*needs, f"{split.id}/twist"))


def _made(split: str) -> tuple[str, ...]:
    return tuple(f"{split}/{act}" for act in ("splice", "splice_look", "splice_push", "meter"))


def _splice(facts: WorkFacts, split: str, joins: list[str]) -> Iterator[Step]:
    threaded = tuple(queue.id for queue in queues(facts))
    opened = tuple(
        f"{split}/open/{it.section}" for it in facts.lengths.openings if it.split == split
    )
    owns = tuple(f"{end.id}/thread/own" for end in facts.plan.ends)

    def step(act: str, heat: str, needs: tuple[str, ...], **values: str) -> Step:
        told = tuple(values.items())
        return Step(f"{split}/{act}", act, split, split, heat, told, needs)  # type: ignore[arg-type]

    def ids(*acts: str) -> tuple[str, ...]:
        return tuple(f"{split}/{act}" for act in acts)

    yield step("splice_strip", "cold", (*opened, *threaded, *owns), mm=number(SPLICE_MM))
    yield step("splice", "hot", ids("splice_strip"), joins="; ".join(joins))
    yield step("splice_look", "hot", ids("splice"))
    yield step("splice_push", "hot", ids("splice", "splice_look"))
    meter = Step(f"{split}/meter", "splice_meter", split, split, "close", (), ids("splice_push"))
    yield meter


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
            yield f"*{other}* {code}"


def _close(facts: WorkFacts, split: str, made: tuple[str, ...]) -> Iterator[Step]:
    before = (*made, *closing_needs(facts, split))
    parts = list(split_parts(facts, split))
    for route, threaded in parts:
        kind = f"split_{route.part.kind.replace('-', '_')}"
        values = (("tag", route.tag), ("title", route.part.title))
        name, needs = f"{split}/close/{route.use.id}", (*before, *threaded)
        uses = (route.use.id,)
        yield Step(name, kind, split, split, "close", values, needs, parts=uses)
        before = (*before, name)
    if not parts:
        yield Step(f"{split}/close", "split_bare", split, split, "close", (), before)
