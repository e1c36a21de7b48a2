"""Take in what a parcel holds: what differs is shown first, and nothing is overwritten unasked."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal

from planner.library.collection import Library
from planner.library.comparing import Difference, differences
from planner.library.parcel import Parcel
from planner.library.store import NEW, Conflict, Saved, Store
from planner.model.base import Ident, next_revision
from planner.model.definition import Definition, documents_of, kind_name
from planner.model.pinout import PinoutRecord
from planner.model.source import TRUST_LADDER, earned_trust
from planner.problem import InputError

State = Literal["new", "same", "differs"]
# `leave` what is here, take theirs as the `next` revision, or `beside` it under an id of its own.
Answer = Literal["leave", "next", "beside"]
MOST_BESIDE = 100
_ID_ROOM = 58


@dataclass(frozen=True, slots=True)
class Arrival:
    """One definition of a parcel against the library's: first here, second in the parcel."""

    definition: Definition
    state: State
    here: Definition | None = None
    changes: tuple[Difference, ...] = ()


def preview(parcel: Parcel, library: Library) -> tuple[Arrival, ...]:
    """Say of each definition of a parcel whether it is new, the same, or differs and in what.

    A pinout record is shown, and taken in, on the rung of trust that it earns.
    """
    return tuple(_arrival(_as_earned(record), library) for record in parcel.definitions)


def _as_earned(record: Definition) -> Definition:
    """Take a stated rung back to what the record shows for it: a sender may state anything."""
    if not isinstance(record, PinoutRecord):
        return record
    earned = earned_trust(record.source, record.statements, record.confirmations)
    return record.evolve(trust=min(record.trust, earned, key=TRUST_LADDER.index))


def _arrival(record: Definition, library: Library) -> Arrival:
    here: Definition | None = library.of_kind(kind_name(record), record.id)
    if here is None:
        return Arrival(record, "new")
    changes = differences(here, record)
    return Arrival(record, "differs" if changes else "same", here, changes)


def take_in(
    parcel: Parcel,
    library: Library,
    store: Store,
    *,
    who: str,
    why: str = "taken in",
    answers: Mapping[Ident, Answer] | None = None,
) -> tuple[Saved, ...]:
    """Save what is new, and of what differs what `answers` says, by id; without one it is left.

    Documents come first, so that no record names one that is not there. Returns what was saved.
    Conflict if what was shown was changed since, InputError if the folder can't be saved into; what
    was saved until then stays.
    """
    given = answers or {}
    saved = []
    for arrival in preview(parcel, library):
        record = _wanted(arrival, given.get(arrival.definition.id, "leave"), library)
        if record is None:
            continue
        for document in documents_of(record):
            store.keep_document(document, parcel.papers[document.digest])
        basis = _basis(record, arrival.here, library, store)
        saved.append(store.save(record, basis, who=who, why=why, what="taken in"))
    return tuple(saved)


def _basis(record: Definition, here: Definition | None, library: Library, store: Store) -> str:
    """Return the digest to save over: of what was shown, and of nothing that came since."""
    now = store.find(kind_name(record), record.id)
    if now is None or here is None or here.id != record.id:
        return NEW
    if library.file_of(here) == now.path and now.record != here:
        raise Conflict(now, record, here)
    return now.digest


def _wanted(arrival: Arrival, answer: Answer, library: Library) -> Definition | None:
    record, here = arrival.definition, arrival.here
    if here is None:
        return record
    if arrival.state == "same" or answer == "leave":
        return None
    if answer == "next":
        return record.evolve(revision=max(record.revision, next_revision(here.revision)))
    return record.evolve(id=_free_id(record, library))


def _free_id(record: Definition, library: Library) -> str:
    stem = record.id[:_ID_ROOM]
    tries = (f"{stem}-{number}" for number in range(2, MOST_BESIDE))
    for name in tries:
        if library.of_kind(kind_name(record), name) is None:
            return name
    what = f"there are too many beside {record.id}"
    raise InputError.single(what, "the library", "Retire some, or take it as the next revision.")
