"""The steps in words: what each row of the list says, and where stages and heats begin."""

from typing import TYPE_CHECKING

from planner.app.order_of_work.step_paint import StepRow
from planner.sheet.words import Words

if TYPE_CHECKING:
    from collections.abc import Sequence

    from planner.dryfit.work.step import Step
    from planner.model.plan import Plan


def step_rows(plan: "Plan", steps: "Sequence[Step]") -> tuple[StepRow, ...]:
    """Return the rows of a list of steps, numbered once through."""
    words = Words()
    rows, stage, heat = [], "", ""
    for number, step in enumerate(steps, start=1):
        new = step.stage != stage
        begins = new or step.heat != heat
        stage, heat = step.stage, step.heat
        text = words(f"steps.{step.kind}", **dict(step.values))
        said = stage_words(plan, step, words) if new else ""
        rows.append(StepRow(step.id, number, text, heat, said, begins_heat=begins))
    return tuple(rows)


def stage_words(plan: "Plan", step: "Step", words: Words) -> str:
    """Name a stage as the way bar of the sheet does."""
    if step.stage in {"cut", "prove"}:
        return words(f"page.way_{step.stage}")
    if step.stage in plan.end_by_id:
        return words("page.way_end", ends=", ".join(step.ends) or step.stage)
    split = next((it for it in plan.splits if it.id == step.stage), None)
    return words("page.way_split", split=(split.name or split.id) if split else step.stage)
