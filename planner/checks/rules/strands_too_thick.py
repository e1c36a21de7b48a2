"""strands-too-thick: the bare strands do not go into the cup."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.dryfit.wires import FitLine, strands_in_cups, told_apart
from planner.model.place import Place


@rule(
    code="strands-too-thick",
    title="Strands too thick",
    why="Strands are never removed to make a wire fit (J-STD-001): the joint would be weak.",
    weight="stop",
)
def strands_too_thick(context: Context) -> Iterator[Found]:
    """Look at every cup with all the wires in it together."""
    for fit in context.fit:
        connector = context.plan.connector_of(fit.end)
        for line in strands_in_cups(fit, connector) if connector else ():
            if line.fit.answer != "fits":
                yield _found(line)


def _found(line: FitLine) -> Found:
    least, needs, has = told_apart(line.fit.least_mm, line.fit.needs_mm, line.fit.has_mm)
    here = line.where
    where = tuple(Place(here.end, here.contact, name) for name in line.wires)
    wires = f"{' and '.join(line.wires)} {'need' if len(line.wires) > 1 else 'needs'}"
    cup = f"the {line.into} at {here.end} has {has} mm"
    if line.fit.answer == "fails":
        return Found(
            f"{wires} at least {least} mm, {cup}.",
            "Take a cable with thinner cores, or a connector with larger cups. Never trim strands.",
            where,
        )
    return Found(
        f"{wires} {least} to {needs} mm, {cup}: it may go in, which is not proved.",
        "Try it with the untinned strands in hand before you cut the cable.",
        where,
        title="Strands tight in the cup",
        weight="caution",
    )
