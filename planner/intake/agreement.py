"""Whether what was measured on a sample agrees with a record."""

from dataclasses import dataclass

from planner.intake.pinout_draft import PinoutDraft, carried_signals
from planner.model.pinout import PinoutRecord
from planner.model.signals import GROUNDS


@dataclass(frozen=True, slots=True)
class Agreement:
    """`same` where no contact says otherwise; `unseen` are grounds on which nothing was found."""

    same: bool
    unseen: tuple[str, ...] = ()

    def told(self, how: str) -> str:
        """Return how it was found, with what was not."""
        if not self.unseen:
            return how
        names = ", ".join(self.unseen)
        return f"{how}; nothing hangs on {names}, whose shield or chassis is taken as recorded"


def agreement(draft: PinoutDraft, record: PinoutRecord) -> Agreement:
    """Hold what was measured against a record, contact by contact.

    A shield that the sample does not join to anything reads open to all else, like a contact that
    is not used: that tells neither for nor against it.
    """
    measured, unseen = carried_signals(draft), []
    for name in sorted({*measured, *record.signals}):
        ours, theirs = measured.get(name, frozenset()), frozenset(record.signals.get(name, ()))
        if ours == theirs:
            continue
        if ours or not theirs <= GROUNDS:
            return Agreement(same=False)
        unseen.append(name)
    return Agreement(same=True, unseen=tuple(unseen))
