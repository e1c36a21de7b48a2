"""The advice on sleeves in words."""

from planner.app.panels.words import contact_words
from planner.dryfit.fit import EndFit
from planner.dryfit.sleeves import SHELL, SleevePlan, Spot
from planner.model.plan import Plan


def count_words(fit: EndFit) -> str:
    """Count what is on: `1 sleeve, 2 dabs on`."""
    kinds = (
        ("sleeve", {it.landing.contact for it in fit.leads if it.landing.sleeved}),
        ("dab", {it.landing.contact for it in fit.leads if it.landing.dabbed}),
    )
    said = [f"{len(on)} {word}{'s' if len(on) > 1 else ''}" for word, on in kinds if on]
    return f"{', '.join(said) or 'none'} on"


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
