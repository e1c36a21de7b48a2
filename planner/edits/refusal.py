"""Why an edit cannot be done; `check_...` functions raise these, told apart by class."""


class EditRefused(Exception):  # noqa: N818 - it is an answer to the builder, not a fault
    """An edit that cannot be done, with a reason fit to show: `tip takes one core`."""

    def __init__(self, reason: str, mend: str = "") -> None:
        super().__init__(reason)
        self.reason = reason
        self.mend = mend

    def __str__(self) -> str:
        return f"{self.reason}. {self.mend}" if self.mend else f"{self.reason}."


class NotThere(EditRefused):
    """Something named in the edit is not in the plan."""


class ContactFull(EditRefused):
    """The contact holds as many conductors as its terminal takes."""


class OutOfReach(EditRefused):
    """The conductor does not come out of the cable at that end and cannot be led there."""


class LandedElsewhere(EditRefused):
    """The conductor would leave an end where it is landed."""


class DoesNotFit(EditRefused):
    """The pinout record is for other hardware."""


class NotAllowed(EditRefused):
    """A value or an act that the rules of the bench do not allow."""
