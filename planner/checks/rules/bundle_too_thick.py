"""bundle-too-thick: the cores do not pass the barrel together."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.dryfit.wires import into_bore
from planner.model.place import Place
from planner.units import number


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
        if connector is None:
            continue
        wires = [lead.covered_mm for lead in fit.leads]
        bundle = into_bore(wires, connector.barrel.bore_mm)
        if bundle.answer == "fits":
            continue
        sure = bundle.answer == "fails"
        figures = f"{number(bundle.needs_mm)} mm, the barrel's bore is {number(bundle.has_mm)} mm"
        yield Found(
            f"The {len(wires)} leads at {fit.end} together measure "
            f"{'at least' if sure else 'up to'} {figures}.",
            "Choose a larger connector or thinner cores."
            if sure
            else "Try the barrel over the cores before you solder: that it fits is not proved.",
            (Place(end=fit.end),),
            weight="stop" if sure else "caution",
        )
