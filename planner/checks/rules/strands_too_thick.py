"""strands-too-thick: the bare strands do not go into the cup."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.dryfit.bodies import Lead
from planner.dryfit.wires import into_bore
from planner.model.place import Place
from planner.units import number


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
        in_cup: dict[str, list[Lead]] = {}
        for lead in fit.leads:
            in_cup.setdefault(lead.landing.contact, []).append(lead)
        for contact, leads in in_cup.items():
            terminal = connector.by_id[contact].terminal if connector else None
            if terminal is not None and terminal.kind == "cup":
                yield from _in_cup(fit.end, contact, leads, terminal.bore_mm)


def _in_cup(end: str, contact: str, leads: list[Lead], bore_mm: float) -> Iterator[Found]:
    fit = into_bore([lead.metal_mm for lead in leads], bore_mm)
    if fit.answer == "fits":
        return
    names = [lead.landing.conductor for lead in leads]
    where = tuple(Place(end=end, contact=contact, conductor=name) for name in names)
    wires = f"{' and '.join(names)} {'measure' if len(names) > 1 else 'measures'}"
    figures = f"{number(fit.needs_mm)} mm, the cup of {contact} at {end} {number(fit.has_mm)} mm"
    if fit.answer == "fails":
        yield Found(
            f"{wires} {figures}.",
            "Take a cable with thinner cores, or a connector with larger cups. Never trim strands.",
            where,
        )
    else:
        yield Found(
            f"{wires} up to {figures}: it may go in, which is not proved.",
            "Try it with the untinned strands in hand before you cut the cable.",
            where,
            title="Strands tight in the cup",
            weight="caution",
        )
