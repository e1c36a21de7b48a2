"""Words on a plan: title, order, revision, remarks; and cautions accepted with a reason."""

from collections.abc import Iterable

from planner.edits.changing import changed
from planner.edits.refusal import NotAllowed, NotThere
from planner.model.plan import Acceptance, Plan


def set_title(plan: Plan, *, title: str) -> Plan:
    """Name the lead."""
    return changed(plan, title=title)


def set_order(plan: Plan, *, order: str) -> Plan:
    """Set the order reference."""
    return changed(plan, order=order)


def set_revision(plan: Plan, *, revision: int) -> Plan:
    """Set the revision of the plan, 1 or more."""
    return changed(plan, revision=revision)


def set_remarks(plan: Plan, *, remarks: str) -> Plan:
    """Set the remarks; lines are kept."""
    return changed(plan, remarks=remarks)


def check_accept(*, weight: str, reason: str) -> None:
    """Refuse to accept what is no caution, or without a written reason."""
    if weight == "stop":
        raise NotAllowed("A stop cannot be accepted", "Mend it before the iron is hot.")
    if weight != "caution":
        raise NotAllowed("Only a caution is accepted; a note needs no answer")
    if not reason.strip():
        raise NotAllowed("A caution is accepted with a reason", "Say why in a few words.")


def accept(
    plan: Plan,
    *,
    finding_code: str,
    places: Iterable[str],
    reason: str,
    by: str = "",
    weight: str = "caution",
) -> Plan:
    """Accept a caution with a reason; `places` are the finding's `place_keys`.

    A second acceptance of the same finding takes the first one's place. Give the finding's
    `weight`, so that a stop is refused.
    """
    check_accept(weight=weight, reason=reason)
    new = changed(
        Acceptance(code=finding_code, reason="-"), places=tuple(places), reason=reason, by=by
    )
    others = tuple(it for it in plan.acceptances if not _same(it, finding_code, new.places))
    return plan.evolve(acceptances=(*others, new))


def withdraw(plan: Plan, *, finding_code: str, places: Iterable[str]) -> Plan:
    """Take an acceptance back."""
    wanted = tuple(places)
    kept = tuple(it for it in plan.acceptances if not _same(it, finding_code, wanted))
    if len(kept) == len(plan.acceptances):
        raise NotThere(f"{finding_code} is not accepted there")
    return plan.evolve(acceptances=kept)


def _same(acceptance: Acceptance, code: str, places: tuple[str, ...]) -> bool:
    return acceptance.code == code and acceptance.places == places
