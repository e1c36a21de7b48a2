"""The steps that prove the closed lead, and the signature."""

from collections.abc import Iterator, Sequence

from planner.dryfit.work.facts import WorkFacts
from planner.dryfit.work.step import PROVE, Step
from planner.model.signals import channel_of


def proving_steps(facts: WorkFacts, before: Sequence[Step]) -> Iterator[Step]:
    """Yield the steps on the closed lead; all steps at ends and splits come before them."""
    closed = tuple(step.id for step in before if step.stage != "cut")
    metered = []
    for act in ("sweep", "joints", "bridges", "wiggle"):
        yield Step(f"prove/{act}", f"prove_{act}", PROVE, needs=closed)
        metered.append(f"prove/{act}")
    needs = (*closed, *metered)
    if _heard(facts):
        yield Step("prove/listen", "prove_listen", PROVE, needs=needs)
        needs = (*needs, "prove/listen")
    yield Step("prove/sign", "prove_sign", PROVE, needs=needs)


def _heard(facts: WorkFacts) -> bool:
    """Tell whether the lead carries left and right, which only ears tell from each other."""
    carried = {signal for signals in facts.wiring.signals.values() for signal in signals}
    return {"L", "R"} <= {channel_of(signal) for signal in carried}
