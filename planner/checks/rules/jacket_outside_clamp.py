"""jacket-outside-clamp: the clamp does not grip this jacket."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.checks.wording import leads_need
from planner.dryfit.wires import FitLine, clamped_leads, jacket_line, told_apart
from planner.units import number


@rule(
    code="jacket-outside-clamp",
    title="Jacket outside the clamp's range",
    why="A clamp that does not hold the jacket leaves the strain on the joints.",
    weight="caution",
)
def jacket_outside_clamp(context: Context) -> Iterator[Found]:
    """Compare each end's jacket with the clamp; cores out of their jacket must go into it."""
    yield from _jackets(context)
    for fit in context.fit:
        connector = context.plan.connector_of(fit.end)
        if connector is not None and context.plan.section_at[fit.end].fan_of:
            line = clamped_leads(fit, connector)
            if line.fit.answer != "fits":
                yield _bundle(line)


def _bundle(line: FitLine) -> Found:
    least, needs, has = told_apart(line.fit.least_mm, line.fit.needs_mm, line.fit.has_mm)
    sure = line.fit.answer == "fails"
    figures = f"at least {least}" if sure else f"{least} to {needs}"
    return Found(
        f"{leads_need(len(line.wires), line.where.end)} {figures} mm; the clamp grips up to "
        f"{has} mm{'' if sure else ': that they go in is not proved'}.",
        "Choose a connector with a larger clamp, or a thinner cable."
        if sure
        else "Try the clamp over the cores before you solder.",
        (line.where,),
        title="Leads too thick for the clamp" if sure else "Leads tight in the clamp",
        weight="stop" if sure else "caution",
    )


def _jackets(context: Context) -> Iterator[Found]:
    plan = context.plan
    for end, section in plan.section_at.items():
        connector, cable = plan.connector_of(end), plan.cable_of(section.id)
        if connector is None or cable is None or section.fan_of:
            continue
        line = jacket_line(end, connector, cable.jacket_mm)
        if line.fit.answer == "fits":
            continue
        clamp, thick = connector.clamp, cable.jacket_mm > connector.clamp.max_mm
        yield Found(
            f"The jacket at {end} is {number(cable.jacket_mm)} mm; the clamp of {connector.title} "
            f"grips {number(clamp.min_mm)} to {number(clamp.max_mm)} mm.",
            "Choose a connector with a larger clamp, or a thinner cable."
            if thick
            else "Build the jacket up with heat-shrink until the clamp grips it.",
            (line.where,),
            weight="stop" if thick else "caution",
        )
