"""A pinout record that may not be relied on yet."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.checks.wording import headline
from planner.model.pinout import PinoutRecord
from planner.model.place import Place

_TRUST = {"hearsay": "is hearsay", "documented": "is documented and not confirmed on the part"}


@rule(
    code="pinout-unconfirmed",
    title="Pinout not confirmed",
    why="A lead soldered to a wrong pinout is cut off and done again.",
    weight="caution",
)
def unconfirmed(context: Context) -> Iterator[Found]:
    """Find each record in use that nothing has confirmed."""
    plan = context.plan
    for record in plan.definitions.pinouts:
        ends = tuple(end.id for end in plan.ends if end.pinout == record.id)
        if ends and not record.confirmed:
            yield Found(
                what=f"{headline(record.title)} ({record.id}) {_trust(record)}.",
                mend="Measure the part in hand, and record that it was confirmed.",
                where=tuple(sorted(Place(end=end) for end in ends)),
                title=f"{headline(record.title)} not confirmed",
            )


def _trust(record: PinoutRecord) -> str:
    reference = f", {record.source.reference}" if record.source.reference else ""
    return f"{_TRUST[record.trust]} (source: {record.source.kind}{reference})"
