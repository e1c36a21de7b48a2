"""All electrical figures of a plan in one record, for printing."""

from dataclasses import dataclass

from planner.electrical.balance import Balance, balances
from planner.electrical.capacitance import (
    ChannelCapacitance,
    PairCapacitance,
    capacitances,
    section_capacitances,
)
from planner.electrical.crosstalk import Crosstalk, crosstalks
from planner.electrical.loops import Loop, loops
from planner.electrical.resistance import ConductorOhm, conductor_ohm
from planner.model.plan import Plan
from planner.model.workmanship import Assumed
from planner.wiring.graph import Wiring


@dataclass(frozen=True, slots=True)
class ElectricalSummary:
    """Every figure, each with the ids of what it is of, and what was assumed for all of them."""

    assumed: Assumed
    conductors: tuple[ConductorOhm, ...]
    loops: tuple[Loop, ...]
    balances: tuple[Balance, ...]
    crosstalks: tuple[Crosstalk, ...]
    pairs: tuple[PairCapacitance, ...]
    channels: tuple[ChannelCapacitance, ...]


def electrical_summary(plan: Plan, wiring: Wiring) -> ElectricalSummary:
    """Work out every electrical figure of a plan."""
    return ElectricalSummary(
        assumed=plan.assumed,
        conductors=tuple(conductor_ohm(plan, it.id) for it in plan.conductors),
        loops=loops(plan, wiring),
        balances=balances(plan, wiring),
        crosstalks=crosstalks(plan, wiring),
        pairs=tuple(
            pair for section in plan.sections for pair in section_capacitances(plan, section.id)
        ),
        channels=capacitances(plan, wiring),
    )
