"""What `cupwright connectors export` and `import` do: send definitions, and take them in."""

from argparse import Namespace
from collections.abc import Iterable, Sequence
from pathlib import Path

from planner.cli.definitions_acts import named
from planner.cli.definitions_text import three_columns
from planner.cli.output import WIDTH, say, say_json
from planner.cli.parsing import WrongUseError
from planner.files.atomic import write_atomic
from planner.files.folders import library_folder
from planner.library.arriving import Answer, Arrival, preview, take_in
from planner.library.loading import load_library
from planner.library.parcel import SUFFIX, Parcel, read_parcel
from planner.library.store import Saved, Store
from planner.model.definition import Definition
from planner.problem import did_you_mean
from planner.services.sharing import pack


def export(args: Namespace) -> int:
    """Write one definition with its sources and documents to a file."""
    library = load_library(args.folder)
    record = named(library, args.id)
    path = args.output or Path(f"{record.id}{SUFFIX}")
    write_atomic(path, pack(record, library, args.folder))
    say(f"{path} holds {record.id}, revision {record.revision}.")
    return 0


def take(args: Namespace) -> int:
    """Show what a parcel holds and in what it differs; save what is asked for."""
    library = load_library(args.folder)
    parcel = read_parcel(args.path)
    answers = _answers(args, parcel)
    arrivals = preview(parcel, library)
    saved: tuple[Saved, ...] = ()
    if args.save or answers:
        store = Store(args.into or library_folder())
        saved = take_in(parcel, library, store, who=args.who, answers=answers)
    if args.json:
        values = [_values(arrival) for arrival in arrivals]
        say_json({"arrivals": values, "saved": [each.record.id for each in saved]})
    else:
        say(_arrived(arrivals, [each.record for each in saved]))
    return 0


def _answers(args: Namespace, parcel: Parcel) -> dict[str, Answer]:
    answers: dict[str, Answer] = dict.fromkeys(args.next, "next")
    answers |= dict.fromkeys(args.beside, "beside")
    _check_names(answers, [record.id for record in parcel.definitions])
    return answers


def _check_names(given: Iterable[str], known: Sequence[str]) -> None:
    for name in given:
        if name not in known:
            raise WrongUseError(f"the file holds no {name!r}. {did_you_mean(name, known)}")


def _values(arrival: Arrival) -> dict[str, object]:
    rows = [{"key": it.key, "here": it.first, "parcel": it.second} for it in arrival.changes]
    return {"id": arrival.definition.id, "state": arrival.state, "differences": rows}


def _arrived(arrivals: Sequence[Arrival], saved: Sequence[Definition]) -> str:
    """Return what a parcel holds, how that differs from what is here, and what was saved."""
    lines: list[str] = []
    for arrival in arrivals:
        record, here = arrival.definition, arrival.here
        lines.append(f"{arrival.state:<8} {record.id}: {record.title}"[:WIDTH])
        if here is not None and arrival.changes:
            rows = [("", "here", "in the parcel")]
            rows += [(one.key, one.first, one.second) for one in arrival.changes]
            lines += [line for row in rows for line in three_columns(row)]
    for record in saved:
        lines.append(f"saved    {record.id}, revision {record.revision}")
    return "\n".join(lines)
