"""The steps that prove the closed lead, and the signature."""

from collections.abc import Iterator, Sequence

from planner.dryfit.work.step import PROVE, Step


def proving_steps(before: Sequence[Step]) -> Iterator[Step]:
    """Yield the steps on the closed lead; all steps at ends and splits come before them."""
    closed = tuple(step.id for step in before if step.stage != "cut")
    metered = []
    for act in ("sweep", "joints", "bridges", "wiggle"):
        yield Step(f"prove/{act}", f"prove_{act}", PROVE, needs=closed)
        metered.append(f"prove/{act}")
    needs = (*closed, *metered)
    yield Step("prove/listen", "prove_listen", PROVE, needs=needs)
    yield Step("prove/sign", "prove_sign", PROVE, needs=(*needs, "prove/listen"))
