"""odd-geometry: figures of a connector or cable with which a dry fit means nothing."""

from collections.abc import Iterator, Sequence

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.dryfit.identity import ById
from planner.dryfit.oddities import Oddity, cable_oddities, connector_oddities
from planner.model.cable import Cable
from planner.model.connector import Connector, Shell
from planner.model.place import Place
from planner.units import number

_SHOWN = 4


@rule(
    code="odd-geometry",
    title="Figures that do not go together",
    why="Gaps, turn and order are worked out from these figures: wrong ones make them worthless.",
    weight="caution",
)
def odd_geometry(context: Context) -> Iterator[Found]:
    """Report one finding for the connector of each end, and one for the cable there."""
    for end in context.plan.ends:
        connector = context.plan.connector_of(end.id)
        if connector is not None:
            yield from _of_connector(end.id, connector)
        section = context.plan.section_at.get(end.id)
        cable = context.plan.cable_of(section.id) if section is not None else None
        if cable is not None:
            yield from _of_cable(end.id, cable)


def _of_connector(end: str, connector: Connector) -> Iterator[Found]:
    odd = connector_oddities(ById(connector))
    if odd:
        contacts = dict.fromkeys(name for it in odd for name in it.names)
        yield Found(
            f"At {end}, in {connector.title}, {_listed(odd, connector.shell)}.",
            "Measure the part in hand, and correct its definition: positions, cups or shell.",
            tuple(Place(end=end, contact=contact) for contact in contacts),
        )


def _of_cable(end: str, cable: Cable) -> Iterator[Found]:
    odd = cable_oddities(ById(cable))
    if odd:
        yield Found(
            f"At {end}, in the cable {cable.title}, {_listed(odd)}.",
            "Look at the cut end, and correct where the cores lie in the cable's definition.",
            (Place(end=end),),
        )


def _listed(odd: Sequence[Oddity], shell: Shell | None = None) -> str:
    said = [_said(it, shell) for it in odd[:_SHOWN]]
    more = len(odd) - len(said)
    return "; ".join(said) + (f"; and {more} more" if more else "")


def _said(odd: Oddity, shell: Shell | None) -> str:
    names, has, needs = " and ".join(odd.names), number(odd.has_mm), number(odd.needs_mm)
    if odd.kind == "terminals-overlap":
        return f"contacts {names}, {has} mm apart, reach {needs} mm into each other"
    if odd.kind == "outside-shell" and shell is not None:
        return f"contact {names} reaches {has} mm out of the shell, which is {_inside(shell)} wide"
    if odd.kind == "cores-overlap":
        return f"cores {names} lie {has} mm apart and need {needs} mm"
    return f"core {names} lies {has} mm from the middle, and the jacket ends at {needs} mm"


def _inside(shell: Shell) -> str:
    if shell.shape == "round":
        return f"{number(shell.bore_mm)} mm"
    return f"{number(shell.width_mm)} by {number(shell.height_mm)} mm"
