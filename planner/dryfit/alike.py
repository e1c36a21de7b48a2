"""Which cores at an end may change places with each other, the wiring staying what it is."""

from collections.abc import Hashable, Sequence
from dataclasses import dataclass

from planner.dryfit.site import Exit, Site
from planner.model.cable import Cable, Core
from planner.model.plan import Conductor, Plan, Run
from planner.wiring.graph import Wiring, conductor_node, contact_node


@dataclass(frozen=True, slots=True)
class Alike:
    """Cores that may change places, by their place among the cores of a site.

    `everywhere`: they do so at all ends of the lead, each taking the other's part. Otherwise at
    this end only, where their contacts are one net anyway.
    """

    members: tuple[int, ...]
    everywhere: bool


def alike_cores(
    plan: Plan, site: Site, cores: Sequence[Exit], *, free: bool = False
) -> tuple[Alike, ...]:
    """Return the groups of cores that may change places; with `free` colours may differ.

    Alike are cores of one make and colour that run through the same sections; a core stays in its
    pair (or doubled group) and its shield, whose legs belong together. Of the others, cores of one
    make whose contacts are one net, as long as that net does not hang on which is where.
    """
    by_key: dict[Hashable, list[int]] = {}
    for place, it in enumerate(cores):
        conductor = plan.conductor_by_id[it.landing.conductor]
        by_key.setdefault(_make(plan, conductor, free=free), []).append(place)
    found = [Alike(tuple(group), everywhere=True) for group in by_key.values() if len(group) > 1]
    single = [group[0] for group in by_key.values() if len(group) == 1]
    return (*found, *_one_net(plan, site, cores, single))


def _make(plan: Plan, conductor: Conductor, *, free: bool) -> Hashable:
    """Return what cores must have in common to take each other's part."""
    runs = sorted(conductor.runs, key=lambda run: run.section)
    return tuple((run.section, _run_make(plan, run, free=free)) for run in runs)


def _run_make(plan: Plan, run: Run, *, free: bool) -> Hashable:
    cable = plan.cable_of(run.section)
    core = cable.core_by_id.get(run.core) if cable is not None else None
    if cable is None or core is None:
        return run.core
    colours = () if free else core.colours
    return colours, wire_of(core), core.group, _shields(cable, core)


def wire_of(core: Core) -> Hashable:
    """Return what makes a core the same wire as another, whatever its colour."""
    return core.strands, core.strand_mm, core.insulation_mm, core.metal


def _shields(cable: Cable, core: Core) -> Hashable:
    return tuple(shield.id for shield in cable.shields if core.id in shield.around)


def _one_net(
    plan: Plan, site: Site, cores: Sequence[Exit], places: Sequence[int]
) -> tuple[Alike, ...]:
    nets = {it.id: net for it, net in zip(site.connector.contacts, site.nets, strict=True)}
    by_net: dict[Hashable, list[int]] = {}
    for place in places:
        it = cores[place]
        if isinstance(it.part, Core):
            key = nets[it.landing.contact], wire_of(it.part)
            by_net.setdefault(key, []).append(place)
    return tuple(
        Alike(tuple(group), everywhere=False)
        for group in by_net.values()
        if len({cores[place].landing.contact for place in group}) > 1
        and _joined_anyhow(plan, site.end, [cores[place] for place in group])
    )


def _joined_anyhow(plan: Plan, end: str, group: Sequence[Exit]) -> bool:
    """Tell whether all contacts, or all cores, are one net without these landings."""
    wiring = Wiring(plan, without=[it.landing for it in group])
    contacts = {wiring.net_of(contact_node(end, it.landing.contact)) for it in group}
    conductors = {wiring.net_of(conductor_node(it.landing.conductor)) for it in group}
    return len(contacts) == 1 or len(conductors) == 1
