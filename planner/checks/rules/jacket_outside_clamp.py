"""jacket-outside-clamp: the clamp does not grip this jacket."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.dryfit.wires import jacket_line
from planner.units import number


@rule(
    code="jacket-outside-clamp",
    title="Jacket outside the clamp's range",
    why="A clamp that does not hold the jacket leaves the strain on the joints.",
    weight="caution",
)
def jacket_outside_clamp(context: Context) -> Iterator[Found]:
    """Compare each end's jacket with the clamp; cores out of their jacket are not a jacket."""
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
