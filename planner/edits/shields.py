"""Where a shield should land: its section's policy, and the contacts that may take it."""

from planner.model.plan import Conductor, Plan, ShieldPolicy
from planner.model.signals import GROUNDS, channel_of
from planner.wiring.graph import Wiring
from planner.wiring.roles import is_return, role_of

_ROLE = {"source-end": "source", "load-end": "load"}


def policy_of(plan: Plan, shield: Conductor) -> ShieldPolicy | None:
    """Return the policy of the section whose cable the shield belongs to."""
    section = plan.section_by_id[shield.runs[0].section]
    while section.fan_of in plan.section_by_id:
        section = plan.section_by_id[section.fan_of]
    return section.shield_policy


def wanted_ends(plan: Plan, shield: Conductor) -> tuple[str, ...]:
    """Return the ends, of those where the shield comes out, at which its policy wants it landed."""
    ends = _ends_of(plan, shield)
    policy = policy_of(plan, shield)
    if policy in _ROLE:
        return tuple(end for end in ends if role_of(plan, end) == _ROLE[policy])
    return ends if policy == "both-ends" else ()


def _ends_of(plan: Plan, conductor: Conductor) -> tuple[str, ...]:
    return tuple(
        end
        for end, pairs in plan.conductors_at.items()
        if any(found is conductor for found, _ in pairs)
    )


def shield_contacts(wiring: Wiring, end: str) -> tuple[str, ...]:
    """Return the contacts of an end that carry shield, else those that are the common return."""
    connector = wiring.plan.connector_of(end)
    contacts = tuple(connector.by_id) if connector is not None else ()
    grounds = tuple(it for it in contacts if "shield" in wiring.signals_at(end, it))
    if grounds:
        return grounds
    return tuple(it for it in contacts if is_return(wiring.plan, end, it))


def channels_inside(wiring: Wiring, shield: Conductor, end: str) -> frozenset[str]:
    """Return the channels of the cores inside a shield, by what they land on at an end."""
    signals: set[str] = set()
    for core in cores_inside(wiring.plan, shield, end):
        landing = wiring.plan.landing_at.get((end, core))
        if landing is not None:
            signals |= wiring.signals_at(end, landing.contact)
    return frozenset(channel_of(it) for it in signals - GROUNDS)


def cores_inside(plan: Plan, shield: Conductor, end: str) -> tuple[str, ...]:
    """Return the conductors that come out at an end from inside a shield."""
    pairs = plan.conductors_at.get(end, ())
    name = next((run.core for found, run in pairs if found is shield), "")
    cable = plan.cable_of(plan.section_at[end].id) if name else None
    if cable is None or name not in cable.shield_by_id:
        return ()
    around = cable.shield_by_id[name].around or tuple(cable.core_by_id)
    return tuple(found.id for found, run in pairs if run.core in around)
