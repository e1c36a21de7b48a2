"""How long work tells its progress, and how it is stopped."""

from collections.abc import Callable
from dataclasses import dataclass

Progress = Callable[[float], None]


class Cancelled(Exception):  # noqa: N818 - it is the caller's wish, not a fault
    """The work was stopped by its `cancelled`."""


@dataclass(frozen=True, slots=True)
class Watch:
    """Tells a share of the whole, from `begin` to `end`, and raises `Cancelled` when asked to."""

    progress: Progress | None = None
    cancelled: Callable[[], bool] | None = None
    begin: float = 0.0
    end: float = 1.0

    def __call__(self, share: float) -> None:
        """Tell that `share` of this part is done; raise `Cancelled` if the work is to stop."""
        if self.cancelled is not None and self.cancelled():
            raise Cancelled
        if self.progress is not None:
            self.progress(self.begin + (self.end - self.begin) * min(share, 1.0))

    def part(self, begin: float, end: float) -> "Watch":
        """Return a watch over the part of this one from share `begin` to share `end`."""
        width = self.end - self.begin
        return Watch(
            self.progress, self.cancelled, self.begin + width * begin, self.begin + width * end
        )
