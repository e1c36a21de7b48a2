"""What is at an end: connector, pinout, channel, role, name, turn."""

import re
from typing import get_args

from planner.dryfit.bodies import stack_mm
from planner.edits.changing import changed, the_connector, the_end, with_end
from planner.edits.refusal import DoesNotFit, NotAllowed
from planner.edits.settling import carrying, fit, settled
from planner.geometry.views import half_turn_deg
from planner.model.connector import Connector
from planner.model.pinout import PinoutRecord
from planner.model.plan import Channel, Plan, Role
from planner.model.signals import CHANNELS, channel_of
from planner.units import number

# What is left of sums of figures that were just right.
ROUNDING_MM = 1e-9


def check_fits(connector: Connector, pinout: PinoutRecord) -> None:
    """Refuse a pinout record that is for other hardware, or names contacts that are not there."""
    if not fit(connector, pinout):
        raise DoesNotFit(f"{pinout.title} is not for {connector.title}", "Choose one that fits it.")


def choose_connector(
    plan: Plan, *, end: str, connector: Connector, pinout: PinoutRecord | None = None
) -> Plan:
    """Put a connector on an end; landings stay where the new one has the contact too.

    The plan takes a copy. A pinout that does not fit is dropped, or refused if given here.
    """
    record = the_end(plan, end)
    if pinout is not None:
        check_fits(connector, pinout)
    plan = carrying(plan, connectors=connector)
    plan = settled(with_end(plan, changed(record, connector=connector.id)))
    return plan if pinout is None else choose_pinout(plan, end=end, pinout=pinout)


def choose_pinout(plan: Plan, *, end: str, pinout: PinoutRecord) -> Plan:
    """Say which pinout record holds at an end; a one-channel record gets the end's channel."""
    check_fits(the_connector(plan, end), pinout)
    record = the_end(plan, end)
    channel: Channel = ""
    if pinout.one_channel:
        channel = record.channel or default_channel(plan, end)
    plan = carrying(plan, pinouts=pinout)
    return settled(with_end(plan, changed(record, pinout=pinout.id, channel=channel)))


def default_channel(plan: Plan, end: str) -> Channel:
    """Guess the channel of an end from its id and name: L, right cup, leg 3; empty if unsure."""
    record = the_end(plan, end)
    words = re.findall(r"[a-z]+", f"{record.id} {record.name}".lower())
    for channel, names in (("L", {"l", "left"}), ("R", {"r", "right"}), ("mic", {"mic"})):
        if names & set(words):
            return channel  # type: ignore[return-value] # the three are channels
    digits = re.search(r"(\d+)$", record.id) or re.search(r"(\d+)$", record.name)
    return _numbered(plan, end, int(digits.group(1))) if digits else ""


def _numbered(plan: Plan, end: str, number: int) -> Channel:
    """Take the channel of that number, or the so-manieth of those that the other ends name."""
    known = sorted(_channels_elsewhere(plan, end), key=CHANNELS.index)
    if known and str(number) not in known:
        return known[number - 1] if 0 < number <= len(known) else ""
    return str(number) if str(number) in get_args(Channel) else ""  # type: ignore[return-value] # just looked up


def _channels_elsewhere(plan: Plan, end: str) -> set[Channel]:
    found = set()
    for other in plan.ends:
        pinout = plan.pinout_of(other.id)
        if other.id != end and pinout is not None:
            found |= {channel_of(it) for carried in pinout.signals.values() for it in carried}
    return found & set(CHANNELS)  # type: ignore[return-value] # what is left are channels


def set_channel(plan: Plan, *, end: str, channel: Channel) -> Plan:
    """Say which channel an end with a one-channel pinout carries."""
    return with_end(plan, changed(the_end(plan, end), channel=channel))


def set_role(plan: Plan, *, end: str, role: Role) -> Plan:
    """Say whether an end goes to the source, to the load, or leave it to the pinouts."""
    return with_end(plan, changed(the_end(plan, end), role=role))


def rename_end(plan: Plan, *, end: str, name: str) -> Plan:
    """Change the spoken name of an end; its id stays."""
    return with_end(plan, changed(the_end(plan, end), name=name))


def turn_end(plan: Plan, *, end: str, turn_deg: float) -> Plan:
    """Turn a plug against the cable, counter-clockwise seen from the solder side, in degrees."""
    return with_end(plan, changed(the_end(plan, end), turn_deg=half_turn_deg(turn_deg)))


def set_room(plan: Plan, *, end: str, room_mm: float) -> Plan:
    """Say how far the jacket's cut end stands above the highest terminal; 0 takes what is proposed.

    Refused where the barrel is too short for it.
    """
    record = the_end(plan, end)
    if room_mm:
        connector = the_connector(plan, end)
        most_mm = connector.barrel.length_mm - stack_mm(connector)
        if room_mm > most_mm + ROUNDING_MM:
            raise NotAllowed(
                f"The barrel of {connector.title} is {number(connector.barrel.length_mm)} mm long",
                f"Leave the jacket at most {number(max(most_mm, 0.0))} mm above the terminals.",
            )
    return with_end(plan, changed(record, room_mm=room_mm))
