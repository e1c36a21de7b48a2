"""What is odd about a connector while it is drawn: said at once, never in the way of drawing."""

from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from typing import Literal

from planner.dryfit.identity import ById
from planner.dryfit.oddities import Oddity, connector_oddities
from planner.geometry.placing import same_hand
from planner.intake.connector_draft import ConnectorDraft, finished
from planner.model.connector import Connector
from planner.problem import InputError

Weight = Literal["stop", "caution", "note"]


@dataclass(frozen=True, slots=True)
class Remark:
    """One thing that is missing or odd; a stop keeps the connector from being saved."""

    weight: Weight
    what: str
    mend: str
    contacts: tuple[str, ...] = ()


def remarks(draft: ConnectorDraft, known: Iterable[Connector] = ()) -> tuple[Remark, ...]:
    """Return what is odd, stops first; `known` are connectors to hold the numbering against."""
    found = [*_unfinished(draft), *_numbering(draft)]
    try:
        connector = finished(_named(draft))
    except InputError:
        return tuple(sorted(found, key=_rank))
    found += map(_of_oddity, connector_oddities(ById(connector)))
    found += _handedness(connector, known)
    return tuple(sorted(found, key=_rank))


def _rank(remark: Remark) -> int:
    return ("stop", "caution", "note").index(remark.weight)


def _unfinished(draft: ConnectorDraft) -> Iterator[Remark]:
    try:
        finished(draft)
    except InputError as error:
        for problem in error.problems:
            yield Remark("stop", problem.what, problem.mend)


def _named(draft: ConnectorDraft) -> ConnectorDraft:
    """Return a draft that can be measured though its head is not filled in yet."""
    return draft.evolve(
        id=draft.id or "new",
        title=draft.title or "new",
        family=draft.family or "new",
        gender=draft.gender or "male",
        seen_from="solder" if draft.seen_from == "unstated" else draft.seen_from,
    )


def _numbering(draft: ConnectorDraft) -> Iterator[Remark]:
    numbers = sorted(int(it.id) for it in draft.contacts if it.id.isdigit())
    if not numbers:
        return
    missing = [at for at in range(1, numbers[-1]) if at not in set(numbers)]
    if missing:
        told = ", ".join(map(str, missing[:6])) + (" and more" if len(missing) > 6 else "")
        what = f"no contact {told}, though there is a {numbers[-1]}"
        yield Remark("caution", what, "Add what is missing, or renumber.")
    mixed = [it.id for it in draft.contacts if not it.id.isdigit()]
    if mixed and len(numbers) > 1:
        told = ", ".join(mixed[:4])
        yield Remark(
            "note", f"most contacts have a number, {told} a name", "Keep it if the part has it so."
        )


def _of_oddity(oddity: Oddity) -> Remark:
    names = "contacts " if len(oddity.names) > 1 else "contact "
    names += " and ".join(oddity.names)
    if oddity.kind == "terminals-overlap":
        what = f"{names} reach {oddity.needs_mm:.2f} mm into each other"
        return Remark("stop", what, "Move one, or make the terminals smaller.", oddity.names)
    what = f"{names} reaches {oddity.has_mm:.2f} mm out of the shell"
    return Remark("stop", what, "Move it inwards, or widen the shell.", oddity.names)


def _handedness(connector: Connector, known: Iterable[Connector]) -> Iterator[Remark]:
    """Hold the places of the numbers against a known connector of the same family and make-up.

    The solder side of one gender has the handedness of the mating face of the other, so two genders
    of one family are mirror images on the solder side.
    """
    for other in known:
        same = _same_hand(connector, other)
        if same is not None and same != (other.gender == connector.gender):
            what = f"after {other.title} the numbers would run the other way round"
            mend = (
                "It looks as if it was drawn from the other side: hold the part against the "
                "drawing, and answer again from which side it is seen."
            )
            yield Remark("caution", what, mend)
            return


def _same_hand(connector: Connector, other: Connector) -> bool | None:
    names = sorted(connector.by_id)
    alike = other.family == connector.family and sorted(other.by_id) == names
    if not alike or other.id == connector.id or connector.mating == "concentric":
        return None
    return same_hand(_places(connector, names), _places(other, names))


def _places(connector: Connector, names: Iterable[str]) -> list[tuple[float, float]]:
    terminals = [connector.by_id[name].terminal for name in names]
    return [(it.x_mm, it.y_mm) for it in terminals]
