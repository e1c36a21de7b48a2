"""Send a definition as one file, and take in such a file after looking at what it brings."""

from typing import TYPE_CHECKING

from planner.files.atomic import write_atomic
from planner.library.arriving import preview, take_in
from planner.library.parcel import read_parcel
from planner.problem import InputError
from planner.services.sharing import pack

if TYPE_CHECKING:
    from planner.app.intake.asking import OwnerAsk
    from planner.app.intake.owner import Owner
    from planner.model.definition import Definition


class SharingActs:
    """What *Export* and *Take in a parcel* do."""

    def __init__(self, owner: "Owner", ask: "OwnerAsk") -> None:
        self.owner, self.ask = owner, ask

    def export(self, record: "Definition | None") -> None:
        """Write a definition with its sources and papers to a file."""
        path = self.ask.where_to_export(record.id) if record is not None else None
        if record is None or path is None:
            return
        try:
            data = pack(record, self.owner.library, self.owner.settings.folders)
            write_atomic(path, data)
        except InputError as error:
            self.ask.trouble("It could not be exported", error.problems)
            return
        self.owner.said.emit(f"{record.title} is in {path.name}, with its sources and papers.")

    def take_in(self) -> str:
        """Show what a file brings, and take in what is wanted; return the id of the first taken."""
        path = self.ask.parcel_to_take_in()
        if path is None:
            return ""
        owner = self.owner
        try:
            parcel = read_parcel(path)
            answers = self.ask.arrivals(preview(parcel, owner.library))
            if answers is None:
                return ""
            why = f"from {path.name}"[:200]
            saved = take_in(
                parcel, owner.library, owner.store, who=owner.who, why=why, answers=answers
            )
        except InputError as error:
            self.ask.trouble("It could not be taken in", error.problems)
            return ""
        owner.renew()
        titles = ", ".join(it.record.title for it in saved) or "nothing"
        owner.said.emit(f"Taken in: {titles}.")
        return saved[0].record.id if saved else ""
