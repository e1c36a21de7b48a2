"""The advice on sleeves in words."""

from planner.app.fitting.words import millimetres
from planner.app.panels.words import contact_words
from planner.dryfit.sleeves import SHELL, SleevePlan, Spot
from planner.model.plan import Plan


def count_words(advice: SleevePlan) -> str:
    """Count what is on: `2 on`."""
    on = len({use.contact for use in advice.on})
    return f"{on} on" if on else "none on"


def sleeve_lines(plan: Plan, end: str, advice: SleevePlan) -> tuple[str, ...]:
    """Say, line by line, what to put on and what nothing cures."""
    lines = [
        f"Sleeve {contact_words(plan, end, use.contact)}: "
        f"{use.length_mm:g} mm, bore {use.bore_mm:g} mm."
        for use in advice.sleeves
    ]
    lines += [_dab(plan, end, spot) for spot in advice.dabs]
    if advice.liner:
        lines.append("Put a liner into the shell.")
    lines += [_uncured(plan, end, spot) for spot in advice.uncured]
    return tuple(lines) or ("No joint wants one more: every bare gap is wide enough.",)


def _dab(plan: Plan, end: str, spot: Spot) -> str:
    contact, other, why = spot
    return f"Dab {_named(plan, end, contact)}, towards {_named(plan, end, other)}: {why}."


def _uncured(plan: Plan, end: str, spot: Spot) -> str:
    contact, other, why = spot
    return f"{_named(plan, end, contact)} and {_named(plan, end, other)}: {why}."


def _named(plan: Plan, end: str, contact: str) -> str:
    return "the shell" if contact == SHELL else contact_words(plan, end, contact)


def parking_words(advice: SleevePlan) -> str:
    """Say which sleeve that is on has no room to park, with both figures."""
    tight = [use for use in advice.on if not use.parks]
    return " ".join(
        f"The sleeve on {use.contact} has {millimetres(use.park_has_mm)} to park and needs "
        f"{millimetres(use.park_needs_mm)}."
        for use in tight
    )
