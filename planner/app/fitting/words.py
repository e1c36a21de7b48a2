"""What the dry fit says of an end, in words: crossings, gaps, joints, and what a best turn did."""

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

from planner.app.panels.words import contact_words, wire_code
from planner.drawing.marks import MarkKind
from planner.dryfit.iron import ROOMY_MM
from planner.dryfit.seats import CAP_MM
from planner.model.plan import Plan
from planner.wording import listed

if TYPE_CHECKING:
    from planner.dryfit.bodies import Capsule
    from planner.dryfit.dial import Dial
    from planner.dryfit.fit import EndFit
    from planner.dryfit.order import Order
    from planner.dryfit.turning import Turning

MINUS = "\u2212"
_GRADE_MARKS: dict[str, MarkKind] = {
    "touch": "stop",
    "sleeve": "caution",
    "watch": "note",
    "clear": "tick",
}
_VERDICTS = {
    "proved": "Proved: no turn is better.",
    "proved among candidates": "Proved among candidates: the best of all that were tried.",
    "found": "Found: a better one is not ruled out.",
}
_PAIRS_MOST = 2


@dataclass(frozen=True, slots=True)
class Said:
    """A figure in words, a line below it, and the mark that goes with it."""

    figure: str
    more: str
    mark: MarkKind


def degrees(turn_deg: float) -> str:
    """Print an angle: `-12.5` with a true minus, no zeros at its end."""
    text = f"{turn_deg:.2f}".rstrip("0").rstrip(".")
    return text.replace("-", MINUS)


def millimetres(length_mm: float) -> str:
    """Print a gap or margin to a hundredth of a millimetre."""
    return f"{length_mm:.2f} mm".replace("-", MINUS)


def room_words(margin_mm: float) -> str:
    """Print the iron's room at a joint: `0.42`, or `1.00+` where no more was looked for."""
    more = "+" if margin_mm >= ROOMY_MM else ""
    return f"{margin_mm:.2f}{more}".replace("-", MINUS)


def best_said(dial: "Dial") -> str:
    """Say what the best turn gives for the cores as they are landed."""
    crossings = _count(dial.best_crossings, "crossing")
    return f"Best: {degrees(dial.best_deg)}\u00b0, {crossings}, {_clear(dial.best_gap_mm)}"


def _clear(gap_mm: float) -> str:
    """Say how far leads keep from other joints: it is what turning changes."""
    more = "+" if gap_mm >= CAP_MM else ""
    return f"leads {gap_mm:.2f}{more} mm clear".replace("-", MINUS)


def _count(number: int, word: str) -> str:
    return f"{number or 'no'} {word}{'' if number in {0, 1} else 's'}"


def crossings_said(plan: Plan, fit: "EndFit") -> Said:
    """Say how many leads cross, and which."""
    count = len(fit.crossings)
    if not count:
        return Said("No crossing", "", "tick")
    pairs = [" and ".join(_code(plan, fit.end, name) for name in pair) for pair in fit.crossings]
    shown = pairs if count <= _PAIRS_MOST else [pairs[0], f"{count - 1} more"]
    return Said(_count(count, "crossing"), "; ".join(shown), "caution")


def gap_said(plan: Plan, fit: "EndFit") -> Said:
    """Say the smallest gap with its class and limit, and between what it is."""
    if not fit.gaps:
        if math.isinf(fit.least_gap_mm):
            return Said("No gap to measure", "one net only", "tick")
        return Said(f"Smallest gap {millimetres(fit.least_gap_mm)}", "clear", "tick")
    gap = min(fit.gaps, key=lambda it: it.gap_mm)
    between = f"{body_words(plan, fit.end, gap.first)} to {body_words(plan, fit.end, gap.second)}"
    more = f"{gap.grade}, limit {millimetres(gap.limit_mm)}: {between}"
    return Said(f"Smallest gap {millimetres(max(gap.gap_mm, 0.0))}", more, _GRADE_MARKS[gap.grade])


def order_said(order: "Order") -> str:
    """Say what the best order of soldering gives."""
    anew = _count(order.reclamps, "new clamping")
    sure = "Proved." if order.proof == "proved" else "Found: fewer are not ruled out."
    return f"Best order: at least {room_words(order.margin_mm)} mm for the iron, {anew}. {sure}"


def body_words(plan: Plan, end: str, body: "Capsule") -> str:
    """Name a body of a gap: `BU`, `ring 1`, `the shell`."""
    if body.conductor in plan.conductor_by_id:
        return _code(plan, end, body.conductor)
    return contact_words(plan, end, body.contact) if body.contact else "the shell"


def _code(plan: Plan, end: str, conductor: str) -> str:
    record = plan.conductor_by_id.get(conductor)
    return wire_code(plan, record, end) if record is not None else conductor


def turning_said(plan: Plan, turning: "Turning", before_deg: float) -> str:
    """Say what a best turn came to: turn, crossings, gap, swaps in words, and how sure it is."""
    parts = (
        _gain(turning, before_deg),
        swaps_said(plan, turning),
        _VERDICTS[turning.verdict],
        _sentence(turning.reason),
    )
    return " ".join(part for part in parts if part)


def _gain(turning: "Turning", before_deg: float) -> str:
    more = "+" if turning.gap_mm >= CAP_MM else ""
    gap = f"smallest gap {turning.gap_mm:.2f}{more} mm".replace("-", MINUS)
    now = f"{_count(turning.crossings, 'crossing')}, {gap}"
    if turning.turn_deg == before_deg and not turning.swaps:
        return f"{degrees(before_deg)}\u00b0 is the best turn already: {now}."
    was = f"{turning.before_crossings}, {millimetres(turning.before_gap_mm)}"
    same = (turning.before_crossings, turning.before_gap_mm) == (turning.crossings, turning.gap_mm)
    told = "as before, with shorter leads" if same else f"was {was}"
    return f"Turned to {degrees(turning.turn_deg)}\u00b0: {now} ({told})."


def _sentence(text: str) -> str:
    begun = text[:1].upper() + text[1:]
    return begun if not begun or begun.endswith(".") else f"{begun}."


def swaps_said(plan: Plan, turning: "Turning") -> str:
    """Say which cores go to other contacts, and whether the other ends follow."""
    if not turning.swaps:
        return ""
    if turning.groups:
        said = listed([group.words for group in turning.groups])
        return f"{said[:1].upper()}{said[1:]}, in the whole lead."
    moved = [
        f"{_code(plan, turning.end, conductor)} goes to {contact_words(plan, turning.end, contact)}"
        for conductor, contact in turning.swaps
    ]
    said = listed(moved)
    everywhere = any(exchange.everywhere for exchange in turning.exchanges)
    there = " They change places at the other ends too." if everywhere else ""
    return f"{said[:1].upper()}{said[1:]}.{there}"
