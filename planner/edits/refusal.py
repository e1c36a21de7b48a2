"""Why an edit cannot be done."""


class EditRefused(Exception):  # noqa: N818 - it is an answer to the builder, not a fault
    """An edit that cannot be done, with a reason fit to show: `tip takes one core`."""

    def __init__(self, reason: str, mend: str = "") -> None:
        super().__init__(reason)
        self.reason = reason
        self.mend = mend
