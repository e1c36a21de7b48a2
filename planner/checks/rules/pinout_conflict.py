"""Two records for one connector and one use that disagree."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.checks.wording import headline
from planner.model.pinout import PinoutRecord
from planner.model.place import Place
from planner.model.plan import End
from planner.model.signals import signals_text
from planner.wording import listed


@rule(
    code="pinout-conflict",
    title="Pinout records disagree",
    why="One of the two is wrong for the part in hand, and the lead would be soldered to it.",
    weight="caution",
)
def conflicts(context: Context) -> Iterator[Found]:
    """Find each record that contradicts one in use."""
    plan = context.plan
    for record in plan.definitions.pinouts:
        if context.retired(record):
            continue
        ends = [end for end in plan.ends if end.pinout == record.id and end.connector]
        for other in context.known_pinouts:
            if other.id != record.id and other.use == record.use and not other.retired:
                alike = [end for end in ends if {end.connector} <= set(other.fits)]
                contacts = _differing(record, other)
                if alike and contacts:
                    yield _found(context, record, other, alike, contacts)


def _differing(one: PinoutRecord, other: PinoutRecord) -> tuple[str, ...]:
    contacts = sorted(one.signals.keys() | other.signals.keys())
    return tuple(
        each
        for each in contacts
        if set(one.signals.get(each, ())) != set(other.signals.get(each, ()))
    )


def _found(
    context: Context,
    record: PinoutRecord,
    other: PinoutRecord,
    ends: list[End],
    contacts: tuple[str, ...],
) -> Found:
    told = listed(
        f"{context.words.contact(ends[0].id, each)} is {_carried(record, each)} or "
        f"{_carried(other, each)}"
        for each in contacts
    )
    return Found(
        what=f"Records {record.id} (used here) and {other.id} disagree: {told}.",
        mend="Measure the part in hand, and choose the record that it agrees with.",
        where=tuple(sorted(Place(end=end.id, contact=each) for end in ends for each in contacts)),
        title=f"{headline(record.title)}: records disagree",
    )


def _carried(record: PinoutRecord, contact: str) -> str:
    return signals_text(record.signals.get(contact, ())) or "nothing"
