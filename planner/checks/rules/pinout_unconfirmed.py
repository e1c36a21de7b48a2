"""A pinout record that may not be relied on yet."""

from collections.abc import Iterator

from planner.checks.context import Context
from planner.checks.registry import Found, rule
from planner.checks.wording import headline
from planner.model.pinout import PinoutRecord
from planner.model.place import Place
from planner.model.source import Retired

_SOURCES = {
    "standard": "a standard",
    "drawing": "a drawing",
    "letter": "a letter",
    "measured": "a measurement",
    "practice": "common practice",
    "hearsay": "hearsay",
    "memory": "memory",
}


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
        retired = context.retired(record)
        if ends and retired is not None:
            yield _no_more(record, retired, ends)
        elif ends and not record.confirmed:
            yield Found(
                what=f"{headline(record.title)} rests on {_basis(record)}; {_rest(record)}.",
                mend="Measure the part in hand, and record that it was confirmed.",
                where=tuple(sorted(Place(end=end) for end in ends)),
                title=f"{headline(record.title)} not confirmed",
            )


def _no_more(record: PinoutRecord, retired: Retired, ends: tuple[str, ...]) -> Found:
    told = ", ".join(filter(None, (retired.by, retired.date)))
    return Found(
        what=f"{headline(record.title)} was retired{f' ({told})' if told else ''}: "
        f"{retired.reason.rstrip('.')}.",
        mend="Choose another record, or measure the part in hand before any joint.",
        where=tuple(sorted(Place(end=end) for end in ends)),
        title=f"{headline(record.title)} was retired",
    )


def _basis(record: PinoutRecord) -> str:
    """Say what the record rests on: `a letter from the maker`, `common practice (makers differ)`.

    A reference that begins with its own kind, or with "from", goes on the sentence; any other one
    stands in brackets.
    """
    source = record.source
    words = _SOURCES[source.kind]
    told = ", ".join(filter(None, (source.reference, source.date)))
    rest = told.removeprefix(source.kind).strip(" ,:")
    if not rest:
        return words
    runs_on = rest.startswith("from ") or told != rest
    return f"{words} {rest}" if runs_on else f"{words} ({rest})"


def _rest(record: PinoutRecord) -> str:
    measured = "no part has been measured"
    if record.trust == "hearsay" and record.source.kind not in {"hearsay", "memory"}:
        return f"it counts as hearsay, and {measured}"
    return measured
