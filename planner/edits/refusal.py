"""Why an edit cannot be done; `check_...` functions raise these, told apart by class."""

from planner.problem import EditRefused


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
