"""bundle-too-thick: the leads do not pass the barrel together."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.checks.wording import leads_need
from planner.dryfit.wires import FitLine, bundle_line, told_apart


@rule(
    code="bundle-too-thick",
    title="Bundle too thick for the barrel",
    why="A barrel that does not go over the cores will not close.",
    weight="stop",
)
def bundle_too_thick(context: Context) -> Iterator[Found]:
    """Compare the leads of each end, as a round bundle, with the barrel's bore."""
    for fit in context.fit:
        connector = context.plan.connector_of(fit.end)
        line = bundle_line(fit, connector) if connector else None
        if line is not None and line.fit.answer != "fits":
            yield _found(line)


def _found(line: FitLine) -> Found:
    least, needs, has = told_apart(line.fit.least_mm, line.fit.needs_mm, line.fit.has_mm)
    leads = leads_need(len(line.wires), line.where.end)
    bore = f"the barrel's bore is {has} mm"
    if line.fit.answer == "fails":
        return Found(
            f"{leads} at least {least} mm, {bore}.",
            "Choose a larger connector or thinner cores.",
            (line.where,),
        )
    return Found(
        f"{leads} {least} to {needs} mm, {bore}: it may go over them, which is not proved.",
        "Try the barrel over the cores before you solder.",
        (line.where,),
        title="Bundle tight in the barrel",
        weight="caution",
    )
