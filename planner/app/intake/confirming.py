"""Confirm a record: by hand, or after a sample was measured; who, when and how are always asked."""

from typing import TYPE_CHECKING

from planner.library.store import NEW
from planner.model.base import next_revision
from planner.model.source import Confirmation

if TYPE_CHECKING:
    from planner.app.intake.asking import OwnerAsk
    from planner.app.intake.owner import Owner
    from planner.model.pinout import PinoutRecord


class Confirming:
    """Add a confirmation as the record's next revision. Two persons make it confirmed by two."""

    def __init__(self, owner: "Owner", ask: "OwnerAsk") -> None:
        self.owner, self.ask = owner, ask
        self._person = ""

    @property
    def person(self) -> str:
        """Who confirmed last, else the bench."""
        return self._person or self.owner.who

    def confirm(self, record: "PinoutRecord", how: str = "") -> bool:
        """Ask who found it on a part, when and how; tell whether it was saved."""
        proposed = (self.person, self.owner.today, how)
        said = self.ask.confirmation(record, proposed)
        if said is None:
            return False
        self._person = said.who
        return self._save(record, said)

    def _save(self, record: "PinoutRecord", said: Confirmation) -> bool:
        saved = self.owner.found("pinout", record.id)
        revision = record.revision if saved is not None else next_revision(record.revision)
        after = record.evolve(
            confirmations=(*record.confirmations, said), trust="documented", revision=revision
        )
        basis = saved.digest if saved is not None else NEW
        return self.owner.save(after, basis, why=f"confirmed on the part: {said.how}") is not None
