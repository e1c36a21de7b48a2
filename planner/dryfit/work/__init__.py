"""The order of work: one numbered list from cutting to signing, derived from the plan."""

from collections.abc import Container, Iterable
from dataclasses import replace

from planner.dryfit.precedence import ordered, places
from planner.dryfit.work.at_end import end_steps
from planner.dryfit.work.at_split import closing_steps, splicing_steps
from planner.dryfit.work.facts import WorkFacts
from planner.dryfit.work.proving import proving_steps
from planner.dryfit.work.starting import starting_steps
from planner.dryfit.work.step import Step
from planner.model.plan import Plan
from planner.wiring.graph import Wiring


def steps(plan: Plan, wiring: Wiring) -> tuple[Step, ...]:
    """Return all steps in the order of the work: the first is number 1; none if nothing is landed.

    The builder's wish, `plan.step_order`, is followed as far as no step comes before what it needs.
    """
    return _in_order(usual_steps(plan, wiring), plan.step_order)


def usual_order(plan: Plan, wiring: Wiring) -> tuple[str, ...]:
    """Return the ids of all steps in the order without the builder's wish."""
    return tuple(step.id for step in _in_order(usual_steps(plan, wiring), ()))


def _in_order(found: tuple[Step, ...], wish: tuple[str, ...]) -> tuple[Step, ...]:
    by_id = {step.id: step for step in found}
    needs = {step.id: step.needs for step in found}
    return tuple(by_id[name] for name in ordered(tuple(by_id), needs, wish))


def usual_steps(plan: Plan, wiring: Wiring) -> tuple[Step, ...]:
    """Return all steps, written down as they are usually done, with what each needs."""
    if not plan.landings:
        return ()
    facts = WorkFacts(plan, wiring)
    found = [*starting_steps(facts), *splicing_steps(facts)]
    for group in facts.groups:
        found += end_steps(facts, group)
    found += closing_steps(facts)
    found += proving_steps(found)
    there = {step.id for step in found}
    return tuple(replace(step, needs=_kept(step.needs, there)) for step in found)


def _kept(needs: Iterable[str], there: Container[str]) -> tuple[str, ...]:
    """Return needs once each, without those that this plan has no step for."""
    return tuple(dict.fromkeys(need for need in needs if need in there))


def movable(plan: Plan, wiring: Wiring, step: str) -> range:
    """Return the numbers, from 1, that a step can have while the others keep their order.

    Raise KeyError for a step that is not there.
    """
    found = steps(plan, wiring)
    order = [it.id for it in found]
    if step not in order:
        raise KeyError(step)
    free = places(order, {it.id: it.needs for it in found}, step)
    return range(free.start + 1, free.stop + 1)
