"""The steps before the first plug: cut, open the splits, twist the legs, mark, thread."""

from collections.abc import Iterator
from dataclasses import replace

from planner.dryfit.work.facts import WorkFacts
from planner.dryfit.work.queues import Queue
from planner.dryfit.work.step import CUT, Step, bold_list, span
from planner.units import number

LEAD_CUT, MARK = "lead/cut", "lead/mark"


def starting_steps(facts: WorkFacts) -> Iterator[Step]:
    """Yield what is done to the cable alone."""
    yield Step(LEAD_CUT, "cut", CUT)
    for split in facts.plan.splits:
        yield from _opening(facts, split.id)
    yield from _mark(facts)
    yield from threading_steps(facts)


def opened(facts: WorkFacts, split: str) -> tuple[str, ...]:
    """Return the ids of the steps that open the jackets of a split."""
    return tuple(
        f"{it.split}/open/{it.section}" for it in facts.lengths.openings if it.split == split
    )


def _opening(facts: WorkFacts, split: str) -> Iterator[Step]:
    here = [it for it in facts.lengths.openings if it.split == split]
    for it in here:
        values = (("mm", number(it.keep_mm)), ("start", it.start))
        name = f"{split}/open/{it.section}"
        yield Step(name, "open", CUT, split, values=values, needs=(LEAD_CUT,))
    needs = opened(facts, split)
    if any(_stops(facts, split)):
        yield Step(f"{split}/shield", "split_shield", CUT, split, needs=needs)
    legs = dict(_legs(facts, split))
    if legs:
        told = "; ".join(f"*{leg}* {' '.join(codes)}" for leg, codes in legs.items())
        needs = (*needs, f"{split}/shield")
        yield Step(f"{split}/twist", "twist", CUT, split, values=(("legs", told),), needs=needs)


def _stops(facts: WorkFacts, split: str) -> Iterator[str]:
    """Yield the shields that go on into no other section at a split."""
    for it in facts.plan.conductors:
        if it.kind == "shield" and split in facts.stops_of(it):
            yield it.id


def _legs(facts: WorkFacts, split: str) -> Iterator[tuple[str, list[str]]]:
    """Yield the legs that are cores of another cable, with what is in them."""
    for leg in facts.plan.sections:
        if leg.fan_of and split in {leg.near, leg.far}:
            trunk = facts.section_codes(leg.fan_of)
            codes = [trunk.get(name, code) for name, code in facts.section_codes(leg.id).items()]
            yield (leg.far if leg.near == split else leg.near), codes


def _mark(facts: WorkFacts) -> Iterator[Step]:
    needs = (LEAD_CUT, *(f"{split.id}/twist" for split in facts.plan.splits))
    ends = bold_list(end.id for end in facts.plan.ends)
    yield Step(MARK, "mark", CUT, values=(("ends", ends),), needs=needs)


def threading_steps(facts: WorkFacts) -> Iterator[Step]:
    """Yield a step for each queue of parts; then what a plug without parts wants on the cable."""
    done: list[Queue] = []
    for queue in facts.queues:
        after = (it.id for it in done if _meet(facts, it, queue))
        values = (("ends", span(queue.ends)), ("tags", bold_list(queue.tags)))
        parts = tuple(route.use.id for route in queue.routes)
        needs = (*_bare(facts), *after)
        kind = "thread" if len(queue.rows) > 1 else "thread_one"
        step = Step(queue.id, kind, CUT, queue.ends[0], "", values, needs, queue.ends)
        yield replace(step, parts=parts)
        done.append(queue)
    for group in facts.groups:
        if wants_own_shell(facts, group[0]):
            yield _own(facts, group, [queue.id for queue in done])


def _meet(facts: WorkFacts, one: Queue, other: Queue) -> bool:
    return any(facts.meets(first, last) for first in one.routes for last in other.routes)


def _own(facts: WorkFacts, group: tuple[str, ...], threaded: list[str]) -> Step:
    """Return the step for the parts that come with a plug: they go on last at their end."""
    end, values = group[0], (("ends", span(group)),)
    after = tuple(name for name in threaded if name.startswith(f"{end}/"))
    kind = "thread_rest" if after else "thread_own"
    needs = (*_bare(facts), *after)
    return Step(f"{end}/thread/own", kind, CUT, end, "", values, needs, group)


def _bare(facts: WorkFacts) -> tuple[str, ...]:
    """Return the steps after which the cable is ready for parts."""
    splits = [split.id for split in facts.plan.splits]
    opens = [name for split in splits for name in opened(facts, split)]
    return (MARK, *opens, *(f"{split}/twist" for split in splits))


def wants_own_shell(facts: WorkFacts, end: str) -> bool:
    """Tell whether a plug is closed by what comes with it and goes round the cable.

    A D has a hood that is laid round it. A plan that has a shell or a boot for it says how.
    """
    connector = facts.plan.connector_of(end)
    if connector is None or connector.shell.shape == "d" or facts.fit(end) is None:
        return False
    return not any(it.at == end and it.part.kind == "shell" for it in facts.routes)
