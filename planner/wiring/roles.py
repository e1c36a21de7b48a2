"""Which end is the source and which the load, and where a minus leg is a return."""

from planner.model.plan import Plan
from planner.model.signals import GROUNDS, leg_of

_BY_DRIVE = {"driven-balanced": "source", "single-ended": "source", "load": "load"}
_BY_GENDER = {"female": "source", "male": "load"}
_OPPOSITE = {"source": "load", "load": "source"}


def role_of(plan: Plan, end: str) -> str:
    """Return `source`, `load`, or empty while nothing tells.

    What the end says comes first, then its pinout's drive. At line level a female XLR on a cable is
    at the source, since it mates with a male output (common practice, no source). What is left is
    the opposite of all the others, if these agree.
    """
    told = _told(plan, end)
    if told:
        return told
    others = {_told(plan, other.id) for other in plan.ends if other.id != end}
    return _OPPOSITE.get(others.pop(), "") if len(others) == 1 else ""


def _told(plan: Plan, end: str) -> str:
    if plan.end_by_id[end].role != "auto":
        return plan.end_by_id[end].role
    record, connector = plan.pinout_of(end), plan.connector_of(end)
    if record is None or connector is None:
        return ""
    by_gender = _BY_GENDER[connector.gender] if "xlr" in connector.family else ""
    return _BY_DRIVE.get(record.drive, by_gender)


def single_ended(plan: Plan) -> bool:
    """Tell whether a source of the lead is single-ended and none is driven-balanced."""
    drives = set()
    for end in plan.ends:
        record = plan.pinout_of(end.id)
        if record and role_of(plan, end.id) == "source":
            drives.add(record.drive)
    return "single-ended" in drives and "driven-balanced" not in drives


def is_return(plan: Plan, end: str, contact: str) -> bool:
    """Tell whether a contact carries nothing but minus legs that are the common ground.

    That is so at a single-ended end, or at a load whose source is single-ended; never at line
    level, where the minus leg is a signal, nor where an amplifier drives it.
    """
    record = plan.pinout_of(end)
    carried = record.signals.get(contact, ()) if record else ()
    legs = {leg_of(signal) for signal in carried if signal not in GROUNDS}
    if record is None or legs != {"-"}:
        return False
    if record.drive == "single-ended":
        return True
    return record.drive == "load" and single_ended(plan)
